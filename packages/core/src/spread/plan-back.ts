import type { SpreadProblem } from './problem.ts';
import { scratchOf } from './scratch.ts';

/**
 * Grows an order back from the doors: the last square spread is a door square, and each earlier one touches a square
 * that is still dry at that time. Such an order, read forwards, never paints anybody in: the floor not yet spread
 * keeps a door in each of its parts. Same idea as filling the pits of a terrain model from the map's edge inwards
 * (priority flood).
 *
 * `key`: small = spread late. Ties go to the lower square. Squares no door leads to are left out of the answer.
 * Cost: squares · log(front).
 */
export function planBack(problem: SpreadProblem, key: Float64Array): Int32Array {
  const { squares, question, lastWay } = problem;
  const { count, link, narrow } = squares;
  const { square: heap, key: heapKey, seen } = scratchOf(squares).heap;
  seen.fill(0);
  const order = new Int32Array(count);
  let size = 0;
  let place = count;
  for (const s of lastWay) {
    seen[s] = 1;
    order[--place] = s;
  }
  for (const s of problem.doorSquares) if (!seen[s]) size = push(heap, heapKey, size, s, key, seen);
  for (const s of lastWay) {
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other >= 0 && !narrow[side] && !seen[other]) size = push(heap, heapKey, size, other, key, seen);
    }
  }
  while (size > 0) {
    const s = heap[0] as number;
    size -= 1;
    if (size > 0) sink(heap, heapKey, size);
    order[--place] = s;
    // on spikes any square may follow, once the way out is the last
    if (question.crew.spikedShoes === true && place === count - 1) {
      for (let any = 0; any < count; any++) if (!seen[any]) size = push(heap, heapKey, size, any, key, seen);
    }
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other >= 0 && !seen[other] && !narrow[side]) size = push(heap, heapKey, size, other, key, seen);
    }
  }
  return place === 0 ? order : order.slice(place);
}

/** Puts a square into the heap, smallest key on top, of equal keys the lowest square; gives the new size. */
function push(
  heap: Int32Array,
  heapKey: Float64Array,
  size: number,
  square: number,
  key: Float64Array,
  seen: Uint8Array,
): number {
  seen[square] = 1;
  const own = key[square] as number;
  let k = size;
  while (k > 0) {
    const parent = (k - 1) >> 1;
    const above = heapKey[parent] as number;
    if (own > above || (own === above && square > (heap[parent] as number))) break;
    heap[k] = heap[parent] as number;
    heapKey[k] = above;
    k = parent;
  }
  heap[k] = square;
  heapKey[k] = own;
  return size + 1;
}

/** Fills the top of the heap, which now has `size` squares, with the one after the last. */
function sink(heap: Int32Array, heapKey: Float64Array, size: number): void {
  const square = heap[size] as number;
  const own = heapKey[size] as number;
  let k = 0;
  for (let child = 1; child < size; child = 2 * k + 1) {
    let least = heapKey[child] as number;
    if (child + 1 < size) {
      const right = heapKey[child + 1] as number;
      if (right < least || (right === least && (heap[child + 1] as number) < (heap[child] as number))) {
        child += 1;
        least = right;
      }
    }
    if (least > own || (least === own && (heap[child] as number) > square)) break;
    heap[k] = heap[child] as number;
    heapKey[k] = least;
    k = child;
  }
  heap[k] = square;
  heapKey[k] = own;
}
