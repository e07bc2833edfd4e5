import { ALL_FORMULAS, type Entry, formatQuantity, type Kind, type Reader, show, showBand } from '@slabwright/core';
import type { Shown } from './api.ts';

/** Number and unit apart, because the screen sets the one loud and the other quiet. */
function parts(entry: Entry, reader: Reader, text: string): { readonly number: string; readonly unit: string } {
  if (entry.kind === 'list' || entry.kind === 'series' || entry.unit.startsWith('money')) {
    return { number: text, unit: '' };
  }
  const kind = entry.shows as Kind | undefined;
  const { number, unit } = formatQuantity(entry.value, entry.unit, {
    system: reader.units,
    locale: reader.locale,
    ...(kind ? { kind } : {}),
    ...(entry.band ? { band: entry.band } : {}),
  });
  return { number, unit };
}

export function shownOf(entry: Entry, reader: Reader): Shown {
  const text = show(entry, reader);
  const single = entry.kind === 'figure' || entry.kind === 'given';
  const band = single ? entry.band : undefined;
  const given = entry.kind === 'given' ? entry : undefined;
  const says = given ? undefined : ALL_FORMULAS.get((entry as { formula: string }).formula)?.says;
  return {
    kind: entry.kind,
    text,
    ...parts(entry, reader, text),
    band: showBand(entry, reader),
    in: entry.unit,
    outside: entry.kind !== 'given' && entry.outside.length > 0,
    ...(single ? { value: entry.value } : {}),
    ...(band ? { low: band[0], high: band[1] } : {}),
    ...(entry.shows ? { shows: entry.shows } : {}),
    ...(given ? { origin: given.origin } : {}),
    ...(given?.where ? { where: given.where } : {}),
    ...(given?.when ? { when: given.when } : {}),
    ...(given?.typed ? { typed: given.typed } : {}),
    ...(says ? { says } : {}),
  };
}
