import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { batchCount, paidTime, personTime, slabRate, slowedRate } from './hours-tasks.ts';
import { amountLeftOver, crewDays, hoursPriced } from './price-parts.ts';

// Own arithmetic throughout.
describe('hours', () => {
  test('batches: an exact multiple is no batch more', () => {
    const batches = (litres: number, largest: number) =>
      evaluate(batchCount, { volume: litres / 1000, largestBatch: largest / 1000 }).value;
    expect(batches(30, 15)).toBe(2);
    expect(batches(30.001, 15)).toBe(3);
    expect(batches(0.3, 0.1)).toBe(3);
    expect(batches(0, 15)).toBe(0);
    expect(() => batches(30, 0)).toThrow(FormulaRefused);
  });

  test('a rate that takes a quarter longer', () => {
    const trace = new Trace(new Ledger());
    const rate = trace.given('rate', { value: 0.04, unit: 'm²/s', origin: 'table' });
    const times = trace.given('times', { value: 1.25, unit: '1', origin: 'assumed' });
    const slowed = trace.figure('slowed', slowedRate, { rate, times });
    expect(slowed.value).toBeCloseTo(0.032, 12);
    expect(slowed.unit).toBe('m²/s');
  });

  test('person-time of tasks that share a cause adds their errors, not their squares', () => {
    const trace = new Trace(new Ledger());
    const times = ['a', 'b'].map((name) =>
      trace.given(name, { value: 3600, unit: 's', origin: 'assumed', causes: { crew: 600 } }),
    );
    const sum = trace.figure('sum', personTime, { times });
    expect(sum.value).toBe(7200);
    expect(sum.causes?.crew).toBeCloseTo(1200, 6);
  });

  test('paid time and slab rate', () => {
    expect(evaluate(paidTime, { worked: 36_000, beside: 0.3 }).value).toBeCloseTo(46_800, 6);
    expect(evaluate(slabRate, { earlier: 17, later: 18.8, between: 7200 }).value * 3600).toBeCloseTo(0.9, 12);
    expect(evaluate(slabRate, { earlier: 20, later: 19, between: 3600 }).value).toBeLessThan(0);
    expect(evaluate(slabRate, { earlier: 20, later: 19, between: 86_400 }).outside).toEqual(['between']);
    expect(() => evaluate(slabRate, { earlier: 20, later: 19, between: 0 })).toThrow(FormulaRefused);
  });
});

describe('price', () => {
  test('what stays of an amount may be less than nothing', () => {
    expect(evaluate(amountLeftOver, { amount: 495_818, parts: [272_700, 123_955, 99_164] }).value).toBe(-1);
  });

  test('days are whole, and quarter hours are', () => {
    const days = (hours: number) => evaluate(crewDays, { paid: hours * 3600, people: 2, day: 28_800 }).value;
    expect(days(32)).toBe(2);
    expect(days(32.01)).toBe(3);
    const priced = (hours: number) => evaluate(hoursPriced, { paid: hours * 3600, step: 900 }).value / 3600;
    expect(priced(16.25)).toBe(16.25);
    expect(priced(16.26)).toBe(16.5);
    expect(priced(0)).toBe(0);
  });
});
