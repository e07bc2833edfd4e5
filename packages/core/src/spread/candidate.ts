import { type SpreadClock, straightWalk, timeOrder, type Walk } from './clock.ts';
import { cutPours } from './cut-pours.ts';
import type { SpreadProblem } from './problem.ts';
import { type SpreadScore, scoreOf } from './score.ts';

/** An order with its pours, clock and score. */
export interface Candidate {
  readonly order: Int32Array;
  readonly starts: Int32Array;
  readonly clock: SpreadClock;
  readonly score: SpreadScore;
  readonly name: string;
}

/** Cuts, times and scores an order; walking is straight unless another walk is given. */
export function candidateOf(problem: SpreadProblem, order: Int32Array, name: string, walk?: Walk): Candidate {
  const starts = cutPours(problem.squares, order, problem.batchLitres);
  return timedCandidate(problem, order, starts, name, walk ?? straightWalk(problem));
}

/** The same for pours that are already cut. */
export function timedCandidate(
  problem: SpreadProblem,
  order: Int32Array,
  starts: Int32Array,
  name: string,
  walk: Walk,
): Candidate {
  const clock = timeOrder(problem, order, starts, walk);
  return { order, starts, clock, score: scoreOf(problem, clock), name };
}

/** Scores are compared in steps of 1/64 s, so that rounding never decides; the earlier candidate wins a tie. */
export const isBetter = (a: SpreadScore, b: SpreadScore): boolean =>
  Math.round(a.score * 3840) < Math.round(b.score * 3840);
