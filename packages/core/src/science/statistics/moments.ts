import { Refuse } from '../../kernel/refusal.ts';

/** Sum that carries the lost low digits along (Neumaier), so that a thousand readings near 1e7 keep them. */
export function carefulSum(values: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

export const sampleMean = (values: readonly number[]): number => carefulSum(values) / values.length;

/**
 * Sum of squared departures from the mean.
 *
 * Taken in two passes, with what the rounded mean leaves over taken off again. The one-pass form (sum of squares less
 * squared sum) loses every digit when the mean is large beside the spread.
 */
export function squaredDepartures(values: readonly number[]): number {
  const mean = sampleMean(values);
  const departures = values.map((value) => value - mean);
  const left = carefulSum(departures);
  return carefulSum(departures.map((d) => d * d)) - (left * left) / values.length;
}

/** Standard deviation of a sample, with n - 1. Needs two values. */
export const sampleDeviation = (values: readonly number[]): number =>
  Math.sqrt(squaredDepartures(values) / (values.length - 1));

/** Throws `Refuse` when a list holds fewer values than a formula needs. */
export function needValues(values: readonly number[], least: number, input = 'values'): void {
  if (values.length < least) throw new Refuse('too-few-values', input, [least, Number.MAX_SAFE_INTEGER]);
}

/** Throws `Refuse` unless a count is whole. */
export function needWhole(count: number, input: string): void {
  if (!Number.isInteger(count)) throw new Refuse('count-must-be-whole', input);
}
