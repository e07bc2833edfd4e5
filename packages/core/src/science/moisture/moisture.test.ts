import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { emissionRate, probeDepth, testsNeeded } from './index.ts';

const foot2 = 0.3048 ** 2;
const poundPer = 0.45359237 / (1000 * foot2 * 86400);
const emission = (grams: number, hours: number, squareFeet: number) =>
  evaluate(emissionRate, { massGain: grams / 1000, exposure: hours * 3600, dishArea: squareFeet * foot2 }).value /
  poundPer;

describe('emission rate, lb per 1000 ft² and day', () => {
  test.each([
    [5, 0.4487, 8.19, 0.005], // READ: kit instruction sheet, constant 117.909
    [3, 0.44486, 4.95, 0.01], // READ: kit page on F1869-16a
    [3, 0.486, 4.54, 0.01], // READ: the same page, dish not deducted
    [3.2, 0.44486, 5.29, 0.01], // own arithmetic: fails 5.0
    [3.2, 0.486, 4.84, 0.01], // own arithmetic: passes 5.0 with the other area
  ])('%d g in 72 h on %d ft²: %d', (grams, area, expected, tolerance) => {
    expect(Math.abs(emission(grams, 72, area) - expected)).toBeLessThan(tolerance);
  });

  test('3 lb is 14.65 g a m² and day', () => {
    // Own arithmetic.
    expect(3 * poundPer * 1000 * 86400).toBeCloseTo(14.65, 2);
  });

  test('an exposure outside 60 to 72 h is flagged, none refused', () => {
    const at = (hours: number) =>
      evaluate(emissionRate, { massGain: 0.005, exposure: hours * 3600, dishArea: 0.0417 }).outside;
    expect([59.9, 60, 72, 72.1].map((h) => at(h).length)).toEqual([1, 0, 0, 1]);
    expect(() => at(0)).toThrow(FormulaRefused);
  });
});

describe('counts', () => {
  const count = (area: number, firstArea: number, firstTests: number, furtherArea: number, furtherTests: number) =>
    evaluate(testsNeeded, { area, firstArea, firstTests, furtherArea, furtherTests }).value;

  test('humidity probes: 3 for 1000 ft², one more for each part of a further 1000', () => {
    // READ rule; the counts above 1000 ft² are our reading that a part counts up.
    const f2170 = (squareFeet: number) => count(squareFeet * foot2, 1000 * foot2, 3, 1000 * foot2, 1);
    expect([640, 1000, 1001, 2000, 2500].map(f2170)).toEqual([3, 3, 4, 4, 5]);
  });

  test('pH: 2 for every 500 ft² or portion', () => {
    // READ rule of ASTM D4262.
    const d4262 = (squareFeet: number) => count(squareFeet * foot2, 500 * foot2, 2, 500 * foot2, 2);
    expect([500, 501, 1300].map(d4262)).toEqual([2, 4, 6]);
  });

  test('600 m² are 9 by the foot and 8 by the metre', () => {
    // Own arithmetic.
    expect(count(600, 1000 * foot2, 3, 1000 * foot2, 1)).toBe(9);
    expect(count(600, 100, 3, 100, 1)).toBe(8);
  });

  test('half a test is refused', () => {
    expect(() => count(100, 100, 2.5, 100, 1)).toThrow(/tests-not-whole/);
    expect(() => count(100, 100, 2, 0, 1)).toThrow(/furtherArea/);
  });

  test('a larger floor never needs fewer', () => {
    const area = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(area, area, (a, more) => {
        expect(count(a + more, 92.9, 3, 92.9, 1)).toBeGreaterThanOrEqual(count(a, 92.9, 3, 92.9, 1));
        expect(Number.isInteger(count(a, 92.9, 3, 92.9, 1))).toBe(true);
      }),
    );
  });
});

test('probe depth: 40 % of a slab drying on one side, 20 % on two', () => {
  // READ rule.
  const at = (slabThickness: number, dryingSides: number) => evaluate(probeDepth, { slabThickness, dryingSides }).value;
  expect(at(0.1, 1)).toBeCloseTo(0.04, 12);
  expect(at(6 * 0.0254, 2)).toBeCloseTo(1.2 * 0.0254, 12);
  expect(() => at(0.1, 1.5)).toThrow(/one-or-two-sides/);
  expect(() => at(0.1, 3)).toThrow(FormulaRefused);
});

test('twice the weight on the same dish is twice the emission', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 10, noNaN: true }),
      fc.double({ min: 60, max: 72, noNaN: true }),
      (grams, hours) => {
        expect(emission(2 * grams, hours, 0.45) / emission(grams, hours, 0.45)).toBeCloseTo(2, 12);
      },
    ),
  );
});
