import Papa from 'papaparse';
import { listAt, type Raw, setAt, textAt, valueAt } from './path.ts';
import type { Leaf, Part, Section } from './spec.ts';

/**
 * A catalogue or price book as a table anybody's spreadsheet opens: one row an entry, in the columns list, item, field
 * and value. It holds everything the JSON file holds, so it goes out and comes back whole.
 */

const COLUMNS = ['list', 'item', 'field', 'value'] as const;
type Row = Readonly<Record<(typeof COLUMNS)[number], string>>;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  value !== null && typeof value === 'object';

function leaves(value: unknown, before: string): readonly (readonly [string, string])[] {
  if (!isObject(value)) return [[before, String(value)]];
  return Object.entries(value).flatMap(([key, inner]) =>
    // Lists are counted from 1, as people do.
    leaves(inner, [before, Array.isArray(value) ? `${Number(key) + 1}` : key].filter(Boolean).join('.')),
  );
}

const nameOf = (item: Raw, index: number): string => textAt(item, ['id']) || `${index + 1}`;

/** The file as CSV. A cell that a spreadsheet would run as a formula is written with an apostrophe before it. */
export function csvOf(file: Raw): string {
  if (!isObject(file)) return '';
  const rows = Object.entries(file).flatMap(([list, value]): Row[] => {
    if (!Array.isArray(value))
      return leaves(value, '').map(([field, text]) => ({ list, item: '', field, value: text }));
    return value.flatMap((item, i) =>
      leaves(item, '').map(([field, text]): Row => ({ list, item: nameOf(item, i), field, value: text })),
    );
  });
  return Papa.unparse(rows as Row[], { columns: [...COLUMNS], escapeFormulae: true, newline: '\r\n' });
}

/** Takes back the apostrophe that guarded a cell; any other apostrophe is a person's own. */
const unguarded = (text: string): string => (/^'[=+\-@\t\r]/.test(text) ? text.slice(1) : text);

/** What kind of value stands at a field, by the forms: a number, a yes, or text as it was typed. */
function kinds(parts: readonly Part[], before: string): readonly (readonly [string, Leaf['is']])[] {
  return parts.flatMap((part): readonly (readonly [string, Leaf['is']])[] => {
    if (part.part === 'group') return kinds(part.parts, before);
    const here = [before, ...part.path].filter(Boolean).join('.');
    return part.part === 'field' ? [[here, part.leaf.is]] : kinds(part.parts, `${here}.#`);
  });
}

function typed(text: string, kind: Leaf['is'] | undefined): unknown {
  if (kind === 'number' && /^-?\d+(\.\d+)?$/.test(text)) return Number(text);
  if ((kind === 'flag' || kind === 'answer') && /^(true|false)$/i.test(text)) return text.toLowerCase() === 'true';
  return text;
}

export type CsvRead =
  | { readonly ok: true; readonly file: Raw; readonly items: number }
  | { readonly ok: false; readonly why: 'no columns' | 'broken'; readonly line: number; readonly detail: string };

/** Reads such a table over a file: items of the same name are replaced, new ones added, the rest stays. */
export function fromCsv(text: string, file: Raw, sections: readonly Section[]): CsvRead {
  const parsed = Papa.parse<Record<string, string>>(text.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: 'greedy',
  });
  const fields = parsed.meta.fields ?? [];
  const absent = COLUMNS.filter((column) => !fields.includes(column));
  if (absent.length > 0) return { ok: false, why: 'no columns', line: 1, detail: absent.join(', ') };
  const [trouble] = parsed.errors.filter(({ type }) => type !== 'Delimiter');
  if (trouble) return { ok: false, why: 'broken', line: (trouble.row ?? 0) + 2, detail: trouble.message };
  const known = new Map(sections.flatMap(({ parts }) => kinds(parts, '')));
  const next: unknown = structuredClone(file);
  const touched = new Map<string, Map<string, number>>();
  for (const row of parsed.data) {
    const [list, item, field] = [row.list?.trim() ?? '', row.item?.trim() ?? '', row.field?.trim() ?? ''];
    if (list === '') continue;
    const keys = field
      .split('.')
      .filter(Boolean)
      .map((key) => (/^\d+$/.test(key) ? Number(key) - 1 : key));
    const kind = known.get(
      [list, ...(item ? ['#'] : []), ...keys.map((key) => (typeof key === 'number' ? '#' : key))].join('.'),
    );
    const value = typed(unguarded(row.value ?? ''), kind);
    if (item === '') {
      setAt(next, [list, ...keys], value);
      continue;
    }
    const places = touched.get(list) ?? new Map<string, number>();
    touched.set(list, places);
    let at = places.get(item);
    if (at === undefined) {
      at = placeOf(next, list, item);
      places.set(item, at);
      setAt(next, [list, at], {});
    }
    setAt(next, [list, at, ...keys], value);
  }
  return { ok: true, file: next, items: [...touched.values()].reduce((sum, places) => sum + places.size, 0) };
}

/** Where an item of this name stands, or the place after the last. */
function placeOf(file: Raw, list: string, item: string): number {
  const items = listAt(file, [list]);
  const named = items.findIndex((one) => textAt(one, ['id']) === item);
  if (named >= 0) return named;
  const counted = /^\d+$/.test(item) ? Number(item) - 1 : items.length;
  const nameless = valueAt(items[counted], ['id']) === undefined;
  return counted < items.length && nameless ? counted : items.length;
}
