import { type SpreadClock, timeOrder, type Walk } from './clock.ts';
import { cutPours } from './cut-pours.ts';
import type { SpreadProblem } from './problem.ts';
import { type SpreadScore, scoreOf } from './score.ts';
import { scratchOf } from './scratch.ts';

/** An order with its pours, clock and score. */
export interface Candidate {
  readonly order: Int32Array;
  readonly starts: Int32Array;
  readonly clock: SpreadClock;
  readonly score: SpreadScore;
  readonly name: string;
}

/** Cuts, times and scores an order; people walk straight. */
export function candidateOf(problem: SpreadProblem, order: Int32Array, name: string): Candidate {
  return new Tried(problem, order, cutPours(problem.squares, order, problem.batchLitres, problem.leastBatches), name);
}

/** Most candidates are only scored: their clock is worked out in arrays they share, and again for whoever asks for it. */
class Tried implements Candidate {
  readonly order: Int32Array;
  readonly starts: Int32Array;
  readonly score: SpreadScore;
  readonly name: string;
  private readonly problem: SpreadProblem;
  private timed: SpreadClock | undefined;

  constructor(problem: SpreadProblem, order: Int32Array, starts: Int32Array, name: string) {
    this.problem = problem;
    this.order = order;
    this.starts = starts;
    this.name = name;
    this.score = scoreOf(problem, timeOrder(problem, order, starts, undefined, scratchOf(problem.squares).clock));
  }

  get clock(): SpreadClock {
    this.timed ??= timeOrder(this.problem, this.order, this.starts, undefined);
    return this.timed;
  }
}

/** The same for pours that are already cut, with a clock of its own; without a `walk` people go straight. */
export function timedCandidate(
  problem: SpreadProblem,
  order: Int32Array,
  starts: Int32Array,
  name: string,
  walk: Walk | undefined,
): Candidate {
  const clock = timeOrder(problem, order, starts, walk);
  return { order, starts, clock, score: scoreOf(problem, clock), name };
}

/** Scores are compared in steps of 1/64 s, so that rounding never decides; the earlier candidate wins a tie. */
export const isBetter = (a: SpreadScore, b: SpreadScore): boolean =>
  Math.round(a.score * 3840) < Math.round(b.score * 3840);
