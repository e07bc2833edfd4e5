import { addDays } from '../../kernel/instant.ts';
import { givenFact, type OptionContext } from '../context.ts';
import type { SurveyPlan } from '../results.ts';
import { type Coat, type Found, NOTHING } from './coat.ts';
import { below } from './limits.ts';

const DAY = 86_400;

/** Age the sheet asks of new concrete, with the date on which it is old enough. */
export function ageFit(ctx: OptionContext, coat: Coat, { slabAge }: SurveyPlan): Found {
  const { youngestConcrete } = coat.product;
  if (!youngestConcrete || youngestConcrete.value === 0) return NOTHING;
  const youngest = givenFact(coat.trace, 'youngest-concrete', youngestConcrete, { where: coat.sheet });
  const names = { layer: coat.name };
  if (!slabAge) {
    const said = { code: 'system-age-not-known', figures: { youngest: youngest.id }, names };
    return {
      reasons: [{ ...said, verdict: 'not known', source: youngest.id }],
      missing: [
        { path: 'survey.slab.cast', fact: said, changes: { code: 'system-age-changes', names }, meanwhile: 'held' },
      ],
    };
  }
  if (!below(slabAge.value, youngest.value)) return NOTHING;
  const cast = ctx.job.survey.slab?.cast;
  const on = cast ? addDays(cast, Math.ceil(youngest.value / DAY)) : '';
  return {
    reasons: [
      {
        code: 'system-concrete-too-young',
        verdict: 'stop',
        figures: { age: slabAge.id, youngest: youngest.id },
        names: { ...names, on },
        source: youngest.id,
        lift: { code: 'system-concrete-too-young-lift', names: { on } },
      },
    ],
  };
}
