import type { Conditions } from '../../science/windows/index.ts';
import { extremes, markOf } from '../../science/windows/reasons.ts';

/** Least and most of a run of the conditions between two moments, ms since 1970. */
export const extremesBetween = (conditions: Conditions, values: Float64Array, from: number, to: number) =>
  extremes(values, markOf(conditions, from), Math.max(markOf(conditions, from), markOf(conditions, to)));

/** Value at the nearest mark. */
export const valueNear = (conditions: Conditions, values: Float64Array, at: number): number =>
  values[markOf(conditions, at)] as number;

/** Moment of the least value between two moments, ms since 1970. */
export function momentOfLeast(conditions: Conditions, values: Float64Array, from: number, to: number): number {
  const [first, last] = [markOf(conditions, from), markOf(conditions, to)];
  let best = first;
  for (let m = first; m <= last; m++) if ((values[m] as number) < (values[best] as number)) best = m;
  return conditions.from + best * 300_000;
}
