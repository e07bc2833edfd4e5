import type { DayTable } from '../types.ts';

/** Straight-line look-up in a day table, flat outside. */
export function look(table: DayTable, minute: number): number {
  const after = table.findIndex(([at]) => at > minute);
  if (after === 0) return table[0]?.[1] ?? 0;
  if (after < 0) return table[table.length - 1]?.[1] ?? 0;
  const [m0, v0] = table[after - 1] as readonly [number, number];
  const [m1, v1] = table[after] as readonly [number, number];
  return v0 + ((minute - m0) / (m1 - m0)) * (v1 - v0);
}
