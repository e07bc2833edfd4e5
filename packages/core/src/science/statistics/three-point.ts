import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const takes = { low: '*', likely: '*', high: '*' } as const;
const takesChance = { ...takes, chance: '1' } as const;
const chanceRange = { chance: [0.01, 0.99] } as const;
const chanceSense = { chance: [0, 1] } as const;
const ownArithmetic = 'Closed form; the worked numbers are own arithmetic (CALC).';

/** The three points in order, or a refusal that names the one out of order. */
function inOrder({ low, likely, high }: Values<typeof takes>): void {
  if (!(low < high)) throw new Refuse('three-points-out-of-order', 'high', [low, Number.MAX_VALUE]);
  if (likely < low || likely > high) throw new Refuse('three-points-out-of-order', 'likely', [low, high]);
}

/** Mean of a three-point estimate by the old planning rule, which weighs the likely value four times. */
export const pertMean = formula({
  id: 'statistics/pert-mean',
  says: 'Mean of a three-point estimate',
  equation: 'mean = (low + 4 likely + high) / 6',
  takes,
  gives: '*',
  holds: {},
  source: 'three-point-estimate',
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    inOrder(values);
    return (values.low + 4 * values.likely + values.high) / 6;
  },
});

/** Standard deviation by the same old rule; that of the beta distribution itself differs from it. */
export const pertDeviation = formula({
  id: 'statistics/pert-deviation',
  says: 'Standard deviation of a three-point estimate by the planning rule',
  equation: 'deviation = (high - low) / 6',
  takes,
  gives: '*',
  holds: {},
  source: 'three-point-estimate',
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    inOrder(values);
    return (values.high - values.low) / 6;
  },
});

export const triangularMean = formula({
  id: 'statistics/triangular-mean',
  says: 'Mean of a triangular distribution',
  equation: 'mean = (low + likely + high) / 3',
  takes,
  gives: '*',
  holds: {},
  source: 'triangular-distribution',
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    inOrder(values);
    return (values.low + values.likely + values.high) / 3;
  },
});

export const triangularDeviation = formula({
  id: 'statistics/triangular-deviation',
  says: 'Standard deviation of a triangular distribution',
  equation: 'deviation² = ((likely - low)² + (high - likely)² + (likely - low)(high - likely)) / 18',
  takes,
  gives: '*',
  holds: {},
  source: 'triangular-distribution',
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    inOrder(values);
    const [left, right] = [values.likely - values.low, values.high - values.likely];
    return Math.sqrt((left * left + right * right + left * right) / 18);
  },
});

/** Quantile of a triangular distribution: the draw that belongs to a chance between 0 and 1. */
export function triangularAt(low: number, likely: number, high: number, chance: number): number {
  const width = high - low;
  return chance < (likely - low) / width
    ? low + Math.sqrt(chance * width * (likely - low))
    : high - Math.sqrt((1 - chance) * width * (high - likely));
}

export const triangularQuantile = formula({
  id: 'statistics/triangular-quantile',
  says: 'Value a triangular distribution stays below with the stated chance',
  equation: 'low + sqrt(chance (high - low)(likely - low)), or from the high side beyond the likely value',
  takes: takesChance,
  gives: '*',
  holds: chanceRange,
  refuses: chanceSense,
  source: 'triangular-distribution',
  inputShows: { chance: 'share' },
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    inOrder(values);
    return triangularAt(values.low, values.likely, values.high, values.chance);
  },
});

interface Shape {
  readonly left: number;
  readonly right: number;
}

/** Shapes of the beta distribution that stands behind the planning rule. */
const shapeOf = ({ low, likely, high }: Values<typeof takes>): Shape => ({
  left: 1 + (4 * (likely - low)) / (high - low),
  right: 1 + (4 * (high - likely)) / (high - low),
});

/** True standard deviation of the beta distribution of a three-point estimate. */
export const betaDeviation = formula({
  id: 'statistics/beta-deviation',
  says: 'Standard deviation of the beta distribution of a three-point estimate',
  equation: 'deviation = (high - low) sqrt(p q / ((p + q)² (p + q + 1))), p and q the shapes',
  takes,
  gives: '*',
  holds: {},
  source: 'beta-pert-distribution',
  notes: 'Not (high - low)/6: 1.268 against 1.167 for 4, 6, 11.',
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    inOrder(values);
    const { left, right } = shapeOf(values);
    const sum = left + right;
    return (values.high - values.low) * Math.sqrt((left * right) / (sum * sum * (sum + 1)));
  },
});

export const betaQuantileOfThree = formula({
  id: 'statistics/beta-quantile',
  says: 'Value the beta distribution of a three-point estimate stays below with the stated chance',
  equation:
    'low + (high - low) beta quantile(chance; 1 + 4 (likely - low)/(high - low), 1 + 4 (high - likely)/(high - low))',
  takes: takesChance,
  gives: '*',
  holds: chanceRange,
  refuses: chanceSense,
  source: 'beta-pert-distribution',
  inputShows: { chance: 'share' },
  noOutsideRow: ownArithmetic,
  compute: (values) => {
    inOrder(values);
    const { left, right } = shapeOf(values);
    return values.low + (values.high - values.low) * betaQuantile(values.chance, left, right);
  },
});
