import {
  convert,
  type Entry,
  formatQuantity,
  type Kind,
  parseQuantity,
  type Reader,
  type Unit,
} from '@slabwright/core';

export interface Display {
  readonly value: number | readonly number[];
  readonly unit: string;
}

/** The unit a reader of this system would see this entry in. */
function usualUnit(entry: Entry, reader: Reader): string {
  if (entry.unit === '1' && entry.shows === undefined) return '1';
  const first = entry.kind === 'list' || entry.kind === 'series' ? (entry.values[0] ?? 0) : entry.value;
  const kind = entry.shows as Kind | undefined;
  const { unit } = formatQuantity(first, entry.unit, {
    system: reader.units,
    locale: reader.locale,
    ...(kind ? { kind } : {}),
  });
  const name = unit.replaceAll('\u00a0', ' ');
  return isName(name, entry.unit) ? name : entry.unit;
}

const isName = (name: string, unit: Unit): boolean => name !== '' && parseQuantity(`1 ${name}`, unit).ok;

/** The value at full precision in one named unit, for `--json` and `--in`. */
export function displayOf(entry: Entry, reader: Reader, asked?: string): Display {
  if (entry.unit.startsWith('money')) {
    if (entry.kind === 'list' || entry.kind === 'series') throw new Error('lists of money are not displayed');
    return { value: entry.value / 100, unit: entry.unit };
  }
  const unit = asked ?? usualUnit(entry, reader);
  const into = (value: number): number =>
    unit === entry.unit || unit === '1' ? value : convert(value, entry.unit, unit);
  return {
    value: entry.kind === 'list' || entry.kind === 'series' ? entry.values.map(into) : into(entry.value),
    unit,
  };
}
