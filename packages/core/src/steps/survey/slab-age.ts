import type { Figure } from '../../kernel/entry.ts';
import { daysBetween } from '../../kernel/instant.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { StepContext } from '../context.ts';
import { ageFromDays } from '../formulas/survey.ts';

/** Held by the system step where a sheet asks for an age; by itself an unknown age decides nothing. */
const MISSING: Missing = {
  path: 'survey.slab.cast',
  fact: { code: 'survey-missing-cast' },
  changes: { code: 'survey-missing-cast-changes' },
  meanwhile: 'assumed',
};

/** Age of the slab today in whole days. A date of casting that still lies ahead gives no age. */
export function slabAge(
  ctx: StepContext,
  trace: Trace,
): { readonly age?: Figure<'s'>; readonly missing: readonly Missing[] } {
  const cast = ctx.job.survey.slab?.cast;
  const days = cast === undefined ? undefined : daysBetween(cast, ctx.now);
  if (cast === undefined || days === undefined || days < 0) return { missing: [MISSING] };
  const given = trace.given('slab.days', {
    value: days,
    unit: '1',
    origin: 'reading',
    where: `${cast} – ${ctx.now.slice(0, 10)}`,
    shows: 'count',
  });
  return { age: trace.figure('slab.age', ageFromDays, { days: given }), missing: [] };
}
