import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import {
  dryingShrinkageShare,
  dryingTimes,
  filmStrain,
  jointOpening,
  jointSpacing,
  sawcutWidth,
  sealWidth,
} from './index.ts';

const codeOf = (act: () => unknown): string => {
  try {
    act();
  } catch (trouble) {
    if (trouble instanceof FormulaRefused) return trouble.refusal.code;
    throw trouble;
  }
  return 'no refusal';
};

// Own arithmetic; the published worked examples stand in the reference rows.
describe('movement', () => {
  const bay = { slabLength: 9, restraint: 1, expansionCoefficient: 12e-6, shrinkageStrain: 0 };

  test('a joint closed at its hottest opens by the difference alone', () => {
    expect(evaluate(jointOpening, { ...bay, temperatureRange: 73 }).value).toBeCloseTo(7.884e-3, 9);
    expect(evaluate(jointOpening, { ...bay, temperatureRange: 26 }).value).toBeCloseTo(2.808e-3, 9);
    expect(evaluate(jointOpening, { ...bay, temperatureRange: 90 }).outside).toEqual(['temperatureRange']);
  });

  test('a bonded film has no free length and gets no number', () => {
    expect(evaluate(filmStrain, { opening: 2e-4, freeLength: 0.01 }).value).toBeCloseTo(0.02, 12);
    expect(codeOf(() => evaluate(filmStrain, { opening: 2e-4, freeLength: 0 }))).toBe(
      'strain-undefined-without-free-length',
    );
  });

  test('spacing is capped on both sides of the break', () => {
    expect(evaluate(jointSpacing, { thickness: 0.1524, multiple: 36, cap: 5.4864 }).value).toBeCloseTo(5.4864, 9);
    expect(evaluate(jointSpacing, { thickness: 0.15, multiple: 36, cap: 5.4864 }).value).toBeCloseTo(5.4, 9);
    expect(evaluate(jointSpacing, { thickness: 0.2, multiple: 36, cap: 5.4864 }).value).toBe(5.4864);
  });

  test('limits out of order are refused', () => {
    expect(codeOf(() => evaluate(sealWidth, { opening: 0.01, leastFraction: 0.5, greatestFraction: 0.5 }))).toBe(
      'fractions-out-of-order',
    );
    const cut = {
      sealWidth: 0.02,
      installedAt: 50,
      coldest: -10,
      hottest: 40,
      leastFraction: 0.2,
      greatestFraction: 0.55,
    };
    expect(codeOf(() => evaluate(sawcutWidth, cut))).toBe('temperatures-out-of-order');
  });

  test('drying is a range', () => {
    const days = evaluate(dryingTimes, { thickness: 0.1016 }).value.map((seconds) => seconds / 86_400);
    expect(days.map((d) => Math.round(d))).toEqual([112, 120, 140]);
  });

  test('shrinkage: nothing on the first day, more with time, less in a thicker slab, never all', () => {
    const share = (days: number, millimetres: number): number =>
      evaluate(dryingShrinkageShare, { dryingTime: days * 86_400, volumeToSurface: millimetres / 1000 }).value;
    expect(share(0, 100)).toBe(0);
    // 1400 days at 100 mm: 1400 ÷ (350 × 4 + 1400) is one half.
    expect(share(1400, 100)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(share(36_500, 100)).toBeLessThan(1);
    expect(share(365, 200)).toBeLessThan(share(365, 100));
    expect(evaluate(dryingShrinkageShare, { dryingTime: 86_400, volumeToSurface: 0.4 }).outside).toEqual([
      'volumeToSurface',
    ]);
    expect(codeOf(() => evaluate(dryingShrinkageShare, { dryingTime: -1, volumeToSurface: 0.1 }))).not.toBe(
      'no refusal',
    );
  });
});
