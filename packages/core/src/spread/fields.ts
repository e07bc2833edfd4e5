import type { FloorSquares } from './floor-squares.ts';

/** A number per square: small = spread late (near the way out). In metres, so that one lane is one square wide. */
export type Field = Float64Array;

/**
 * Sixteen directions as unit vectors, written out: sines differ in the last bit between engines, and one bit can turn
 * a tie between two squares.
 */
const C1 = 0.9238795325112867;
const S1 = 0.3826834323650898;
const D1 = Math.SQRT1_2;
export const DIRECTIONS: readonly (readonly [number, number])[] = [
  [1, 0],
  [C1, S1],
  [D1, D1],
  [S1, C1],
  [0, 1],
  [-S1, C1],
  [-D1, D1],
  [-C1, S1],
  [-1, 0],
  [-C1, -S1],
  [-D1, -D1],
  [-S1, -C1],
  [0, -1],
  [S1, -C1],
  [D1, -D1],
  [C1, -S1],
];

/** Straight sweep: the crew comes from far along `direction` and ends at its foot. */
export function sweepField(squares: FloorSquares, direction: readonly [number, number]): Field {
  const { x, y } = squares;
  const field = new Float64Array(squares.count);
  for (let s = 0; s < squares.count; s++) field[s] = (x[s] as number) * direction[0] + (y[s] as number) * direction[1];
  return field;
}

/**
 * Walking distance from the seeds over the floor, m, diagonals allowed where both corners are open
 * (Dijkstra with a bucket per quarter square). `within`: only squares with the same mark as a seed's are entered.
 */
export function distanceField(squares: FloorSquares, seeds: Iterable<number>, within?: Int32Array): Field {
  const { count, link, narrow, cellM } = squares;
  const far = new Float64Array(count).fill(Infinity);
  const done = new Uint8Array(count);
  let current: number[] = [];
  const later = new Map<number, number[]>();
  const bucket = (d: number): number => Math.floor((d / cellM) * 2.5);
  let level = 0;
  const put = (s: number, d: number): void => {
    far[s] = d;
    const b = bucket(d);
    if (b <= level) current.push(s);
    else {
      const list = later.get(b);
      if (list) list.push(s);
      else later.set(b, [s]);
    }
  };
  for (const s of seeds) if (far[s] !== 0) put(s, 0);
  let waiting = current.length;
  const diagonal = cellM * Math.SQRT2;
  while (waiting > 0) {
    while (current.length > 0) {
      const s = current.pop() as number;
      waiting -= 1;
      if (done[s] || bucket(far[s] as number) !== level) continue;
      done[s] = 1;
      const d = far[s] as number;
      const visit = (other: number, step: number): void => {
        if (other < 0 || done[other] || d + step >= (far[other] as number)) return;
        if (within && within[other] !== within[s]) return;
        put(other, d + step);
        waiting += 1;
      };
      for (let side = 0; side < 4; side++) {
        const a = narrow[4 * s + side] ? -1 : (link[4 * s + side] as number);
        visit(a, cellM);
        const turned = (side + 1) & 3;
        const b = narrow[4 * s + turned] ? -1 : (link[4 * s + turned] as number);
        if (a >= 0 && b >= 0 && link[4 * a + turned] === link[4 * b + side])
          visit(link[4 * a + turned] as number, diagonal);
      }
    }
    level += 1;
    const next = later.get(level);
    if (next) {
      current = next;
      later.delete(level);
    } else if (later.size === 0) break;
  }
  return far;
}

/** Square farthest from the seeds of a distance field (ties: the lowest number); unreachable ones do not count. */
export function farthest(field: Field): number {
  let best = -1;
  for (let s = 0; s < field.length; s++) {
    if (field[s] !== Infinity && (best < 0 || (field[s] as number) > (field[best] as number))) best = s;
  }
  return best;
}

/** Squares no way leads to get the largest finite value: they stay in the arrays but are never reached. */
export function finite(field: Field): Field {
  let longest = 0;
  for (const value of field) if (value !== Infinity && value > longest) longest = value;
  return field.map((value) => (value === Infinity ? longest : value));
}
