import type { FloorSquares } from './floor-squares.ts';

/**
 * Cuts an order into pours by litres: place in the order where each pour starts.
 *
 * `batches`: the fewest that hold the floor. A square goes to the pour that takes the larger part of it, so the cut is never off by more than half a square; what
 * one pour took too much the next one gives back. The last pour is the part batch.
 */
export function cutPours(
  { litres }: FloorSquares,
  order: Int32Array,
  batchLitres: number,
  batches: number,
): Int32Array {
  const most = Math.max(1, batches);
  const starts = new Int32Array(most);
  let pour = 1;
  let run = 0;
  for (let k = 0; k < order.length && pour < most; k++) {
    const own = litres[order[k] as number] as number;
    while (pour < most && run + own / 2 > pour * batchLitres + 1e-9 && k > (starts[pour - 1] as number)) {
      starts[pour] = k;
      pour += 1;
    }
    run += own;
  }
  // a remainder below half a square is still a batch of its own: its litres have to come from somewhere
  for (; pour < most; pour++) starts[pour] = Math.max((starts[pour - 1] as number) + 1, order.length - (most - pour));
  return starts.filter((start) => start < order.length);
}

/** Fewest batches that hold the floor. */
export function batchesNeeded(squares: FloorSquares, batchLitres: number): number {
  let total = 0;
  for (const own of squares.litres) total += own;
  return Math.ceil(total / batchLitres - 1e-9);
}
