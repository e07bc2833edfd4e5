import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const ownArithmetic = 'Table of the normal distribution; the worked numbers are own arithmetic (CALC).';

/** Value a normal quantity stays below with the stated chance. */
export const normalQuantileAt = formula({
  id: 'statistics/normal-quantile',
  says: 'Value a normal quantity stays below with the stated chance',
  equation: 'value = mean + z(chance) deviation',
  takes: { mean: '*', deviation: '*', chance: '1' },
  gives: '*',
  holds: { chance: [0.001, 0.999] },
  refuses: { deviation: [0, Number.MAX_VALUE], chance: [1e-12, 1 - 1e-12] },
  source: 'normal-distribution',
  inputShows: { chance: 'share' },
  noOutsideRow: ownArithmetic,
  compute: ({ mean, deviation, chance }) => mean + normalQuantile(chance, 0, 1) * deviation,
});

/** Chance that a normal quantity stays at or below a limit. */
export const normalChance = formula({
  id: 'statistics/normal-chance',
  says: 'Chance that a normal quantity stays at or below a limit',
  equation: 'chance = Φ((limit - mean) / deviation)',
  takes: { mean: '*', deviation: '*', limit: '*' },
  gives: '1',
  holds: {},
  refuses: { deviation: [Number.MIN_VALUE, Number.MAX_VALUE] },
  source: 'normal-distribution',
  shows: 'share',
  noOutsideRow: ownArithmetic,
  compute: ({ mean, deviation, limit }) => normalCdf(limit, mean, deviation),
});

const takesTenths = { tenth: '*', ninetieth: '*' } as const;

const positive = { tenth: [1e-15, 1e15], ninetieth: [1e-15, 1e15] } as const;

/** Logarithmic deviation and median from P10 and P90; which must be in order. */
function logShape({ tenth, ninetieth }: Values<typeof takesTenths>): { median: number; spread: number } {
  if (!(ninetieth > tenth)) throw new Refuse('three-points-out-of-order', 'ninetieth', [tenth, Number.MAX_VALUE]);
  const spread = Math.log(ninetieth / tenth) / (2 * normalQuantile(0.9, 0, 1));
  return { median: Math.sqrt(tenth * ninetieth), spread };
}

/** Quantile of a lognormal quantity known by its P10 and P90: hours, rates, litres, which never fall below zero. */
export const lognormalQuantile = formula({
  id: 'statistics/lognormal-quantile',
  says: 'Value a lognormal quantity stays below, from its P10 and P90',
  equation: 'value = sqrt(P10 P90) exp(z(chance) ln(P90/P10) / (2 z(0.9)))',
  takes: { ...takesTenths, chance: '1' },
  gives: '*',
  holds: { chance: [0.001, 0.999] },
  refuses: { ...positive, chance: [1e-12, 1 - 1e-12] },
  source: 'lognormal-distribution',
  inputShows: { chance: 'share' },
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    const { median, spread } = logShape(values);
    return median * Math.exp(normalQuantile(values.chance, 0, 1) * spread);
  },
});

export const lognormalMean = formula({
  id: 'statistics/lognormal-mean',
  says: 'Mean of a lognormal quantity, from its P10 and P90',
  equation: 'mean = sqrt(P10 P90) exp(s²/2), s = ln(P90/P10) / (2 z(0.9))',
  takes: takesTenths,
  gives: '*',
  holds: {},
  refuses: positive,
  source: 'lognormal-distribution',
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    const { median, spread } = logShape(values);
    return median * Math.exp(spread ** 2 / 2);
  },
});
