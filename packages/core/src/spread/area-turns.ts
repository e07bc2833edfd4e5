import type { Division } from './areas.ts';
import type { Field } from './fields.ts';

/** Ranks areas by a number (ties: the first found) and gives each square its area's rank. */
export function turns(division: Division, value: Float64Array): Int32Array {
  const ranked = Array.from({ length: division.count }, (_, area) => area).sort(
    (a, b) => (value[a] as number) - (value[b] as number) || a - b,
  );
  const rank = new Int32Array(division.count);
  ranked.forEach((area, k) => {
    rank[area] = k;
  });
  return Int32Array.from(division.areaOf, (area) => rank[area] as number);
}

/** Areas in turn by how near a door they come: the nearest is spread last. */
export function nearestLast(division: Division, doors: Field): Int32Array {
  const nearest = new Float64Array(division.count).fill(Infinity);
  division.areaOf.forEach((area, s) => {
    nearest[area] = Math.min(nearest[area] as number, doors[s] as number);
  });
  return turns(division, nearest);
}

/** Scales a coordinate to 0..1 within each area, so that one lane is one pass over its own strip. */
export function localUnit(turn: Int32Array, values: Float64Array): Float64Array {
  const low: number[] = [];
  const high: number[] = [];
  for (let s = 0; s < turn.length; s++) {
    const t = turn[s] as number;
    const value = values[s] as number;
    low[t] = Math.min(low[t] ?? Infinity, value);
    high[t] = Math.max(high[t] ?? -Infinity, value);
  }
  return values.map((value, s) => {
    const t = turn[s] as number;
    const span = (high[t] as number) - (low[t] as number);
    return span > 0 ? (value - (low[t] as number)) / span : 0;
  });
}
