import type { Band, Causes } from './entry.ts';

/** Standard normal quantile of 0.9: a P10-P90 band is the mean ± this many standard deviations. */
export const Z90 = 1.2815515655446004;

/** Standard deviation from named causes: independent of each other, so they add in quadrature. */
export function deviationOf(causes: Causes): number {
  let sum = 0;
  for (const name in causes) sum += (causes[name] as number) ** 2;
  return Math.sqrt(sum);
}

/** P10-P90 of a value whose uncertainty is first-order and roughly normal. */
export function bandOf(value: number, causes: Causes): Band {
  const half = Z90 * deviationOf(causes);
  return [value - half, value + half];
}

/** One cause whose P10 and P90 are known. */
export const causeFromBand = (cause: string, [low, high]: Band): Causes => ({ [cause]: (high - low) / (2 * Z90) });

/** True when both sides agree within 20 %, the condition for printing `± x`. */
export function isEven(value: number, [low, high]: Band): boolean {
  const below = value - low;
  const above = high - value;
  const wider = Math.max(below, above);
  return wider === 0 || Math.abs(below - above) <= 0.2 * wider;
}

/** Adds the causes of one input, scaled by its sensitivity, onto what is already there. */
export function addCauses(onto: Record<string, number>, causes: Causes, sensitivity: number): void {
  for (const name in causes) onto[name] = (onto[name] ?? 0) + sensitivity * (causes[name] as number);
}
