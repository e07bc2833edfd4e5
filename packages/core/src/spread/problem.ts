import { batchesNeeded } from './cut-pours.ts';
import { type FloorSquares, floorSquares } from './floor-squares.ts';
import { handsOf } from './hands.ts';
import type { SpreadCase } from './types.ts';

/** A case made ready for planning: its squares and the numbers every candidate needs. */
export interface SpreadProblem {
  readonly question: SpreadCase;
  readonly squares: FloorSquares;
  readonly batchLitres: number;
  readonly leastBatches: number;
  /** m²/min of the whole front. */
  readonly frontM2PerMin: number;
  /** Squares a person may end on: door squares of every exit, each once. */
  readonly doorSquares: Int32Array;
}

/** `whole`: the instance format's own squares; `clipped`: the product's. */
export function spreadProblem(question: SpreadCase, areas: 'whole' | 'clipped'): SpreadProblem {
  const squares = floorSquares(question, areas);
  const doors = new Set<number>();
  for (const door of squares.doors) for (const square of door) doors.add(square);
  let minutes = 0;
  let area = 0;
  for (let s = 0; s < squares.count; s++) {
    minutes += squares.minutes[s] as number;
    area += squares.areaM2[s] as number;
  }
  return {
    question,
    squares,
    batchLitres: question.batch.litres,
    leastBatches: batchesNeeded(squares, question.batch.litres),
    frontM2PerMin: minutes > 0 ? area / minutes : handsOf(question.crew).spreadM2PerMin,
    doorSquares: Int32Array.from([...doors].sort((a, b) => a - b)),
  };
}
