import type { SpreadCase, SpreadSolution } from '../types.ts';
import type { SpreadBreak } from './break.ts';
import { checkLitres, coverage, pieces } from './coverage.ts';
import { checkDryReach, checkStation } from './dry-reach.ts';
import { checkOpenEdges } from './open-edges.ts';
import { rasterOf } from './raster.ts';
import { replay } from './replay.ts';
import { narrowSteps, withinReach } from './width.ts';

export interface SequenceReport {
  readonly ok: boolean;
  readonly breaks: readonly SpreadBreak[];
  readonly maxAgeMin: number;
  readonly p95AgeMin: number;
  readonly seamM: number;
  readonly coldM: number;
  readonly lateMin: number;
  readonly walkM: number;
  readonly minutes: number;
  readonly pours: number;
  /** Pours that fall into pieces that do not touch. */
  readonly splitPours: number;
  readonly leftoverL: number;
}

/**
 * Judges a sequence of pours, the planner's or one drawn by hand, with its own raster, clock and walks.
 *
 * Looks for: squares left out, spread twice or not on the floor; pours larger than a batch (by more than half a square);
 * pours past the working time; edges closed after the open time; people painted in; moves without a dry way; an end
 * that is not at an exit; a covered mixing station. Walking is the way people must really take.
 */
export function checkSequence(
  question: SpreadCase,
  solution: SpreadSolution,
  areas: 'whole' | 'clipped',
): SequenceReport {
  const floor = rasterOf(question, areas);
  const breaks: SpreadBreak[] = [];
  const pours = coverage(floor, solution, breaks);
  const needed = question.passageM ?? 0.45;
  const measured = areas === 'clipped' ? narrowSteps(question, floor, needed) : new Map<number, number>();
  const narrow = measured.size > 0 ? withinReach(floor, measured) : measured;
  checkLitres(question, floor, pours, breaks);
  const sequence = pours.flat();
  checkDryReach(question, floor, sequence, narrow, breaks);
  const { time, walkM, minutes, lateMin } = replay(question, floor, pours, narrow, breaks);
  checkStation(question, floor, pours, breaks);
  const edges = checkOpenEdges(question, floor, pours, time, breaks);
  const used = pours.flat().reduce((sum, s) => sum + (floor.squares[s]?.litres ?? 0), 0);
  return {
    ok: breaks.length === 0,
    breaks,
    ...edges,
    lateMin,
    walkM,
    minutes,
    pours: pours.length,
    splitPours: pours.filter((pour) => pieces(floor, pour) > 1).length,
    leftoverL: pours.length * question.batch.litres - used,
  };
}
