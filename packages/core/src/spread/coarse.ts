import { EXACT_MOST_SQUARES, exactLargestAge, largestAge } from './exact.ts';
import type { FloorSquares } from './floor-squares.ts';
import { guidedGrowth } from './guided.ts';
import { planBack } from './plan-back.ts';
import { type SpreadProblem, spreadProblem } from './problem.ts';
import { shortlist } from './shortlist.ts';
import { keyOf } from './sketch.ts';

/** What is known about a plan on a coarse copy of its floor. Ages in min, walking left out. */
export interface CoarseProof {
  /** Side of the coarse squares, m. */
  readonly squareM: number;
  readonly squares: number;
  /** No order on the coarse copy has a smaller largest age. */
  readonly atLeastMin: number;
  readonly proved: boolean;
  /** Largest age the fast method, the one that made the plan, reaches on the coarse copy. */
  readonly methodMin: number;
  /** methodMin / atLeastMin − 1: how far the method may be from the best on that copy; 0: best possible there. */
  readonly within: number;
}

/**
 * Compares the fast method with the best possible on a coarse copy of at most `most` squares; undefined when no copy is
 * both that small and fine enough (a quarter of the distance between stop lines, so that bays are still seen). `going`
 * is asked now and then; answering false ends the search with the bound known by then.
 */
export function coarseProof(
  problem: SpreadProblem,
  nodes: number,
  most = 110,
  going?: () => boolean,
): CoarseProof | undefined {
  const coarse = coarseCopy(problem, Math.min(most, EXACT_MOST_SQUARES));
  if (!coarse) return undefined;
  const { squares, doorSquares } = coarse;
  const clock = coarseClock(problem, squares.count);
  const exact = exactLargestAge({ squares, doorSquares, clock, nodes, going });
  const methodMin = Math.min(...methodAges(coarse, clock, exact.atLeast));
  return {
    squareM: squares.cellM,
    squares: squares.count,
    atLeastMin: exact.atLeast,
    proved: exact.proved,
    methodMin,
    within: exact.atLeast > 0 ? Math.max(0, Math.round((methodMin / exact.atLeast - 1) * 1e9) / 1e9) : 0,
  };
}

/** Plain and guided growth of the shortlist, judged by their largest age alone. */
function methodAges(coarse: SpreadProblem, clock: Float64Array, atLeast: number): number[] {
  const ages: number[] = [Infinity];
  const judge = (order: Int32Array): void => {
    if (order.length === coarse.squares.count) ages.push(largestAge(coarse.squares, order, clock));
  };
  for (const draw of shortlist(coarse, 60)) {
    const sketch = draw();
    const key = keyOf(coarse.squares, sketch);
    judge(planBack(coarse, key));
    for (const share of [1, 1.1, 1.2, 1.35]) {
      judge(guidedGrowth(coarse, { key, deadlineMin: atLeast * share, pull: 0, foresight: false }));
    }
  }
  return ages;
}

/** The floor in larger squares, whole multiples of the lane, the finest that has at most `most` of them. */
function coarseCopy(problem: SpreadProblem, most: number): SpreadProblem | undefined {
  const fine = problem.squares;
  let factor = Math.max(1, Math.ceil(Math.sqrt(fine.count / most)));
  for (let tries = 0; tries < 6; tries++, factor += 1) {
    const cellM = fine.cellM * factor;
    const copy = spreadProblem({ ...problem.question, cellM }, 'whole');
    const { squares, doorSquares } = copy;
    if (squares.count > most || squares.count < 4) continue;
    if (problem.question.stopLines.length > 0 && cellM > stopSpacing(problem) / 4) return undefined;
    if (doorSquares.length > 0 && joined(squares, doorSquares)) return copy;
  }
  return undefined;
}

/** Every coarse square can be reached: a copy that lost a passage proves nothing. */
function joined(squares: FloorSquares, doors: Int32Array): boolean {
  const seen = new Uint8Array(squares.count);
  const stack = [...doors];
  for (const s of stack) seen[s] = 1;
  let reached = stack.length;
  for (let s = stack.pop(); s !== undefined; s = stack.pop()) {
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = squares.link[side] as number;
      if (other < 0 || seen[other]) continue;
      seen[other] = 1;
      reached += 1;
      stack.push(other);
    }
  }
  return reached === squares.count;
}

/** Smallest distance between the middles of two parallel stop lines, or the floor's smaller side. */
function stopSpacing(problem: SpreadProblem): number {
  const { stopLines } = problem.question;
  const { columns, rows, cellM } = problem.squares;
  let least = Math.min(columns, rows) * cellM;
  stopLines.forEach((p, k) => {
    for (const q of stopLines.slice(k + 1)) {
      const cross = (p.b[0] - p.a[0]) * (q.b[1] - q.a[1]) - (p.b[1] - p.a[1]) * (q.b[0] - q.a[0]);
      if (Math.abs(cross) > 1e-6) continue;
      const dx = (p.a[0] + p.b[0] - q.a[0] - q.b[0]) / 2;
      const dy = (p.a[1] + p.b[1] - q.a[1] - q.b[1]) / 2;
      const apart = Math.sqrt(dx * dx + dy * dy);
      if (apart > 1e-6) least = Math.min(least, apart);
    }
  });
  return least;
}

/** Equal minutes for every coarse square, and a stop for each batch where its litres are used up. */
function coarseClock(problem: SpreadProblem, count: number): Float64Array {
  const { squares, batchLitres, question } = problem;
  let minutes = 0;
  let litres = 0;
  for (let s = 0; s < squares.count; s++) {
    minutes += squares.minutes[s] as number;
    litres += squares.litres[s] as number;
  }
  const each = minutes / count;
  const perBatch = Math.max(1, (batchLitres / litres) * count);
  const { mixMin, handoverMin } = question.batch;
  const wait = question.crew.dedicatedMixer ? Math.max(0, mixMin - perBatch * each) : mixMin;
  const clock = new Float64Array(count);
  for (let k = 0; k < count; k++) clock[k] = k * each + Math.floor((k + 0.5) / perBatch) * (wait + handoverMin);
  return clock;
}
