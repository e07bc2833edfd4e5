import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, test } from 'vitest';
import { evaluate, type Formula, type OutputUnit, type Takes, type Values } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import * as s from './index.ts';

function numberFrom<T extends Takes, G extends OutputUnit>(f: Formula<T, G, never>, values: Values<T>): number {
  return evaluate(f, values).value as number;
}
const codeOf = (act: () => unknown): string => {
  try {
    act();
  } catch (trouble) {
    if (trouble instanceof FormulaRefused) return trouble.refusal.code;
    throw trouble;
  }
  return 'no refusal';
};

const pullOffs = [2.1, 2.6, 1.9, 2.4, 2.8, 2.3];

// Printed tables of t, k and G as remembered (MEM); own arithmetic agrees with them.
const TABLE = [
  // n, t .95, kn unknown, k .90/.75, .95/.75, .90/.90, .90/.95, .95/.95, G 5 % one-sided, 2.5 %, 1 %
  [3, 2.92, 3.372, 2.501, 3.152, 4.258, 6.155, 7.656, 1.153, 1.154, 1.155],
  [4, 2.353, 2.631, 2.134, 2.681, 3.188, 4.162, 5.144, 1.463, 1.481, 1.493],
  [5, 2.132, 2.335, 1.962, 2.463, 2.742, 3.407, 4.203, 1.671, 1.715, 1.749],
  [6, 2.015, 2.177, 1.859, 2.336, 2.494, 3.006, 3.708, 1.822, 1.887, 1.944],
  [8, 1.895, 2.01, 1.74, 2.188, 2.219, 2.582, 3.187, 2.032, 2.127, 2.221],
  [10, 1.833, 1.923, 1.671, 2.104, 2.066, 2.355, 2.911, 2.176, 2.29, 2.41],
  [15, 1.761, 1.819, 1.577, 1.991, 1.867, 2.068, 2.566, 2.409, 2.548, 2.705],
  [20, 1.729, 1.772, 1.528, 1.932, 1.765, 1.926, 2.396, 2.557, 2.708, 2.884],
  [30, 1.699, 1.727, 1.475, 1.869, 1.657, 1.777, 2.22, 2.745, 2.908, 3.103],
] as const;

describe('bounds', () => {
  test.each(TABLE)('factors for n = %d', (n, t, kn, k1, k2, k3, k4, k5, g5, g2, g1) => {
    const half = 0.000501;
    expect(Math.abs(tQuantile(0.95, n - 1) - t)).toBeLessThan(half);
    expect(Math.abs(tQuantile(0.95, n - 1) * Math.sqrt(1 + 1 / n) - kn)).toBeLessThan(half);
    const pairs = [
      [0.9, 0.75, k1],
      [0.95, 0.75, k2],
      [0.9, 0.9, k3],
      [0.9, 0.95, k4],
      [0.95, 0.95, k5],
    ] as const;
    for (const [coverage, confidence, k] of pairs) {
      expect(Math.abs(numberFrom(s.toleranceFactor, { count: n, coverage, confidence }) - k)).toBeLessThan(half);
    }
    for (const [significance, g] of [
      [0.05, g5],
      [0.025, g2],
      [0.01, g1],
    ] as const) {
      expect(Math.abs(numberFrom(s.grubbsCritical, { count: n, significance, sides: 1 }) - g)).toBeLessThan(half);
    }
    expect(numberFrom(s.grubbsCritical, { count: n, significance: 0.05, sides: 2 })).toBeCloseTo(
      numberFrom(s.grubbsCritical, { count: n, significance: 0.025, sides: 1 }),
      12,
    );
  });

  test('six pull-offs: four questions, four answers (own arithmetic)', () => {
    const near = (value: number, expected: number): void => expect(Math.abs(value - expected)).toBeLessThan(5e-4);
    near(numberFrom(s.meanOfValues, { values: pullOffs }), 2.35);
    near(numberFrom(s.deviationOfValues, { values: pullOffs }), 0.32711);
    near(numberFrom(s.meanLowerBound, { values: pullOffs, confidence: 0.95 }), 2.0809);
    near(numberFrom(s.characteristicLower, { values: pullOffs }), 1.638);
    near(numberFrom(s.toleranceLowerBound, { values: pullOffs, coverage: 0.95, confidence: 0.75 }), 1.5859);
    near(numberFrom(s.toleranceLowerBound, { values: pullOffs, coverage: 0.95, confidence: 0.95 }), 1.1371);
    near(numberFrom(s.grubbs, { values: pullOffs }), 1.3757);
  });

  test('the exact factor for 43 values is not the handbook approximation', () => {
    const at = { count: 43, coverage: 0.9, confidence: 0.99 };
    expect(numberFrom(s.toleranceFactor, at)).toBeCloseTo(1.874, 4);
    expect(numberFrom(s.toleranceFactorNatrella, at)).toBeCloseTo(1.8752, 4);
    expect(codeOf(() => numberFrom(s.toleranceFactorNatrella, { ...at, count: 2 }))).toBe(
      'approximation-needs-more-values',
    );
  });

  test('coverage one half: the central t distribution', () => {
    // One degree of freedom: the factor is t(confidence, 1) / sqrt(2), and t has a closed form.
    expect(numberFrom(s.toleranceFactor, { count: 2, coverage: 0.5, confidence: 0.95 })).toBeCloseTo(
      Math.tan(Math.PI * 0.45) / Math.SQRT2,
      10,
    );
    for (const n of [3, 4, 9, 31, 1000]) {
      const k = numberFrom(s.toleranceFactor, { count: n, coverage: 0.5, confidence: 0.95 });
      expect(k * Math.sqrt(n)).toBeCloseTo(tQuantile(0.95, n - 1), 10);
    }
  });
});

