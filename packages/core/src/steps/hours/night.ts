import type { Product } from '../../catalogue.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import { clock, type Reading } from './readings.ts';

/** Where the sheet states no time for foot traffic a night is meant: an assumption. */
const A_NIGHT = 12 * 3600_000;

/** Longest time the sheet gives until people may walk on it, at whatever temperature it states. */
export function footAfter(product: Product): number {
  const times = (product.times ?? []).filter(({ what }) => what === 'foot').map(({ value }) => value.value * 1000);
  return times.length > 0 ? Math.max(...times) : A_NIGHT;
}

export interface Night {
  /** Readings after the start, up to the first one at or after foot traffic. */
  readonly readings: readonly Reading[];
  readonly reasons: readonly Reason[];
}

/**
 * Readings while the film cures. They count until the first one at or after the time for foot traffic, because a slab
 * colder than the sheet's keeps the film soft for longer. Readings that end before that leave the night not known: the
 * margin at noon says nothing about it.
 */
export function nightOf(
  ctx: OptionContext,
  readings: readonly Reading[],
  product: Product,
  start: number,
  names: Readonly<Record<string, string>>,
): Night {
  const end = start + footAfter(product);
  const after = readings.filter(({ margin, epoch }) => margin !== undefined && epoch > start);
  const closing = after.find(({ epoch }) => epoch >= end);
  const counted = closing ? after.filter(({ epoch }) => epoch <= closing.epoch) : after;
  if (closing) return { readings: counted, reasons: [] };
  const last = counted.at(-1);
  const until = clock(ctx, end);
  return {
    readings: counted,
    reasons: [
      {
        verdict: 'not known',
        code: last ? 'hours-night-not-read-to-the-end' : 'hours-night-not-read',
        names: { ...names, until, ...(last ? { last: clock(ctx, last.epoch) } : {}) },
        source: 'amine-bloom-help-page',
        lift: { code: 'hours-night-not-read-lift', names: { until } },
      },
    ],
  };
}
