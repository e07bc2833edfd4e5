/** Bars of one row on one scale that begins at nothing, so that lengths may be compared. */

export type Ends = readonly [low: number, high: number];

/** Both ends of each as shares of the longest; null where there is no number, or a scale from nothing would mislead. */
export function scaled(ends: readonly (Ends | null)[]): readonly (Ends | null)[] {
  const known = ends.filter((one): one is Ends => one !== null);
  const longest = Math.max(0, ...known.map(([, high]) => high));
  const below = known.some(([low]) => low < 0);
  if (longest <= 0 || below) return ends.map(() => null);
  return ends.map((one) => one && [one[0] / longest, one[1] / longest]);
}

export const single = (value: number | undefined): Ends | null => (value === undefined ? null : [value, value]);
