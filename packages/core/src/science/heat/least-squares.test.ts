import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { leastSquares } from './least-squares.ts';

/** NIST StRD nonlinear sets: starting values, certified values and deviations are read out of the files themselves. */
const load = (name: string) => {
  const text = readFileSync(new URL(`../../../../../reference/nist-nonlinear/${name}.dat`, import.meta.url), 'utf8');
  const lines = text.split(/\r?\n/);
  const parameters = lines
    .slice(40, 60)
    .map((line) => /^\s*b\d+\s*=\s*(\S+)\s+(\S+)\s+(\S+)\s+(\S+)/.exec(line))
    .filter((match) => match !== null)
    .map((match) => match.slice(1, 5).map(Number) as [number, number, number, number]);
  const data = lines
    .slice(60)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length === 2);
  return { parameters, y: data.map((row) => row[0] as number), x: data.map((row) => row[1] as number) };
};

type Model = (b: Float64Array, x: number) => number;
const at = (b: Float64Array, i: number): number => b[i] as number;
const MODELS: Readonly<Record<string, Model>> = {
  Misra1a: (b, x) => at(b, 0) * (1 - Math.exp(-at(b, 1) * x)),
  Rat42: (b, x) => at(b, 0) / (1 + Math.exp(at(b, 1) - at(b, 2) * x)),
  MGH09: (b, x) => (at(b, 0) * (x * x + x * at(b, 1))) / (x * x + x * at(b, 2) + at(b, 3)),
  Thurber: (b, x) =>
    (at(b, 0) + at(b, 1) * x + at(b, 2) * x ** 2 + at(b, 3) * x ** 3) /
    (1 + at(b, 4) * x + at(b, 5) * x ** 2 + at(b, 6) * x ** 3),
};

describe.each(Object.entries(MODELS))('%s', (name, model) => {
  const { parameters, x, y } = load(name);

  // From the nearer of NIST's two starts; six of the eleven certified digits, as fits with numeric derivatives claim.
  test('finds the certified values and their standard deviations', () => {
    const start = parameters.map((row) => row[1]);
    const fit = leastSquares({
      start,
      scale: start.map(Math.abs),
      residuals: x.length,
      evaluate: (values, residuals) => {
        for (const [i, each] of x.entries()) residuals[i] = model(values, each) - (y[i] as number);
      },
      mostPasses: 300,
      derivativeStep: 1e-6,
      twoSided: true,
      settledShare: 1e-14,
    });
    expect(fit.settled).toBe(true);
    const variance = fit.sumOfSquares / (x.length - start.length);
    for (const [j, [, , certified, deviation]] of parameters.entries()) {
      expect(Math.abs((fit.values[j] as number) / certified - 1), `b${j + 1}`).toBeLessThanOrEqual(1e-6);
      const ours = Math.sqrt(variance * (fit.covariance[j]?.[j] as number));
      expect(Math.abs(ours / deviation - 1), `deviation of b${j + 1}`).toBeLessThanOrEqual(1e-5);
    }
  });
});
