import type { Figure, Known } from '../../kernel/entry.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { shareAbove, shareLeft, weakestMargin } from '../formulas/fits.ts';
import type { SurveyPlan, SystemPlan } from '../results.ts';

/** A need with how far this system and slab lie on the right side of it. */
export interface Margin {
  readonly need: 'moisture' | 'bond' | 'date';
  readonly margin: Figure<'1'>;
}

export interface Weakest {
  readonly need: Margin['need'];
  readonly margin: Figure<'1'>;
}

/** When the floor is wanted, and how long the system takes for it from its first coat. */
export interface Wanted {
  readonly start: Instant;
  readonly by: Instant;
  readonly takes: Known<'s'>;
}

/** Margins that can be stated as a share: moisture below its limit, bond above its need, days before the date. */
export function marginsOf(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  fitted: SystemPlan,
  wanted: Wanted | undefined,
  trace: Trace,
): readonly Margin[] {
  return [...moisture(surveyed, fitted, trace), ...bond(ctx, surveyed, trace), ...date(wanted, trace)];
}

export function weakestOf(margins: readonly Margin[], trace: Trace): Weakest | undefined {
  const [first] = margins;
  if (!first) return undefined;
  const weakest = margins.reduce((least, one) => (one.margin.value < least.margin.value ? one : least), first);
  const margin = trace.figure('weakest', weakestMargin, { margins: margins.map((one) => one.margin) });
  return { need: weakest.need, margin };
}

function moisture(surveyed: SurveyPlan, fitted: SystemPlan, trace: Trace): readonly Margin[] {
  return surveyed.moisture.highest.flatMap(({ method, value: reading }): readonly Margin[] => {
    const found = fitted.moistureLimit.find((one) => one.method === method && one.limit.unit === reading.unit);
    if (!found || found.limit.value <= 0) return [];
    const name = `margin.moisture.${method.toLowerCase().replaceAll(' ', '-')}`;
    return [{ need: 'moisture', margin: trace.figure(name, shareLeft, { limit: found.limit, reading }) }];
  });
}

/** Against the coat that asks for most: the slab must carry them all. */
function bond(ctx: OptionContext, { pullOff }: SurveyPlan, trace: Trace): readonly Margin[] {
  if (!pullOff) return [];
  let asked: { readonly product: ReturnType<typeof productOf>; readonly value: number } | undefined;
  for (const layer of ctx.system.layers) {
    const product = productOf(ctx, layer);
    const value = product.bondNeed?.value;
    if (value !== undefined && (!asked || value > asked.value)) asked = { product, value };
  }
  if (!asked?.product.bondNeed) return [];
  const limit = givenFact(trace, 'bond-need', asked.product.bondNeed, { where: sheetOf(asked.product) });
  return [{ need: 'bond', margin: trace.figure('margin.bond', shareAbove, { limit, reading: pullOff.mean }) }];
}

function date(wanted: Wanted | undefined, trace: Trace): readonly Margin[] {
  if (!wanted) return [];
  const seconds = (epochOf(wanted.by) - epochOf(wanted.start)) / 1000;
  if (seconds <= 0) return [];
  const limit = trace.given('time-there-is', {
    value: seconds,
    unit: 's',
    origin: 'chosen',
    where: `${wanted.start} to ${wanted.by}`,
    shows: 'duration',
  });
  return [{ need: 'date', margin: trace.figure('margin.date', shareLeft, { limit, reading: wanted.takes }) }];
}
