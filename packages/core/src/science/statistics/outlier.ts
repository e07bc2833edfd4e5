import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { needValues, needWhole, sampleDeviation, sampleMean } from './moments.ts';

/**
 * How many standard deviations the furthest reading lies from the mean (Grubbs).
 *
 * A reading beyond the critical value is flagged and asks for a cause (glue, void, tilted puller). It is never
 * dropped by itself.
 */
export const grubbs = formula({
  id: 'statistics/grubbs',
  says: 'How many standard deviations the furthest reading lies from the mean',
  equation: 'G = max |value - mean| / deviation',
  takes: { values: '*[]' },
  gives: '1',
  holds: {},
  source: 'grubbs-test',
  noOutsideRow: 'The read example rounds its deviation wrongly; the classic readings are from memory (MEM).',
  compute: ({ values }) => {
    needValues(values, 3);
    const deviation = sampleDeviation(values);
    if (deviation === 0) throw new Refuse('values-all-equal', 'values');
    const mean = sampleMean(values);
    return Math.max(...values.map((value) => Math.abs(value - mean))) / deviation;
  },
});

/** Value of G that chance alone exceeds with the stated significance. One or two sides must be named. */
export const grubbsCritical = formula({
  id: 'statistics/grubbs-critical',
  says: 'Distance beyond which the furthest of n readings is an outlier',
  equation: 'G = (n - 1)/sqrt(n) sqrt(t²/(n - 2 + t²)), t = t(1 - significance/(sides n), n - 2)',
  takes: { count: '1', significance: '1', sides: '1' },
  gives: '1',
  holds: { count: [3, 200], significance: [0.01, 0.1], sides: [1, 2] },
  refuses: { count: [3, 100_000], significance: [1e-6, 0.5], sides: [1, 2] },
  source: 'grubbs-test',
  notes: 'Two-sided 5 % equals one-sided 2.5 %. One printed table has 2.202 for n = 7 where the formula gives 2.020.',
  inputShows: { count: 'count', significance: 'share', sides: 'count' },
  compute: ({ count, significance, sides }) => {
    needWhole(count, 'count');
    needWhole(sides, 'sides');
    const t = tQuantile(1 - significance / (sides * count), count - 2);
    return ((count - 1) / Math.sqrt(count)) * Math.sqrt((t * t) / (count - 2 + t * t));
  },
});
