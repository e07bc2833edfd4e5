import type { Reason } from '../../kernel/verdict.ts';
import { type OptionContext, productOf } from '../context.ts';
import type { HoursPlan, QuantitiesPlan, SurveyPlan } from '../results.ts';

const notKnown = (code: string, names: Readonly<Record<string, string>> = {}): Reason => ({
  verdict: 'not known',
  code,
  names,
  lift: { code: `${code}-lift`, names },
});

/** Parts of the work that the earlier steps could not count. A price without them would be below what it costs. */
export function leftOut(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  quantified: QuantitiesPlan,
  timed: HoursPlan,
): readonly Reason[] {
  const measured = new Set(surveyed.areas.map(({ id }) => id));
  const areas = ctx.option.areas.filter((id) => !measured.has(id));
  const bought = new Set(quantified.buying.flatMap(({ kind, layers }) => layers.map((layer) => `${kind} ${layer}`)));
  const coats = ctx.system.layers.filter(({ id }) => !bought.has(`product ${id}`));
  const thrown = ctx.system.layers.filter(({ id, broadcast }) => broadcast && !bought.has(`media ${id}`));
  const named = (id: string): string => ctx.job.areas.find((area) => area.id === id)?.name ?? id;
  const preparation = timed.verdict.reasons.some(({ code }) => code === 'hours-preparation-left-out');
  return [
    ...areas.map((id) => notKnown('price-area-not-measured', { area: named(id) })),
    ...coats.map((layer) => notKnown('price-coat-not-counted', { layer: layer.name ?? productOf(ctx, layer).name })),
    ...thrown.map((layer) => notKnown('price-broadcast-not-counted', { layer: layer.name ?? layer.id })),
    // Hours that the firm states itself may well hold work that nobody planned here.
    ...(preparation && !ctx.option.paidHours ? [notKnown('price-preparation-not-counted')] : []),
  ];
}
