import type { Catalogue, Layer, Product, System } from '../catalogue.ts';
import type { Fact, Field } from '../fields.ts';
import type { Job, JobOption } from '../job.ts';
import { causeFromBand } from '../kernel/band.ts';
import type { Given, Origin } from '../kernel/entry.ts';
import type { Instant } from '../kernel/instant.ts';
import type { Trace } from '../kernel/trace.ts';
import type { Unit } from '../kernel/unit.ts';
import type { PriceBook } from '../price-book.ts';
import { asMixed, type MixedProduct } from './as-mixed.ts';

/** What every step may look at. Clock, seed and effort come in; nothing is read from the world. */
export interface StepContext {
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly priceBook?: PriceBook;
  readonly now: Instant;
  readonly seed: number;
}

/** The same for one option and its system. */
export interface OptionContext extends StepContext {
  readonly option: JobOption;
  readonly system: System;
  readonly products: ReadonlyMap<string, Product>;
}

/** The product of a coat as that coat is mixed: ratio, times and limits are those of its mix. */
export function productOf(ctx: OptionContext, layer: Layer): MixedProduct {
  return asMixed(soldAs(ctx, layer), layer.mix);
}

/** The product of a coat as it is bought: all its packs, whichever mix the coat takes. */
export function soldAs(ctx: OptionContext, layer: Layer): Product {
  const product = ctx.products.get(layer.product);
  if (!product) throw new Error(`layer ${layer.id} names a product that the check let through: ${layer.product}`);
  return product;
}

export const sheetOf = (product: Product): string =>
  product.sheet.date ? `${product.sheet.name}, ${product.sheet.date}` : product.sheet.name;

/**
 * Records a fact of a file as a Given: text as typed, door, place, date. A range that came with it becomes a band
 * under the cause named, its own id when none is given.
 */
export function givenFact<U extends Unit>(
  trace: Trace,
  name: string,
  fact: Fact<U>,
  parts: { readonly where?: string; readonly when?: string; readonly cause?: string } = {},
): Given<U> {
  const where = fact.where ?? parts.where;
  const when = fact.when ?? parts.when;
  const banded = fact.low !== undefined || fact.high !== undefined;
  const band = [fact.low ?? fact.value, fact.high ?? fact.value] as const;
  return trace.given<U>(name, {
    value: fact.value,
    unit: fact.unit,
    origin: fact.origin,
    typed: fact.typed,
    ...(where ? { where } : {}),
    ...(when ? { when } : {}),
    ...(fact.shows ? { shows: fact.shows } : {}),
    ...(banded ? { band, causes: causeFromBand(parts.cause ?? trace.idOf(name), band) } : {}),
  });
}

/** Records a plain field (no door of its own) under the origin its place in the file implies. */
export function givenField<U extends Unit>(
  trace: Trace,
  name: string,
  field: Field<U>,
  origin: Origin,
  parts: { readonly where?: string; readonly when?: string } = {},
): Given<U> {
  return trace.given<U>(name, {
    value: field.value,
    unit: field.unit,
    origin,
    typed: field.typed,
    ...(parts.where ? { where: parts.where } : {}),
    ...(parts.when ? { when: parts.when } : {}),
    ...(field.shows ? { shows: field.shows } : {}),
  });
}

/** A count that somebody chose or the drawing shows. */
export const givenCount = (trace: Trace, name: string, value: number, origin: Origin, where?: string): Given<'1'> =>
  trace.given(name, { value, unit: '1', origin, shows: 'count', ...(where ? { where } : {}) });
