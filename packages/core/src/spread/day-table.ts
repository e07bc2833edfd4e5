import type { DayTable } from './types.ts';

/** Value of a table at a minute after midnight: straight between its points, flat outside. At least one point. */
export function atMinute(table: DayTable, minute: number): number {
  let [previousMinute, previous] = table[0] ?? [0, 0];
  if (minute <= previousMinute) return previous;
  for (const [nextMinute, next] of table) {
    if (minute < nextMinute) {
      return previous + ((next - previous) * (minute - previousMinute)) / (nextMinute - previousMinute);
    }
    previousMinute = nextMinute;
    previous = next;
  }
  return previous;
}

/** Smallest value of a table. */
export const lowestOf = (table: DayTable): number => table.reduce((low, [, value]) => Math.min(low, value), Infinity);
