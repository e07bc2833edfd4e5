import { insideRing } from './geometry.ts';
import { planBack } from './plan-back.ts';
import type { SpreadProblem } from './problem.ts';
import type { Ring, SpreadSolution } from './types.ts';

/** A pour as the installer draws it: its outline and which way the crew works through it. */
export interface DrawnPour {
  readonly ring: Ring;
  /** Direction of work, any length: from the far lanes to the near ones. */
  readonly towards: readonly [number, number];
}

/** More lanes than any pour has. */
const LANES_PER_POUR = 100_000;
/** Places in a pour of known order, small beside the lanes of the next pour. */
const RANK_STEP = 1e-3;

/**
 * A sequence from pours drawn by hand, in the order they are drawn, for the checker to judge. A square belongs to the
 * first pour that holds its centre. Squares in no pour are left out, and the checker says so.
 */
export function drawnSolution(problem: SpreadProblem, pours: readonly DrawnPour[]): SpreadSolution {
  const { x, y, count } = problem.squares;
  const pourOf = new Int32Array(count);
  for (let s = 0; s < count; s++)
    pourOf[s] = pours.findIndex(({ ring }) => insideRing(x[s] as number, y[s] as number, ring));
  return laneSequence(
    problem,
    pourOf,
    pours.map(({ towards }) => towards),
  );
}

/**
 * The squares of each pour in lanes along its direction of work, to and fro, as far as the way out allows; the order of
 * the pours is never changed. `pourOf`: pour of each square from 0, −1 for none.
 */
export function laneSequence(
  problem: SpreadProblem,
  pourOf: Int32Array,
  directions: readonly (readonly [number, number])[],
  /** Place of a square in a pour whose order is known, −1 for lanes. */
  ranks?: Int32Array,
): SpreadSolution {
  const { squares, question } = problem;
  const { x, y, cellM, count, column, row } = squares;
  const key = new Float64Array(count).fill(-LANES_PER_POUR);
  for (let s = 0; s < count; s++) {
    const k = pourOf[s] as number;
    const direction = directions[k];
    if (!direction) continue;
    const rank = ranks?.[s] ?? -1;
    if (rank >= 0) {
      key[s] = (directions.length - 1 - k) * LANES_PER_POUR - rank * RANK_STEP;
      continue;
    }
    const [dx, dy] = direction;
    const length = Math.sqrt(dx * dx + dy * dy) || 1;
    const lane = Math.floor(((x[s] as number) * dx + (y[s] as number) * dy) / length / cellM + 1e-6);
    const along = ((y[s] as number) * dx - (x[s] as number) * dy) / length / 10_000;
    // backward growth: the last pour and its last lane come first
    key[s] = (directions.length - 1 - k) * LANES_PER_POUR - lane + ((lane & 1) === 0 ? along : -along);
  }
  const cells: number[][] = directions.map(() => []);
  for (const s of planBack(problem, key)) cells[pourOf[s] as number]?.push(column[s] as number, row[s] as number);
  return {
    format: 'spread-solution-1',
    instance: question.name,
    pours: cells.map((own, k) => ({ pour: k + 1, cells: own })),
  };
}

/** The same pours in another order: `order` lists their present numbers, from 1. Numbers that do not exist are dropped. */
export function reordered(solution: SpreadSolution, order: readonly number[]): SpreadSolution {
  const pours = order.flatMap((number) => solution.pours.find(({ pour }) => pour === number) ?? []);
  return { ...solution, pours: pours.map(({ cells }, k) => ({ pour: k + 1, cells })) };
}
