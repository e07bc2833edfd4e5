import type { Product } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { timeUntilUse } from '../formulas/fits.ts';
import { pointFor } from '../hours/deadlines.ts';
import type { SurveyPlan } from '../results.ts';

export type Use = 'foot' | 'light' | 'vehicle';

/** What the floor waits for: cars unless the customer said that it is walked on or lightly used. */
export function useOf(ctx: OptionContext): Use {
  const traffic = ctx.job.use?.traffic;
  return traffic === 'foot' || traffic === 'light' ? traffic : 'vehicle';
}

export type UntilUse = { readonly ok: true; readonly time: Figure<'s'> } | { readonly ok: false; readonly why: Said };

type Moment = NonNullable<Product['times']>[number]['what'];

/**
 * From the first coat to the use, by the sheets: each coat may be coated over from its own time on, the last carries
 * the use. Each time is the sheet's point next to the coldest slab read; nothing is extrapolated.
 */
export function untilUse(ctx: OptionContext, surveyed: SurveyPlan, use: Use, trace: Trace): UntilUse {
  const coldest = surveyed.margins.reduce<number | undefined>(
    (least, { slab }) => (least === undefined ? slab.value : Math.min(least, slab.value)),
    undefined,
  );
  const { layers } = ctx.system;
  const times: Known<'s'>[] = [];
  for (const [i, layer] of layers.entries()) {
    const product = productOf(ctx, layer);
    const what: Moment = i === layers.length - 1 ? use : 'recoat from';
    const points = (product.times ?? []).filter((time) => time.what === what);
    const point = pointFor(points, coldest);
    if (!point) {
      const names = { layer: layer.name ?? product.name, moment: `@fits-moment-${what.replace(' ', '-')}` };
      return { ok: false, why: { code: 'fits-time-not-on-sheet', names } };
    }
    times.push(givenFact(trace, `time.${layer.id}`, point.value, { where: `${sheetOf(product)}, ${point.at.typed}` }));
  }
  const last = times.at(-1);
  if (!last) throw new Error(`system ${ctx.system.id} has no layers, which its schema let through`);
  return { ok: true, time: trace.figure('until-use', timeUntilUse, { waits: times.slice(0, -1), last }) };
}
