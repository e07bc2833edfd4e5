import type { Candidate } from './candidate.ts';
import type { SpreadProblem } from './problem.ts';
import type { SpreadSolution } from './types.ts';

/** A plan in the instance format: the squares of each pour in spreading order, as column, row pairs. */
export function solutionOf(problem: SpreadProblem, plan: Pick<Candidate, 'order' | 'starts'>): SpreadSolution {
  const { column, row } = problem.squares;
  const { order, starts } = plan;
  return {
    format: 'spread-solution-1',
    instance: problem.question.name,
    pours: Array.from(starts, (first, k) => {
      const cells: number[] = [];
      const end = k + 1 < starts.length ? (starts[k + 1] as number) : order.length;
      for (let at = first; at < end; at++) {
        const s = order[at] as number;
        cells.push(column[s] as number, row[s] as number);
      }
      return { pour: k + 1, cells };
    }),
  };
}

/** The order and pour starts of a solution; undefined when it names squares the floor does not have. */
export function orderOf(
  problem: SpreadProblem,
  solution: SpreadSolution,
): { readonly order: Int32Array; readonly starts: Int32Array } | undefined {
  const { at, columns, rows } = problem.squares;
  const order: number[] = [];
  const starts: number[] = [];
  for (const { cells } of solution.pours) {
    starts.push(order.length);
    for (let k = 0; k + 1 < cells.length; k += 2) {
      const i = cells[k] as number;
      const j = cells[k + 1] as number;
      const square = i < columns && j < rows ? (at[j * columns + i] as number) : -1;
      if (square < 0) return undefined;
      order.push(square);
    }
  }
  return { order: Int32Array.from(order), starts: Int32Array.from(starts) };
}
