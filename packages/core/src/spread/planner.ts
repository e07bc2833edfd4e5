import { type Candidate, isBetter, timedCandidate } from './candidate.ts';
import { checkCase } from './check-case.ts';
import { checkSequence, type SequenceReport } from './checker/index.ts';
import { type CoarseProof, coarseProof } from './coarse.ts';
import { quickEffort, type SpreadEffort, type SpreadProgress } from './effort.ts';
import { type SpreadProblem, spreadProblem } from './problem.ts';
import { checkReach } from './reach.ts';
import { search } from './search.ts';
import { orderOf, solutionOf } from './solution.ts';
import { trueWalk } from './true-walking.ts';
import type { SpreadCase, SpreadIssue, SpreadSolution } from './types.ts';

export interface PlanOptions {
  /** `clipped` for real floors; `whole` for the instance format's own squares. */
  readonly areas: 'whole' | 'clipped';
  /** Absent: quick. */
  readonly effort?: SpreadEffort | undefined;
  readonly seed: number;
  readonly onProgress?: SpreadProgress | undefined;
  /**
   * Sequences that must be among the candidates, so that the plan of a looser case is never worse than that of a tighter
   * one. Those that do not cover this floor's squares are left out.
   */
  readonly also?: readonly SpreadSolution[] | undefined;
}

/** A sequence that passed the checker. */
export interface SpreadPlan {
  readonly kind: 'plan';
  readonly problem: SpreadProblem;
  /** Timed and scored with the walks people must really take. */
  readonly best: Candidate;
  readonly solution: SpreadSolution;
  readonly check: SequenceReport;
  /** How near to the best on a coarse copy; absent when the effort has no nodes or no copy is fine enough. */
  readonly proof?: CoarseProof;
  /** Caution at best: the open time was a guess. */
  readonly openTimeAssumed: boolean;
  readonly stopped: boolean;
}

export type SpreadResult =
  | SpreadPlan
  /** Something to mend before planning. */
  | { readonly kind: 'issues'; readonly issues: readonly SpreadIssue[] }
  /** Nothing found that keeps every limit; the least bad sequence is for finding out why, not for showing. */
  | {
      readonly kind: 'none';
      readonly problem: SpreadProblem;
      readonly leastBad: Candidate;
      readonly check: SequenceReport;
      readonly stopped: boolean;
    };

/** Plans a floor: searches with straight walks, re-times the best with true ones, shows only what the checker passes. */
export function planSpread(question: SpreadCase, options: PlanOptions): SpreadResult {
  const amiss = checkCase(question);
  if (amiss.length > 0) return { kind: 'issues', issues: amiss };
  const problem = spreadProblem(question, options.areas);
  const unreachable = checkReach(problem);
  if (unreachable.length > 0) return { kind: 'issues', issues: unreachable };
  const effort = options.effort ?? quickEffort(problem.squares.count);
  let stopped = false;
  const { onProgress } = options;
  const ranked = retimed(
    problem,
    search(problem, {
      effort,
      seed: options.seed,
      onProgress: onProgress
        ? (done, of, bestScore) => {
            const goOn = onProgress(done, of, bestScore);
            stopped ||= !goOn;
            return goOn;
          }
        : undefined,
      also: (options.also ?? []).flatMap((solution) => orderOf(problem, solution)?.order ?? []),
    }),
  );
  let first: { leastBad: Candidate; check: SequenceReport } | undefined;
  for (const best of ranked) {
    const solution = solutionOf(problem, best);
    const check = checkSequence(question, solution, options.areas);
    if (check.ok) {
      const openTimeAssumed = question.openTimeAssumed === true;
      const going = (): boolean => {
        stopped ||= onProgress?.(effort.candidates, effort.candidates, best.score.score) === false;
        return !stopped;
      };
      const found = effort.nodes > 0 && !stopped ? coarseProof(problem, effort.nodes, undefined, going) : undefined;
      // a bound cut short by hand says less than the plan's own effort promises
      const proof = stopped ? undefined : found;
      const plan: SpreadPlan = { kind: 'plan', problem, best, solution, check, openTimeAssumed, stopped };
      return proof ? { ...plan, proof } : plan;
    }
    first ??= { leastBad: best, check };
    // the ranking already says that the rest close more edges too late or mix longer
    if (best.score.coldM > 0 || best.score.lateMin > 0) break;
  }
  if (!first) throw new Error('the search returned no candidate');
  return { kind: 'none', problem, ...first, stopped };
}

/** The candidates as they go with real walks, best first. */
export function retimed(problem: SpreadProblem, candidates: readonly Candidate[]): Candidate[] {
  const walk = trueWalk(problem);
  const timed = candidates.map((candidate) =>
    timedCandidate(problem, candidate.order, candidate.starts, candidate.name, walk),
  );
  // a move without any way has no minutes; when every candidate has one, the checker says which
  const possible = timed.filter(({ score }) => Number.isFinite(score.minutes));
  return [...(possible.length > 0 ? possible : candidates)].sort((a, b) =>
    isBetter(a.score, b.score) ? -1 : isBetter(b.score, a.score) ? 1 : 0,
  );
}
