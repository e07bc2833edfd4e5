import { areaInBox, boxOf } from './geometry.ts';
import type { Lattice } from './near-segments.ts';
import type { Point, SpreadCase } from './types.ts';

/** Where a sliver may go: to the square beside it first, then across a corner. */
const AROUND = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

/**
 * Floor inside each square, m²: the whole square but at the edges, where it is clipped. A sliver whose square does not
 * exist, because its centre lies off the floor, is added to the first neighbour that does: the sum is the drawn area.
 * `at`: cell → square or −1.
 */
export function clippedAreas(question: SpreadCase, lattice: Lattice, at: Int32Array, count: number): Float64Array {
  const { minX, minY, cellM: h, columns, rows } = lattice;
  const areaM2 = new Float64Array(count).fill(h * h);
  const taken = [...question.holes, ...(question.done ?? []).map(({ ring }) => ring)];
  const boundary = new Set<number>();
  for (const ring of [question.outline, ...taken]) {
    ring.forEach((p, k) => {
      const [loX, loY, hiX, hiY] = boxOf([p, ring[(k + 1) % ring.length] as Point]);
      const i1 = Math.min(columns - 1, Math.floor((hiX - minX) / h));
      const j1 = Math.min(rows - 1, Math.floor((hiY - minY) / h));
      for (let j = Math.max(0, Math.ceil((loY - minY) / h) - 1); j <= j1; j++) {
        for (let i = Math.max(0, Math.ceil((loX - minX) / h) - 1); i <= i1; i++) boundary.add(j * columns + i);
      }
    });
  }
  const squareAt = (i: number, j: number): number =>
    i >= 0 && j >= 0 && i < columns && j < rows ? (at[j * columns + i] as number) : -1;
  for (const cell of [...boundary].sort((a, b) => a - b)) {
    const i = cell % columns;
    const j = Math.floor(cell / columns);
    const box = [minX + i * h, minY + j * h, minX + (i + 1) * h, minY + (j + 1) * h] as const;
    let area = areaInBox(question.outline, ...box);
    for (const ring of taken) area -= areaInBox(ring, ...box);
    const square = at[cell] as number;
    if (square >= 0) {
      areaM2[square] = (areaM2[square] as number) - h * h + area;
    } else if (area > 1e-9) {
      const owner = AROUND.map(([di, dj]) => squareAt(i + di, j + dj)).find((s) => s >= 0);
      if (owner !== undefined) areaM2[owner] = (areaM2[owner] as number) + area;
    }
  }
  return areaM2;
}
