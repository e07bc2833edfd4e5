import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { carefulSum, needValues, sampleMean, squaredDepartures } from './moments.ts';

const takes = { x: '1[]', y: '1[]' } as const;
const together = [['x', 'y']] as const;
const source = 'nist-strd-norris';

export interface StraightLine {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeError: number;
  readonly interceptError: number;
  readonly residualDeviation: number;
}

/**
 * Straight line through points by least squares, about the mean of x so that large numbers keep their digits.
 * Throws `Refuse` for fewer than three points or when all x are equal.
 */
export function straightLine({ x, y }: Values<typeof takes>): StraightLine {
  needValues(x, 3, 'x');
  const n = x.length;
  const [meanX, meanY] = [sampleMean(x), sampleMean(y)];
  const squares = squaredDepartures(x);
  if (squares === 0) throw new Refuse('values-all-equal', 'x');
  const slope = carefulSum(x.map((value, i) => (value - meanX) * ((y[i] as number) - meanY))) / squares;
  const intercept = meanY - slope * meanX;
  const residuals = x.map((value, i) => (y[i] as number) - meanY - slope * (value - meanX));
  const residualDeviation = Math.sqrt(carefulSum(residuals.map((r) => r * r)) / (n - 2));
  return {
    slope,
    intercept,
    residualDeviation,
    slopeError: residualDeviation / Math.sqrt(squares),
    interceptError: residualDeviation * Math.sqrt(1 / n + meanX ** 2 / squares),
  };
}

export const lineSlope = formula({
  id: 'statistics/line-slope',
  says: 'Slope of the straight line through points',
  equation: 'slope = sum((x - mean x)(y - mean y)) / sum((x - mean x)²)',
  takes,
  gives: '1',
  holds: {},
  together,
  source,
  locator: 'B1',
  compute: (values) => straightLine(values).slope,
});

export const lineIntercept = formula({
  id: 'statistics/line-intercept',
  says: 'Height at zero of the straight line through points',
  equation: 'intercept = mean y - slope mean x',
  takes,
  gives: '1',
  holds: {},
  together,
  source,
  locator: 'B0',
  compute: (values) => straightLine(values).intercept,
});

export const lineSlopeError = formula({
  id: 'statistics/line-slope-error',
  says: 'Standard deviation of the slope of a straight line through points',
  equation: 'error = residual deviation / sqrt(sum((x - mean x)²))',
  takes,
  gives: '1',
  holds: {},
  together,
  source,
  locator: 'standard deviation of B1',
  compute: (values) => straightLine(values).slopeError,
});

export const lineInterceptError = formula({
  id: 'statistics/line-intercept-error',
  says: 'Standard deviation of the height at zero of a straight line through points',
  equation: 'error = residual deviation sqrt(1/n + (mean x)²/sum((x - mean x)²))',
  takes,
  gives: '1',
  holds: {},
  together,
  source,
  locator: 'standard deviation of B0',
  compute: (values) => straightLine(values).interceptError,
});

export const lineResidualDeviation = formula({
  id: 'statistics/line-residual-deviation',
  says: 'Standard deviation of points about their straight line',
  equation: 'deviation = sqrt(sum(residual²) / (n - 2))',
  takes,
  gives: '1',
  holds: {},
  together,
  source,
  locator: 'residual standard deviation',
  compute: (values) => straightLine(values).residualDeviation,
});
