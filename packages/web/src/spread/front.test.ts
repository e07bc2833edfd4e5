import { expect, test } from 'vitest';
import { wayOut, wetEdge } from './front.ts';

/** Three by two squares of one metre, spread left to right in the upper row, then right to left in the lower. */
const PLACES = [
  [0.5, 1.5],
  [1.5, 1.5],
  [2.5, 1.5],
  [2.5, 0.5],
  [1.5, 0.5],
  [0.5, 0.5],
] as const;
const cells = {
  size: 1,
  x: Float32Array.from(PLACES, ([x]) => x),
  y: Float32Array.from(PLACES, ([, y]) => y),
  // right, up, left, down of each
  beside: Int32Array.from(
    [
      [1, -1, -1, 5],
      [2, -1, 0, 4],
      [-1, -1, 1, 3],
      [-1, 2, 4, -1],
      [3, 1, 5, -1],
      [4, 0, -1, -1],
    ].flat(),
  ),
  free: new Uint8Array(24),
  narrow: new Uint8Array(24),
  doors: Int32Array.from([5]),
};

test('the wet edge runs between film and bare floor, in straight lines', () => {
  expect(wetEdge(cells, 2)).toEqual([
    [
      [0, 1],
      [2, 1],
    ],
    [
      [2, 1],
      [2, 2],
    ],
  ]);
  expect(wetEdge(cells, 0)).toEqual([]);
  expect(wetEdge(cells, 6)).toEqual([]);
});

test('film that may end on a joint does not wait', () => {
  const free = new Uint8Array(24);
  free[4 * 1 + 0] = 1;
  expect(wetEdge({ ...cells, free }, 2)).toEqual([
    [
      [0, 1],
      [2, 1],
    ],
  ]);
});

test('the way out keeps to dry floor and turns where it must', () => {
  expect(wayOut(cells, 2, 3)).toEqual([
    [2.5, 1.5],
    [2.5, 0.5],
    [0.5, 0.5],
  ]);
  expect(wayOut(cells, 5, 6)).toEqual([[0.5, 0.5]]);
  // from the far corner with the lower row wet there is none
  const { doors: _, ...rest } = cells;
  expect(wayOut({ ...rest, doors: Int32Array.from([]) }, 2, 3)).toEqual([]);
});

test('nobody walks through a gap too narrow', () => {
  const narrow = new Uint8Array(24);
  narrow[4 * 2 + 3] = 1;
  expect(wayOut({ ...cells, narrow }, 2, 3)).toEqual([]);
});
