import type { SpreadProblem } from './problem.ts';

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
  const { squares, question } = problem;
  const { count, link, narrow } = squares;
  const order = new Int32Array(count);
  const seen = new Uint8Array(count);
  const heap = new Int32Array(count);
  let size = 0;
  const before = (a: number, b: number): boolean => {
    const ka = key[a] as number;
    const kb = key[b] as number;
    return ka < kb || (ka === kb && a < b);
  };
  const push = (square: number): void => {
    seen[square] = 1;
    let k = size++;
    while (k > 0) {
      const parent = (k - 1) >> 1;
      if (!before(square, heap[parent] as number)) break;
      heap[k] = heap[parent] as number;
      k = parent;
    }
    heap[k] = square;
  };
  const pop = (): number => {
    const top = heap[0] as number;
    const last = heap[--size] as number;
    let k = 0;
    for (;;) {
      let child = 2 * k + 1;
      if (child >= size) break;
      if (child + 1 < size && before(heap[child + 1] as number, heap[child] as number)) child += 1;
      if (!before(heap[child] as number, last)) break;
      heap[k] = heap[child] as number;
      k = child;
    }
    heap[k] = last;
    return top;
  };
  let place = count;
  for (const s of problem.lastWay) {
    seen[s] = 1;
    order[--place] = s;
  }
  const seed = (s: number): void => {
    if (s >= 0 && !seen[s]) push(s);
  };
  for (const s of problem.doorSquares) seed(s);
  for (const s of problem.lastWay)
    for (let side = 4 * s; side < 4 * s + 4; side++) if (!narrow[side]) seed(link[side] as number);
  while (size > 0) {
    const s = pop();
    order[--place] = s;
    // on spikes any square may follow, once the way out is the last
    if (question.crew.spikedShoes === true && place === count - 1) for (let any = 0; any < count; any++) seed(any);
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other >= 0 && !seen[other] && !narrow[side]) push(other);
    }
  }
  return place === 0 ? order : order.slice(place);
}
