import type { Trace } from '../../kernel/trace.ts';
import { mostInSequence, sumInSequence } from '../formulas/spread.ts';
import type { SpreadsPlan } from '../results.ts';

/** Rounds of hours and spread that were needed; a start that still moves at the last is told. */
export function withRounds(
  plan: SpreadsPlan,
  found: { readonly rounds: number; readonly moved: number },
  trace: Trace,
): SpreadsPlan {
  const inputs = { along: plan.coats.flatMap(({ largestAge }) => (largestAge ? [largestAge.id] : [])) };
  if (inputs.along.length === 0 || !Number.isFinite(found.moved)) return plan;
  const rounds = trace.taken('rounds', sumInSequence, { value: found.rounds, unit: '1', shows: 'count', inputs });
  const moved = trace.taken('moved', mostInSequence, { value: found.moved, unit: 's', shows: 'duration', inputs });
  const figures = { rounds: rounds.id, moved: moved.id };
  const settled = found.rounds === 1 ? 'spread-hours-of-chosen-starts' : 'spread-hours-settled';
  const code = found.moved < STANDS_STILL ? settled : 'spread-hours-not-settled';
  return { ...plan, rounds, moved, notes: [...plan.notes, { code, figures }] };
}

/** A start that moves by less than this stands still, s. */
export const STANDS_STILL = 300;
