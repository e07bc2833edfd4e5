import { round9 } from '../../kernel/canonical.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import { rateFromText } from '../../kernel/money.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { MixedProduct } from '../as-mixed.ts';
import { type OptionContext, productOf } from '../context.ts';
import { shareAbove, shareLeft, weakestMargin } from '../formulas/fits.ts';
import type { CrackPlan, NeedsPlan, SurveyPlan, SystemPlan } from '../results.ts';
import { filmMargins } from './film-margins.ts';
import { metMargins } from './met-margins.ts';
import type { Shared } from './shared.ts';
import { readMargins, sheetMargins } from './sheet-margins.ts';
import type { Met } from './windows.ts';

/**
 * A must-have with how far the system lies on the right side of it, as a share of the limit. It is stated only where
 * both sides are numbers of one test; what is not known has no margin, and never one of nought.
 */
export interface Margin {
  /** `moisture`, `film`, or a property of the table of methods. */
  readonly need: string;
  /** Key of its word. */
  readonly word: string;
  /** Coat or product that lies nearest to the limit. */
  readonly at?: string;
  readonly margin: Figure<'1'>;
}

/** When the floor is wanted, and how long the system takes for it from the start. */
export interface Wanted {
  readonly start: Instant;
  readonly by: Instant;
  readonly takes: Known<'s'>;
}

export interface Weighing {
  readonly ctx: OptionContext;
  readonly surveyed: SurveyPlan;
  readonly fitted: SystemPlan;
  readonly needed: NeedsPlan;
  readonly wanted: Wanted | undefined;
  readonly price: Known<'money'> | undefined;
  readonly shared: Shared;
  readonly lines: readonly CrackPlan[];
  /** What each coat meets at the start found for it; nothing without weather, or where a coat finds no start. */
  readonly met: readonly Met[] | undefined;
}

/** Every must-have whose margin can be stated, the weakest first; of one need on several coats the nearest to its limit. */
export function marginsOf(weighing: Weighing, root: Trace): readonly Margin[] {
  const { ctx, surveyed, fitted, needed, wanted, price, shared, lines } = weighing;
  const trace = root.within('margin');
  const { layers } = ctx.system;
  const products = [...new Set(layers.map((layer) => productOf(ctx, layer)))];
  const all: readonly Margin[] = [
    ...moisture(surveyed, fitted, trace),
    ...products.flatMap((product) =>
      shared.sheetMargins(product, () => sheetMargins(ctx, surveyed, product, trace.within(product.id))),
    ),
    ...roomMargins(weighing, products, trace),
    ...filmMargins(ctx, fitted, surveyed, trace),
    ...needs(needed, trace),
    ...bridged(lines, trace),
    ...date(wanted, trace),
    ...budget(ctx, price, trace),
  ];
  const nearest = new Map<string, Margin>();
  for (const one of all) {
    const before = nearest.get(one.need);
    if (!before || one.margin.value < before.margin.value) nearest.set(one.need, one);
  }
  return [...nearest.values()].sort(
    (a, b) => round9(a.margin.value) - round9(b.margin.value) || (a.need < b.need ? -1 : 1),
  );
}

export function weakestOf(margins: readonly Margin[], trace: Trace): Margin | undefined {
  const [first] = margins;
  if (!first) return undefined;
  return { ...first, margin: trace.figure('weakest', weakestMargin, { margins: margins.map((one) => one.margin) }) };
}

/** Dew point, temperatures and humidity: at the start found in the weather, else as the survey read them. */
function roomMargins(
  { ctx, surveyed, shared, met }: Weighing,
  products: readonly MixedProduct[],
  trace: Trace,
): readonly Margin[] {
  const { site } = shared;
  if (!site || !met)
    return products.flatMap((product) =>
      shared.readMargins(product, () => readMargins(ctx, surveyed, product, trace.within(product.id))),
    );
  return ctx.system.layers.flatMap((layer, i) => {
    const each = met[i];
    return each ? metMargins(productOf(ctx, layer), each, site, trace.within('met').within(layer.id)) : [];
  });
}

const named = (need: string, margin: Figure<'1'>): Margin => ({ need, word: `fits-need-${need}`, margin });

function moisture(surveyed: SurveyPlan, fitted: SystemPlan, trace: Trace): readonly Margin[] {
  return surveyed.moisture.highest.flatMap(({ method, value: reading }): readonly Margin[] => {
    const found = fitted.moistureLimit.find((one) => one.method === method && one.limit.unit === reading.unit);
    if (!found || found.limit.value <= 0) return [];
    const name = `moisture.${method.toLowerCase().replaceAll(' ', '-')}`;
    return [named('moisture', trace.figure(name, shareLeft, { limit: found.limit, reading }))];
  });
}

/** Properties of the sheets that the use asks for, each where the test, its conditions and the form of the value agree. */
function needs({ needs: all }: NeedsPlan, trace: Trace): readonly Margin[] {
  return all.flatMap(({ id, what, closest }): readonly Margin[] => {
    if (!closest || closest.limit.value <= 0) return [];
    const { end, limit, claimed: reading, product } = closest;
    const law = end === 'least' ? shareAbove : shareLeft;
    const margin = trace.figure(`need.${id}`, law, { limit, reading });
    return [{ need: what, word: `evidence-property-${what}`, at: product, margin }];
  });
}

/** Only lines that a coat crosses because it was shown to bear them; what is honoured asks nothing of a film. */
function bridged(lines: readonly CrackPlan[], trace: Trace): readonly Margin[] {
  return lines.flatMap(({ id, area, planned, toBear, bridges }): readonly Margin[] => {
    if (planned !== 'filled and reinforced' || !toBear || toBear.value <= 0 || !bridges.width) return [];
    const margin = trace.figure(`crack.${area}.${id}`, shareAbove, { limit: toBear, reading: bridges.width });
    return [{ ...named('crack', margin), at: id }];
  });
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
  return [named('date', trace.figure('date', shareLeft, { limit, reading: wanted.takes }))];
}

/** Two currencies are never compared. */
function budget({ job, priceBook }: OptionContext, price: Known<'money'> | undefined, trace: Trace): readonly Margin[] {
  const { budget: stated } = job;
  if (!stated || !price || stated.currency !== priceBook?.currency) return [];
  const value = rateFromText(stated.amount, stated.currency);
  if (value <= 0) return [];
  const typed = `${stated.amount} ${stated.currency}`;
  const limit = trace.given('budget-there-is', { value, unit: 'money', origin: 'chosen', typed, shows: 'money' });
  return [named('budget', trace.figure('budget', shareLeft, { limit, reading: price }))];
}
