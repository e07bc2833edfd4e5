import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { batchSplit, massRatioFromVolume, mixVolumeSolids, volumeRatioFromMass } from './index.ts';

const split = (totalVolume: number, largestBatch: number, smallestBatch: number) =>
  evaluate(batchSplit, { totalVolume, largestBatch, smallestBatch }).value;

test('2 to 1 by volume of 1.15 and 1.00 kg/L is 100 to 43.48 by mass', () => {
  // Own arithmetic.
  const densities = { densityA: 1150, densityB: 1000 };
  const byMass = evaluate(massRatioFromVolume, { volumeA: 2, volumeB: 1, ...densities }).value;
  expect(byMass).toBeCloseTo(0.4348, 4);
  expect(evaluate(volumeRatioFromMass, { massA: 1, massB: byMass, ...densities }).value).toBeCloseTo(0.5, 12);
});

test('two volumes of full solids and one of 70 % give 90 %', () => {
  // Own arithmetic.
  expect(evaluate(mixVolumeSolids, { volumes: [2, 1], volumeSolids: [1, 0.7] }).value).toBeCloseTo(0.9, 12);
});

test('a mixture of nothing, of unlike lists or with a ratio of nothing has no answer', () => {
  expect(() => evaluate(mixVolumeSolids, { volumes: [], volumeSolids: [] })).toThrow(/formula-gives-no-number/);
  expect(() => evaluate(mixVolumeSolids, { volumes: [1, 2], volumeSolids: [0.5] })).toThrow(/differ-in-length/);
  expect(() => evaluate(mixVolumeSolids, { volumes: [1], volumeSolids: [1.2] })).toThrow(FormulaRefused);
  const nothing = { massA: 0, massB: 1, densityA: 1000, densityB: 1000 };
  expect(() => evaluate(volumeRatioFromMass, nothing)).toThrow(/massA/);
});

describe('batches', () => {
  test('whole ones, then the rest', () => {
    expect(split(30, 15, 5)).toEqual([15, 15]);
    expect(split(37, 15, 5)).toEqual([15, 15, 7]);
    expect(split(4, 15, 2)).toEqual([4]);
  });

  test('a rest below the smallest is evened with the one before it: both sides of the break', () => {
    expect(split(35, 15, 5)).toEqual([15, 15, 5]);
    expect(split(34, 15, 5)).toEqual([15, 9.5, 9.5]);
  });

  test('and with all of them where two are not enough', () => {
    expect(split(28, 10, 9)).toEqual([10, 9, 9]);
    expect(split(27, 10, 9)).toEqual([9, 9, 9]);
  });

  test('what cannot be split says why', () => {
    expect(() => split(10, 5, 6)).toThrow(/smallest-batch-above-largest/);
    expect(() => split(1, 5, 2)).toThrow(/volume-below-smallest-batch/);
    expect(() => split(26, 10, 9)).toThrow(/no-split-between-smallest-and-largest/);
    expect(() => split(1000, 0.001, 0)).toThrow(/too-many-batches/);
    expect(() => split(10, 0, 0)).toThrow(FormulaRefused);
  });

  test('thirty litres in three batches of a tenth each are not four', () => {
    expect(split(0.3, 0.1, 0.01)).toHaveLength(3);
    expect(split(0.1 + 0.2, 0.1, 0.01)).toHaveLength(3);
  });
});
