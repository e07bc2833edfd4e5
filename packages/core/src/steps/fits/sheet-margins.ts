import type { Product } from '../../catalogue.ts';
import type { Field } from '../../fields.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, givenField, type OptionContext, sheetOf } from '../context.ts';
import { shareAbove, shareLeft, shareOfRange } from '../formulas/fits.ts';
import { marginLimit } from '../hours/margin.ts';
import type { SurveyPlan } from '../results.ts';
import { vocLimitOf, workDay } from '../thinner/place.ts';
import type { Margin } from './margins.ts';

/** What one sheet asks of slab and place, whatever system the product lies in. */
export function sheetMargins(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  product: Product,
  trace: Trace,
): readonly Margin[] {
  const where = sheetOf(product);
  return marginsAt(product, [
    ['bond', bond(surveyed, product, where, trace)],
    ['age', age(surveyed, product, where, trace)],
    ['voc', voc(ctx, product, where, trace)],
  ]);
}

/**
 * What one sheet asks of the room, held against the readings of the survey: without weather. The hour of a coat is
 * chosen, so of several readings the most favourable one counts; it is the same that decides on a stop.
 */
export function readMargins(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  product: Product,
  trace: Trace,
): readonly Margin[] {
  const where = sheetOf(product);
  return marginsAt(product, [
    ['dew-point', dew(surveyed, product, trace)],
    ['slab-temperature', temperature('slab', ctx, product, where, trace)],
    ['air-temperature', temperature('air', ctx, product, where, trace)],
    ['humidity', humidity(ctx, product, where, trace)],
  ]);
}

/** Those that can be stated, each at its product. */
export const marginsAt = (
  { name: at }: Product,
  all: readonly (readonly [need: string, margin: Figure<'1'> | undefined])[],
): readonly Margin[] =>
  all.flatMap(([need, margin]) => (margin ? [{ need, word: `fits-need-${need}`, at, margin }] : []));

function bond({ pullOff }: SurveyPlan, { bondNeed }: Product, where: string, trace: Trace): Figure<'1'> | undefined {
  if (!pullOff || !bondNeed) return undefined;
  const limit = givenFact(trace, 'bond-need', bondNeed, { where });
  return trace.figure('bond', shareAbove, { limit, reading: pullOff.mean });
}

function age({ slabAge }: SurveyPlan, { youngestConcrete }: Product, where: string, trace: Trace) {
  if (!slabAge || !youngestConcrete || youngestConcrete.value <= 0) return undefined;
  const limit = givenFact(trace, 'youngest-concrete', youngestConcrete, { where });
  return trace.figure('age', shareAbove, { limit, reading: slabAge });
}

const highest = <K extends Known>(known: readonly K[]): K | undefined =>
  known.reduce<K | undefined>((most, one) => (most && most.value >= one.value ? most : one), undefined);

function dew({ margins }: SurveyPlan, product: Product, trace: Trace): Figure<'1'> | undefined {
  const reading = highest(margins.map(({ margin }) => margin));
  if (!reading) return undefined;
  return trace.figure('dew', shareAbove, { limit: marginLimit(trace, product), reading });
}

/** Degrees have no natural nought, so their margin is a share of the range that the sheet allows; one end alone has none. */
function temperature(of: 'slab' | 'air', ctx: OptionContext, product: Product, where: string, trace: Trace) {
  const { climate = {} } = product;
  const [least, most] = of === 'slab' ? [climate.slabLeast, climate.slabMost] : [climate.airLeast, climate.airMost];
  const read = (ctx.job.survey.climate ?? []).flatMap((one) => one[of] ?? []);
  if (!least || !most || least.value >= most.value || read.length === 0) return undefined;
  const ends = { least: end(trace, `${of}-least`, least, where), most: end(trace, `${of}-most`, most, where) };
  const room = ({ value }: Field<'°C'>): number => Math.min(value - least.value, most.value - value);
  const best = read.reduce((a, b) => (room(b) > room(a) ? b : a));
  const reading = givenField(trace, `${of}-read`, best, 'reading');
  return trace.figure(of, shareOfRange, { ...ends, reading });
}

export const end = (trace: Trace, name: string, field: Field<'°C'>, where: string): Known<'°C'> =>
  givenField(trace, name, field, 'data sheet', { where });

function humidity(ctx: OptionContext, { climate = {} }: Product, where: string, trace: Trace) {
  const [driest] = (ctx.job.survey.climate ?? []).map((one) => one.humidity).sort((a, b) => a.value - b.value);
  if (!climate.humidityMost || climate.humidityMost.value <= 0 || !driest) return undefined;
  const limit = givenField(trace, 'humidity-most', climate.humidityMost, 'data sheet', { where });
  return trace.figure('humidity', shareLeft, { limit, reading: givenField(trace, 'humidity-read', driest, 'reading') });
}

/** Against the limit the firm entered for the place; the coats of a tried system carry no thinner. */
function voc(ctx: OptionContext, product: Product, where: string, trace: Trace): Figure<'1'> | undefined {
  const rule = product.voc && vocLimitOf(ctx.job, product.id, workDay(ctx.option, ctx.now));
  if (!product.voc || !rule || rule.limit.value <= 0) return undefined;
  const limit = givenField(trace, 'voc-limit', rule.limit, 'chosen', { where: `${rule.category}: ${rule.source}` });
  return trace.figure('voc', shareLeft, { limit, reading: givenFact(trace, 'voc-stated', product.voc, { where }) });
}
