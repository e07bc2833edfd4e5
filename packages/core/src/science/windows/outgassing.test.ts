import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { barometricRise, dryPoreExpansion, expelledAir, moistPoreExpansion, sealedPorePressure } from './outgassing.ts';

// Rows OG of reference/physics: computed apart from this code, with their tolerances.
const warming = { startTemperature: 20, endTemperature: 25 };
const near = (ours: number, want: number, tolerance: number): void =>
  expect(Math.abs(ours - want)).toBeLessThanOrEqual(tolerance);

test('OG-1 dry pore air, 20 to 25 °C', () => near(100 * evaluate(dryPoreExpansion, warming).value, 1.706, 0.01));
test('OG-2 saturated pore air', () =>
  near(100 * evaluate(moistPoreExpansion, { ...warming, pressure: 101325 }).value, 2.564, 0.02));
test('OG-3 sealed dry pore', () =>
  near(evaluate(sealedPorePressure, { ...warming, pressure: 101325 }).value / 1000, 1.728, 0.01));
test('OG-4 air out of 50 mm with 5 % air, per kelvin at 20 °C', () =>
  near(1e6 * evaluate(expelledAir, { airShare: 0.05, depth: 0.05, temperature: 20, rise: 1 }).value, 8.53, 0.05));
test('OG-5 a fall of the barometer like one kelvin', () =>
  near(evaluate(barometricRise, { pressureChange: -346, temperature: 20, pressure: 101325 }).value, 1, 0.02 / 3.46));
