import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { formula } from '../../kernel/formula.ts';
import { needValues, sampleDeviation, sampleMean } from './moments.ts';
import { toleranceFactorFor } from './tolerance-factor.ts';

const confidenceRange = [0.75, 0.99] as const;
const chanceSense = [0.01, 0.9999] as const;

/**
 * Lower confidence bound of the mean, in the unit of the values. Answers "is the average above?", nothing about the
 * weakest place.
 */
export const meanLowerBound = formula({
  id: 'statistics/mean-lower-bound',
  says: 'Lower confidence bound of the mean',
  equation: 'bound = mean - t(confidence, n - 1) deviation / sqrt(n)',
  takes: { values: '*[]', confidence: '1' },
  gives: '*',
  holds: { confidence: confidenceRange },
  refuses: { confidence: chanceSense },
  source: 'student-t-bound',
  notes: 'Normal population, independent places. Average only readings that failed in the same way.',
  inputShows: { confidence: 'share' },
  noOutsideRow: 'The worked pull-off set is own arithmetic (CALC); the t quantile is checked against a printed table.',
  compute: ({ values, confidence }) => {
    needValues(values, 2);
    const n = values.length;
    return sampleMean(values) - (tQuantile(confidence, n - 1) * sampleDeviation(values)) / Math.sqrt(n);
  },
});

/**
 * Characteristic value of the Eurocode kind, deviation unknown: the value the next reading exceeds with 95 %.
 *
 * The printed table of the standard is not the rounded formula (its n = 3 and n = 8 differ in the third digit); this
 * is the formula.
 */
export const characteristicLower = formula({
  id: 'statistics/characteristic-lower',
  says: 'Characteristic value: what the next reading exceeds with 95 %, deviation unknown',
  equation: 'characteristic = mean - t(0.95, n - 1) sqrt(1 + 1/n) deviation',
  takes: { values: '*[]' },
  gives: '*',
  holds: {},
  source: 'en-1990-d7',
  locator: 'D7.2, coefficient of variation unknown',
  notes: 'A question apart from the tolerance bound: no confidence enters. Show which question is asked.',
  noOutsideRow: 'The printed factors of the standard are from memory (MEM); the worked set is own arithmetic (CALC).',
  compute: ({ values }) => {
    needValues(values, 2);
    const n = values.length;
    return sampleMean(values) - tQuantile(0.95, n - 1) * Math.sqrt(1 + 1 / n) * sampleDeviation(values);
  },
});

/**
 * Lower tolerance bound, in the unit of the values: with the stated confidence at least `coverage` of the floor lies
 * above it. Information beside an acceptance rule of the kind "mean at least X and none below Y", never in its place.
 */
export const toleranceLowerBound = formula({
  id: 'statistics/tolerance-lower-bound',
  says: 'What at least the stated share of the population exceeds, with the stated confidence',
  equation: 'bound = mean - k(n, coverage, confidence) deviation',
  takes: { values: '*[]', coverage: '1', confidence: '1' },
  gives: '*',
  holds: { coverage: [0.75, 0.99], confidence: confidenceRange },
  refuses: { coverage: [0.5, 0.9999], confidence: chanceSense },
  source: 'iso-16269-6',
  locator: 'one-sided interval, both parameters unknown',
  inputShows: { coverage: 'share', confidence: 'share' },
  noOutsideRow: 'The worked pull-off set is own arithmetic (CALC); its factors agree with a table from memory (MEM).',
  compute: ({ values, coverage, confidence }) => {
    needValues(values, 2);
    return sampleMean(values) - toleranceFactorFor(values.length, coverage, confidence) * sampleDeviation(values);
  },
});
