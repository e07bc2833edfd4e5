import { type BailOut, bailOuts, spareBeforePours } from './bail-out.ts';
import type { Candidate } from './candidate.ts';
import { pourOutlines } from './outlines.ts';
import type { SpreadProblem } from './problem.ts';
import type { Point, Ring } from './types.ts';

/** What the crew needs to know of one pour. Minutes after the start, litres, metres. */
export interface PourSheet {
  /** From 1. */
  readonly pour: number;
  /** Litres spread. */
  readonly litres: number;
  /** Litres mixed: a whole batch, less only in the part batch. */
  readonly mixLitres: number;
  /** Share of a whole batch to mix, 1 for all but the last. */
  readonly part: boolean;
  readonly areaM2: number;
  readonly edgeM: number;
  readonly mixFromMin: number;
  readonly mixedMin: number;
  readonly startMin: number;
  readonly endMin: number;
  readonly workingMin: number;
  /** Minutes this pour may start late before something closes too late; the first pour: its own working time. */
  readonly spareMin: number;
  readonly from: Point;
  readonly to: Point;
  readonly outline: readonly Ring[];
  /** Where to stop if something goes wrong in this pour; the last one has none. */
  readonly bailOut?: BailOut;
}

/** The pours of a plan one by one, with clock, arrow, outline, reserve and the place to stop at. */
export function pourSheets(problem: SpreadProblem, plan: Candidate): PourSheet[] {
  const { squares, question, batchLitres } = problem;
  const outlines = pourOutlines(problem, plan);
  const spare = spareBeforePours(problem, plan);
  const stops = bailOuts(problem, plan);
  return plan.clock.pours.map((pour, k) => {
    let litres = 0;
    let areaM2 = 0;
    let edgeM = 0;
    for (let place = pour.first; place < pour.end; place++) {
      const s = plan.order[place] as number;
      litres += squares.litres[s] as number;
      areaM2 += squares.areaM2[s] as number;
      edgeM += squares.edgeM[s] as number;
    }
    const part = k === plan.clock.pours.length - 1 && litres < batchLitres - 1e-9;
    const bailOut = stops.find((stop) => stop.pour === k + 1);
    return {
      pour: k + 1,
      litres,
      mixLitres: part ? litres : batchLitres,
      part,
      areaM2,
      edgeM,
      mixFromMin: pour.mixedMin - question.batch.mixMin,
      mixedMin: pour.mixedMin,
      startMin: pour.startMin,
      endMin: pour.endMin,
      workingMin: pour.workingMin,
      spareMin: spare[k] as number,
      from: meanPlace(problem, plan, pour.first, pour.first + Math.ceil((pour.end - pour.first) / 5)),
      to: meanPlace(problem, plan, pour.end - Math.ceil((pour.end - pour.first) / 5), pour.end),
      outline: outlines[k] as Ring[],
      ...(bailOut ? { bailOut } : {}),
    };
  });
}

/** Middle of the squares between two places of the order: one end of the arrow along a pour. */
function meanPlace(problem: SpreadProblem, plan: Candidate, from: number, to: number): Point {
  let x = 0;
  let y = 0;
  for (let place = from; place < to; place++) {
    x += problem.squares.x[plan.order[place] as number] as number;
    y += problem.squares.y[plan.order[place] as number] as number;
  }
  const n = Math.max(1, to - from);
  return [x / n, y / n];
}
