import { slipsBetween } from '../../units/suggest.ts';

/** The known id nearest to a mistyped one; the first known where none is near, nothing where none is known. */
export function nearestId(typed: string, known: readonly string[]): string {
  const ranked = known
    .map((id, order) => ({ id, order, slips: slipsBetween(typed.toLowerCase(), id.toLowerCase()) }))
    .sort((a, b) => a.slips - b.slips || a.order - b.order);
  return ranked[0]?.id ?? '';
}
