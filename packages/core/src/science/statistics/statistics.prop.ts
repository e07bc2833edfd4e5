import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import {
  noncentralTCdf,
  noncentralTQuantile,
  sampleDeviation,
  sampleMean,
  toleranceFactor,
  triangularAt,
  updatedMean,
} from './index.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('statistics', () => {
  test('the noncentral t quantile undoes its distribution function', () => {
    fc.assert(
      fc.property(real(0.02, 0.98), fc.integer({ min: 1, max: 60 }), real(0, 12), (chance, freedom, shift) => {
        const t = noncentralTQuantile(chance, freedom, shift);
        expect(Math.abs(noncentralTCdf(t, freedom, shift) - chance)).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test('more values never raise the tolerance factor', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 60 }), real(0.75, 0.99), real(0.75, 0.99), (n, coverage, confidence) => {
        const k = (count: number): number => evaluate(toleranceFactor, { count, coverage, confidence }).value;
        expect(k(n + 1)).toBeLessThan(k(n));
      }),
      { numRuns: 25 },
    );
  });

  test('shifting readings shifts the mean and leaves the deviation', () => {
    fc.assert(
      fc.property(fc.array(real(-100, 100), { minLength: 2, maxLength: 40 }), real(-1e6, 1e6), (values, shift) => {
        const moved = values.map((v) => v + shift);
        expect(sampleMean(moved)).toBeCloseTo(sampleMean(values) + shift, 6);
        expect(sampleDeviation(moved)).toBeCloseTo(sampleDeviation(values), 6);
      }),
    );
  });

  test('a draw stays between its ends and never falls when the chance grows', () => {
    fc.assert(
      fc.property(real(0, 10), real(0.01, 10), real(0.01, 10), real(0, 1), real(0, 1), (low, a, b, p, q) => {
        const at = (chance: number): number => triangularAt(low, low + a, low + a + b, chance);
        const [least, most] = p < q ? [p, q] : [q, p];
        expect(at(least)).toBeLessThanOrEqual(at(most) + 1e-12);
        expect(at(least)).toBeGreaterThanOrEqual(low - 1e-12);
        expect(at(most)).toBeLessThanOrEqual(low + a + b + 1e-12);
      }),
    );
  });

  test('the learned mean lies between prior and data', () => {
    fc.assert(
      fc.property(real(-5, 5), real(0.01, 5), real(-5, 5), real(0.01, 5), fc.nat(100), (pm, ps, dm, ds, count) => {
        const at = { priorMean: pm, priorDeviation: ps, dataMean: dm, dataDeviation: ds, count };
        const { value } = evaluate(updatedMean, at);
        expect(value).toBeGreaterThanOrEqual(Math.min(pm, dm) - 1e-12);
        expect(value).toBeLessThanOrEqual(Math.max(pm, dm) + 1e-12);
      }),
    );
  });
});
