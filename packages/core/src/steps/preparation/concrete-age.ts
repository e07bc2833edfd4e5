import type { Given } from '../../kernel/entry.ts';
import { addDays } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import type { SurveyPlan } from '../results.ts';

const DAY = 86_400;

/**
 * Concrete younger than a sheet of this system asks: a stop with the date on which it ends. Judged on the day of the
 * first coat where one is planned, else today.
 */
export function concreteAge(ctx: OptionContext, trace: Trace, surveyed: SurveyPlan): readonly Reason[] {
  const asked = ctx.system.layers.flatMap((layer): readonly { readonly least: Given<'s'>; readonly name: string }[] => {
    const product = productOf(ctx, layer);
    if (!product.youngestConcrete) return [];
    const t = trace.within(`age.${layer.id}`);
    return [
      { least: givenFact(t, 'least', product.youngestConcrete, { where: sheetOf(product) }), name: product.name },
    ];
  });
  const strictest = asked.reduce<(typeof asked)[number] | undefined>(
    (most, one) => (most && most.least.value >= one.least.value ? most : one),
    undefined,
  );
  if (!strictest) return [];
  const names = { product: strictest.name };
  const cast = ctx.job.survey.slab?.cast;
  if (!cast || !surveyed.slabAge) {
    const figures = { least: strictest.least.id };
    const lift = { code: 'preparation-concrete-age-not-known-lift' };
    return [{ verdict: 'not known', code: 'preparation-concrete-age-not-known', figures, names, lift }];
  }
  const date = addDays(cast, Math.ceil(strictest.least.value / DAY));
  const first = [...(ctx.option.starts ?? [])].map(({ at }) => at.slice(0, 10)).sort()[0];
  const day = first ?? ctx.now.slice(0, 10);
  if (day >= date) return [];
  const figures = { age: surveyed.slabAge.id, least: strictest.least.id };
  const reason: Reason = {
    verdict: 'stop',
    code: 'preparation-concrete-too-young',
    figures,
    names: { ...names, day },
    source: strictest.least.id,
    lift: { code: 'preparation-concrete-too-young-lift', names: { date } },
  };
  return [reason];
}
