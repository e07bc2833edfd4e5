import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { dustMass, shroudAirflow } from './index.ts';

const inch = 0.0254;
const cfm = 0.3048 ** 3 / 60;

test('25 cfm an inch: 175 cfm for a 7 in wheel, 125 for 5 in', () => {
  // Rule READ in a trade reprint of table 1; the products are own arithmetic.
  const at = (inches: number) =>
    evaluate(shroudAirflow, { wheelDiameter: inches * inch, airflowPerDiameter: (25 * cfm) / inch }).value / cfm;
  expect(at(7)).toBeCloseTo(175, 9);
  expect(at(5)).toBeCloseTo(125, 9);
  expect(shroudAirflow.defaults?.airflowPerDiameter).toBeCloseTo((25 * cfm) / inch, 5);
  expect(() => at(0)).toThrow(FormulaRefused);
});

test('an eighth of an inch off 50,000 ft² is 521 ft³ and 75,500 lb', () => {
  // Own arithmetic; the page that prints 20 ft³ and 3,000 lb is not followed.
  const area = 50000 * 0.3048 ** 2;
  const volume = evaluate(dustMass, { area, removedDepth: inch / 8, density: 1 }).value;
  expect(Math.abs(volume / 0.3048 ** 3 - 521)).toBeLessThan(0.5);
  const density = (145 * 0.45359237) / 0.3048 ** 3;
  const mass = evaluate(dustMass, { area, removedDepth: inch / 8, density }).value;
  expect(Math.abs(mass / 0.45359237 - 75500)).toBeLessThan(50);
});

test('twice the floor is twice the dust', () => {
  const size = fc.double({ min: 0.1, max: 1e4, noNaN: true });
  fc.assert(
    fc.property(size, fc.double({ min: 1e-4, max: 0.01, noNaN: true }), (area, removedDepth) => {
      const one = evaluate(dustMass, { area, removedDepth, density: 2300 }).value;
      expect(evaluate(dustMass, { area: 2 * area, removedDepth, density: 2300 }).value).toBeCloseTo(2 * one, 6);
    }),
  );
});
