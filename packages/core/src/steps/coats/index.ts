import type { Layer, Product } from '../../catalogue.ts';
import type { Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import { verdictOf } from '../../kernel/verdict.ts';
import { spreadRate } from '../../science/film/index.ts';
import { givenFact, givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import { marginLimit } from '../hours/margin.ts';
import type { CoatSheet, CoatsPlan, QuantitiesPlan, SystemPlan, Task } from '../results.ts';
import { batchGroups } from './batches.ts';
import { ladderOf } from './ladder.ts';

const LIMITS = [
  'slabLeast',
  'slabMost',
  'airLeast',
  'airMost',
  'humidityLeast',
  'humidityMost',
  'materialLeast',
  'materialMost',
] as const;

/** Limits of the sheet for the hour of laying, in the order a crew reads its instruments. */
function limitsOf(trace: Trace, product: Product): CoatSheet['limits'] {
  const where = sheetOf(product);
  return LIMITS.flatMap((key) => {
    const field = product.climate?.[key];
    if (!field) return [];
    const value: Known<Unit> = givenField<Unit>(trace, `limit.${key}`, field, 'data sheet', { where });
    return [{ what: key, value }];
  });
}

/** Times as the sheet prints them, each with its temperature; nothing is computed between two of them. */
function timesOf(trace: Trace, product: Product): CoatSheet['times'] {
  const where = sheetOf(product);
  return (product.times ?? []).map((time, i) => {
    const t = trace.within('time').within(`${i}`);
    return {
      what: time.what,
      at: givenField(t, 'at', time.at, 'data sheet', { where }),
      value: givenFact(t, 'value', time.value, { where }),
      ...(time.humidity ? { humidity: givenField(t, 'humidity', time.humidity, 'data sheet', { where }) } : {}),
    };
  });
}

function optional<U extends Unit>(trace: Trace, name: string, fact: Parameters<typeof givenFact<U>>[2], where: string) {
  const given: Given<U> = givenFact(trace, name, fact, { where });
  return { [name]: given };
}

function coatOf(
  ctx: OptionContext,
  layer: Layer,
  fitted: SystemPlan,
  quantified: QuantitiesPlan,
  tasks: readonly Task[],
  trace: Trace,
): CoatSheet {
  const t = trace.within(layer.id);
  const product = productOf(ctx, layer);
  const where = sheetOf(product);
  const fit = fitted.layers.find((one) => one.layer === layer.id);
  const quantity = quantified.layers.find((one) => one.layer === layer.id);
  const floor = tasks.filter((task) => task.layer === layer.id);
  return {
    layer: layer.id,
    product: product.id,
    name: layer.name ?? product.name,
    sheet: where,
    ...(fit ? { coverage: t.figure('coverage', spreadRate, { dryFilm: fit.dry, volumeSolids: fit.solids }) } : {}),
    ...(layer.broadcast ? { broadcast: givenFact(t, 'broadcast', layer.broadcast.thrown) } : {}),
    ...(product.mixTime ? optional(t, 'mixTime', product.mixTime, where) : {}),
    batches: quantity ? batchGroups(t, product, quantity) : [],
    dewMargin: marginLimit(t, product),
    limits: limitsOf(t, product),
    times: timesOf(t, product),
    ladder: ladderOf(t.within('ladder'), product, ctx.job.reader.units, fit, floor),
  };
}

/**
 * Each coat as the crew mixes and lays it: its batches by part, and what its data sheet says of the hour and of the
 * days after. Quotes and weighs, judges nothing: limits are judged where the hours are. Only the ladder is worked out.
 */
export function coats(
  ctx: OptionContext,
  fitted: SystemPlan,
  quantified: QuantitiesPlan,
  tasks: readonly Task[],
  trace: Trace,
): CoatsPlan {
  return {
    verdict: verdictOf([]),
    missing: [],
    notes: [],
    coats: ctx.system.layers.map((layer) => coatOf(ctx, layer, fitted, quantified, tasks, trace)),
  };
}
