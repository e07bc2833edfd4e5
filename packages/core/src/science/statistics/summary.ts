import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { carefulSum, needValues, sampleDeviation, sampleMean, squaredDepartures } from './moments.ts';

/** Mean of readings, in their own unit. */
export const meanOfValues = formula({
  id: 'statistics/mean',
  says: 'Mean of readings',
  equation: 'mean = sum(values) / n',
  takes: { values: '*[]' },
  gives: '*',
  holds: {},
  source: 'nist-strd-univariate',
  locator: 'sample mean',
  compute: ({ values }) => {
    needValues(values, 1);
    return sampleMean(values);
  },
});

/** Standard deviation of a sample (n - 1), in the unit of the readings. For temperatures give differences. */
export const deviationOfValues = formula({
  id: 'statistics/standard-deviation',
  says: 'Standard deviation of a sample of readings',
  equation: 'deviation = sqrt(sum((value - mean)²) / (n - 1))',
  takes: { values: '*[]' },
  gives: '*',
  holds: {},
  source: 'nist-strd-univariate',
  locator: 'sample standard deviation, denominator n - 1',
  notes: 'Two passes. The one-pass sum of squares loses all digits when the mean is large beside the spread.',
  compute: ({ values }) => {
    needValues(values, 2);
    return sampleDeviation(values);
  },
});

/** Autocorrelation of neighbouring readings: near 1 where readings drift, so that they are not independent. */
export const autocorrelation = formula({
  id: 'statistics/autocorrelation',
  says: 'How far each reading follows its neighbour, -1 to 1',
  equation: 'r = sum((value_i - mean)(value_next - mean)) / sum((value_i - mean)²)',
  takes: { values: '*[]' },
  gives: '1',
  holds: {},
  source: 'nist-strd-univariate',
  locator: 'lag-1 autocorrelation',
  compute: ({ values }) => {
    needValues(values, 3);
    const squares = squaredDepartures(values);
    if (squares === 0) throw new Refuse('values-all-equal', 'values');
    const mean = sampleMean(values);
    const products = values.slice(1).map((value, i) => (value - mean) * ((values[i] as number) - mean));
    return carefulSum(products) / squares;
  },
});

/** Sum of values of one unit. */
export const sumOfValues = formula({
  id: 'statistics/sum',
  says: 'Sum of values of one unit',
  equation: 'total = sum(values)',
  takes: { values: '*[]' },
  gives: '*',
  holds: {},
  source: 'three-point-estimate',
  locator: 'means of independent tasks add',
  compute: ({ values }) => {
    needValues(values, 1);
    return carefulSum(values);
  },
});

/**
 * Standard deviation of a sum of items that vary independently.
 *
 * Percentiles never add, variances do. Items that share a cause (one slab, one crew) are not independent: carry the
 * cause by name instead.
 */
export const deviationOfSum = formula({
  id: 'statistics/sum-deviation',
  says: 'Standard deviation of a sum of independent items',
  equation: 'deviation = sqrt(sum(deviations²))',
  takes: { deviations: '*[]' },
  gives: '*',
  holds: {},
  source: 'three-point-estimate',
  locator: 'variances of independent tasks add',
  compute: ({ deviations }) => {
    needValues(deviations, 1, 'deviations');
    return Math.hypot(...deviations);
  },
});
