import type { Product } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenField, type OptionContext, sheetOf } from '../context.ts';
import { assumed } from './assumed.ts';
import { clock, leastOf, type Reading } from './readings.ts';

/** Differences of temperature are compared in ten-thousandths of a kelvin: 3 K written as 5.4 F° is 3 K. */
const TIE = 1e-4;
export const below = (value: number, limit: number): boolean => value < limit - TIE;
export const above = (value: number, limit: number): boolean => value > limit + TIE;

/** Least margin above the dew point: the sheet's own in its own unit, else the custom of 3 °C. */
export const marginLimit = (trace: Trace, product: Product): Known<'K'> =>
  product.climate?.dewMargin
    ? givenField(trace, 'limit.margin', product.climate.dewMargin, 'data sheet', { where: sheetOf(product) })
    : assumed(trace, 'limit.margin', 'dewMargin', 'K', 'hours-margin-rule-assumed', 'difference');

/**
 * Margin of some readings against the limit. Too small is a stop; large enough only if the instruments err the right
 * way is a caution.
 */
export function marginReasons(
  ctx: OptionContext,
  when: 'start' | 'night',
  readings: readonly Reading[],
  limit: Known<'K'>,
  names: Readonly<Record<string, string>>,
): readonly Reason[] {
  const least = leastOf(readings, ({ margin }) => margin);
  if (!least) return [];
  const { reading, known: margin } = least;
  const said = {
    figures: { margin: margin.id, limit: limit.id },
    names: { ...names, at: clock(ctx, reading.epoch) },
    source: limit.id,
  };
  if (below(margin.value, limit.value)) {
    const code = `hours-margin-${when}`;
    return [{ verdict: 'stop', code, ...said, lift: { code: `${code}-lift`, figures: { limit: limit.id } } }];
  }
  if (margin.band && below(margin.band[0], limit.value)) {
    return [
      {
        verdict: 'caution',
        code: `hours-margin-${when}-within-error`,
        ...said,
        lift: { code: 'hours-read-again-lift' },
      },
    ];
  }
  return [];
}
