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
  /** Squares a person may end on, each once. */
  readonly doorSquares: Int32Array;
  /** Way from a door to a mixing station on the floor: spread last of all, so that it stays dry for every pail. */
  readonly lastWay: Int32Array;
}

/** `whole`: the instance format's own squares; `clipped`: the product's. */
export function spreadProblem(question: SpreadCase, areas: 'whole' | 'clipped'): SpreadProblem {
  const squares = floorSquares(question, areas);
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
    doorSquares: squares.doorSquares,
    lastWay: squares.lastWay,
  };
}
