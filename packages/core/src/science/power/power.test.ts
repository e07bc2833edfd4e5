import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { continuousBreaker, currentDrawn } from './index.ts';

describe('power', () => {
  test('one and three phases (own arithmetic)', () => {
    const one = { activePower: 2200, voltage: 230, powerFactor: 0.85, efficiency: 0.9, phases: 1 };
    expect(evaluate(currentDrawn, one).value).toBeCloseTo(12.5, 2);
    const three = { activePower: 7500, voltage: 480, powerFactor: 0.85, efficiency: 0.88, phases: 3 };
    expect(evaluate(currentDrawn, three).value).toBeCloseTo(12.06, 2);
    expect(() => evaluate(currentDrawn, { ...one, phases: 2 })).toThrow(FormulaRefused);
    expect(evaluate(continuousBreaker, { currents: [12, 4] }).value).toBe(20);
  });
});
