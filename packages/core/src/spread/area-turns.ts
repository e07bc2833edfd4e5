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
  const { areaOf } = division;
  const turn = new Int32Array(areaOf.length);
  for (let s = 0; s < turn.length; s++) turn[s] = rank[areaOf[s] as number] as number;
  return turn;
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
  let areas = 0;
  for (let s = 0; s < turn.length; s++) if ((turn[s] as number) >= areas) areas = (turn[s] as number) + 1;
  const low = new Float64Array(areas).fill(Infinity);
  const high = new Float64Array(areas).fill(-Infinity);
  for (let s = 0; s < turn.length; s++) {
    const t = turn[s] as number;
    const value = values[s] as number;
    if (value < (low[t] as number)) low[t] = value;
    if (value > (high[t] as number)) high[t] = value;
  }
  const unit = new Float64Array(turn.length);
  for (let s = 0; s < turn.length; s++) {
    const t = turn[s] as number;
    const least = low[t] as number;
    const span = (high[t] as number) - least;
    unit[s] = span > 0 ? ((values[s] as number) - least) / span : 0;
  }
  return unit;
}