describe('summary', () => {
  test('a large mean does not eat the spread', () => {
    const values = Array.from({ length: 1001 }, (_, i) => 1e7 + 0.2 + (i === 0 ? 0 : i % 2 === 1 ? -0.1 : 0.1));
    expect(numberFrom(s.deviationOfValues, { values })).toBeCloseTo(0.1, 8);
  });

  test('too few and equal values are refused', () => {
    expect(codeOf(() => numberFrom(s.deviationOfValues, { values: [1] }))).toBe('too-few-values');
    expect(codeOf(() => numberFrom(s.grubbs, { values: [2, 2, 2] }))).toBe('values-all-equal');
    expect(codeOf(() => numberFrom(s.autocorrelation, { values: [2, 2, 2] }))).toBe('values-all-equal');
    expect(codeOf(() => numberFrom(s.lineSlope, { x: [1, 1, 1], y: [1, 2, 3] }))).toBe('values-all-equal');
    expect(codeOf(() => numberFrom(s.grubbsCritical, { count: 5.5, significance: 0.05, sides: 1 }))).toBe(
      'count-must-be-whole',
    );
  });
});

describe('estimates (own arithmetic)', () => {
  test('three points: triangular and beta', () => {
    const at = { low: 4, likely: 6, high: 11 };
    expect(numberFrom(s.triangularMean, at)).toBe(7);
    expect(numberFrom(s.triangularDeviation, at)).toBeCloseTo(1.47196, 5);
    const quantiles = [
      [0.1, 5.1832],
      [0.5, 6.8167],
      [0.8, 8.3542],
      [0.9, 9.1292],
    ] as const;
    for (const [chance, v] of quantiles) expect(numberFrom(s.triangularQuantile, { ...at, chance })).toBeCloseTo(v, 4);
    expect(numberFrom(s.pertMean, at)).toBe(6.5);
    expect(numberFrom(s.pertDeviation, at)).toBeCloseTo(7 / 6, 12);
    expect(numberFrom(s.betaDeviation, at)).toBeCloseTo(1.26773, 5);
    const beta = [
      [0.5, 6.38259],
      [0.8, 7.62588],
      [0.9, 8.2727],
    ] as const;
    for (const [chance, v] of beta) expect(numberFrom(s.betaQuantileOfThree, { ...at, chance })).toBeCloseTo(v, 4);
    expect(codeOf(() => numberFrom(s.pertMean, { low: 4, likely: 3, high: 5 }))).toBe('three-points-out-of-order');
    expect(codeOf(() => numberFrom(s.pertMean, { low: 4, likely: 4, high: 4 }))).toBe('three-points-out-of-order');
  });

  test('lognormal from P10 and P90', () => {
    const at = { tenth: 400, ninetieth: 900 };
    expect(numberFrom(s.lognormalQuantile, { ...at, chance: 0.5 })).toBeCloseTo(600, 9);
    expect(numberFrom(s.lognormalQuantile, { ...at, chance: 0.8 })).toBeCloseTo(783.058, 3);
    expect(numberFrom(s.lognormalMean, at)).toBeCloseTo(630.794, 3);
    expect(codeOf(() => numberFrom(s.lognormalMean, { tenth: 0, ninetieth: 1 }))).toBe('formula-input-refused');
  });

  test('a prior and data', () => {
    const at = { priorMean: 180, priorDeviation: 40, dataMean: 150, dataDeviation: 20, count: 10 };
    expect(numberFrom(s.updatedMean, at)).toBeCloseTo(150.7317, 4);
    expect(numberFrom(s.updatedDeviation, at)).toBeCloseTo(6.24695, 5);
    expect(numberFrom(s.updatedMean, { ...at, count: 0 })).toBe(180);
    expect(numberFrom(s.updatedDeviation, { ...at, count: 0 })).toBe(40);
    expect(numberFrom(s.eventRate, { priorCount: 2, priorExposure: 100, count: 7, exposure: 450 })).toBeCloseTo(
      0.0163636,
      7,
    );
  });

  test('eight groups drawn together', () => {
    const means = [28, 8, -3, 7, -1, 1, 18, 12];
    const errors = [15, 10, 16, 11, 9, 11, 10, 18];
    expect(numberFrom(s.pooledMean, { means, errors, between: 0 })).toBeCloseTo(7.6856, 4);
    expect(numberFrom(s.pooledDeviation, { means, errors, between: 0 })).toBeCloseTo(4.0719, 4);
    const drawn = evaluate(s.shrunkMeans, { means, errors, between: 10 }).value;
    const expected = [14.241, 8.063, 5.001, 7.617, 3.084, 4.902, 13.063, 9.04];
    for (const [i, v] of expected.entries()) expect(drawn[i]).toBeCloseTo(v, 3);
  });
});
