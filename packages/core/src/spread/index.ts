export { areasBetween, type Division } from './areas.ts';
export { type BailOut, bailOuts, spareBeforePours } from './bail-out.ts';
export { type Candidate, candidateOf, timedCandidate } from './candidate.ts';
export { checkCase, MOST_SQUARES } from './check-case.ts';
export { checkSequence, type SequenceReport, type SpreadBreak } from './checker/index.ts';
export type { SpreadClock, TimedPour } from './clock.ts';
export { type CoarseProof, coarseProof } from './coarse.ts';
export { dayCase, dayCases, type OtherPart } from './day-parts.ts';
export { type DrawnPour, drawnSolution, reordered } from './drawn.ts';
export {
  checkOutlines,
  judgeOutlines,
  type OutlinedFacts,
  type OutlinedIssues,
  type OutlinedJudgement,
  type OutlinedPour,
  type OutlinedSequence,
  sequenceFromOutlines,
} from './drawn-outlines.ts';
export { fullEffort, quickEffort, type SpreadEffort, type SpreadProgress } from './effort.ts';
export { EXACT_MOST_SQUARES, type ExactAge, type ExactQuestion, exactLargestAge } from './exact.ts';
export type { FloorSquares } from './floor-squares.ts';
export { type Hands, handsOf } from './hands.ts';
export { type Read, readInstance, readSolution } from './instance.ts';
export { type Front, sameSideAge, toAndFroAge, widestSameSide, widestToAndFro } from './lane-age.ts';
export { jointGridHall } from './large-floors.ts';
export { pourOutlines } from './outlines.ts';
export { PASSAGE_M } from './passage.ts';
export { type PlanOptions, planSpread, type SpreadPlan, type SpreadResult } from './planner.ts';
export { type PourSheet, pourSheets } from './pour-sheet.ts';
export { type SpreadProblem, spreadProblem } from './problem.ts';
export { arithmeticReasons, type SpreadReason, searchedReason } from './reasons.ts';
export { type RepairKind, type RepairOptions, type RepairTrial, repairsFor, type SpreadRepair } from './repairs.ts';
export { type SpreadScore, scoreOf } from './score.ts';
export { type SearchOptions, search } from './search.ts';
export { orderOf, solutionOf } from './solution.ts';
export { textMap } from './text-map.ts';
export { trueWalk } from './true-walking.ts';
export type * from './types.ts';
