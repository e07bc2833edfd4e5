import type { Dot } from '../worker/api.ts';
import type { CoatCells } from './api.ts';

/** Straight runs shorter than this are turns, not lanes. */
const LEAST_SQUARES = 3;

/** The lanes of a pour in the order they are worked, each from its first square to its last. */
export function lanesOf({ x, y, pour, size }: CoatCells, k: number): readonly (readonly [Dot, Dot])[] {
  const dots: Dot[] = [];
  pour.forEach((one, place) => {
    if (one === k) dots.push([x[place] as number, y[place] as number]);
  });
  const lanes: (readonly [Dot, Dot])[] = [];
  let start = 0;
  for (let i = 1; i <= dots.length; i++) {
    const here = dots[i];
    const first = dots[start] as Dot;
    const before = dots[i - 1] as Dot;
    if (here && (i - start < 2 ? besides(before, here, size) : goesOn(first, before, here, size))) continue;
    if (i - start >= LEAST_SQUARES) lanes.push([first, before]);
    start = i;
  }
  return lanes;
}

const besides = (before: Dot, next: Dot, size: number): boolean =>
  Math.hypot(next[0] - before[0], next[1] - before[1]) <= size * 1.2;

/** The next square lies beside the last one, on the straight line from the first. */
function goesOn(first: Dot, before: Dot, next: Dot, size: number): boolean {
  const level = Math.abs(next[1] - first[1]) < size / 4 && Math.abs(before[1] - first[1]) < size / 4;
  const upright = Math.abs(next[0] - first[0]) < size / 4 && Math.abs(before[0] - first[0]) < size / 4;
  return besides(before, next, size) && (level || upright);
}
