import { describe, expect, test } from 'vitest';
import { evaluate, type Formula, type OutputUnit, type Takes, type Values } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import * as p from './index.ts';

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

// Own arithmetic, amounts in cents.
describe('price', () => {
  test('shares are shares of the price', () => {
    const at = { cost: 400_000, overheadShare: 0.25, profitShare: 0.15 };
    expect(numberFrom(p.priceFromShares, at)).toBeCloseTo(666_666.667, 3);
    expect(codeOf(() => numberFrom(p.priceFromShares, { ...at, overheadShare: 0.6, profitShare: 0.4 }))).toBe(
      'shares-eat-the-price',
    );
  });

  test('markup and margin undo each other', () => {
    for (const margin of [0.05, 0.2, 0.3, 0.55]) {
      const markup = numberFrom(p.markupFromMargin, { margin });
      expect(numberFrom(p.marginFromMarkup, { markup })).toBeCloseTo(margin, 12);
      expect(numberFrom(p.priceFromMargin, { cost: 1000, margin })).toBeCloseTo(
        numberFrom(p.priceFromMarkup, { cost: 1000, markup }),
        9,
      );
    }
    expect(numberFrom(p.marginOfPrice, { cost: 1000, price: 1250 })).toBeCloseTo(0.2, 12);
  });

  test('a line is rounded once, in decimals, whatever the unit of its rate', () => {
    expect(numberFrom(p.priceLine, { quantity: 27_000, per: 3600, rate: 3333 })).toBe(24_998);
    // 435 ft² at 3.00 a square foot, the area kept in square metres.
    expect(numberFrom(p.priceLine, { quantity: 435 * 0.09290304, per: 0.09290304, rate: 300 })).toBe(130_500);
    expect(numberFrom(p.priceLine, { quantity: 3, per: 1, rate: 19_050 })).toBe(57_150);
  });

  test('tax by line and by invoice differ', () => {
    const lines = [99, 99, 99];
    expect(lines.map((amount) => numberFrom(p.taxLine, { amount, taxRate: 0.0825 }))).toEqual([8, 8, 8]);
    expect(numberFrom(p.taxInvoice, { lines, taxRate: 0.0825 })).toBe(25);
    expect(numberFrom(p.priceTotal, { lines })).toBe(297);
  });

  test('break-even, minimum charge, deposit, whole packs', () => {
    expect(numberFrom(p.breakEvenRevenue, { fixedCost: 12e6, contributionShare: 0.4 })).toBeCloseTo(30e6, 6);
    expect(numberFrom(p.breakEvenJobs, { fixedCost: 12e6, price: 65_000, variableCost: 39_000 })).toBeCloseTo(
      461.54,
      2,
    );
    expect(codeOf(() => numberFrom(p.breakEvenJobs, { fixedCost: 1, price: 2, variableCost: 2 }))).toBe(
      'no-contribution',
    );
    const minimum = numberFrom(p.minimumCharge, { mobilisation: 38_000, leastCrewDay: 22_000, margin: 0.2 });
    expect(minimum).toBeCloseTo(75_000, 6);
    expect(numberFrom(p.priceToQuote, { computed: 51_200, minimum })).toBe(minimum);
    expect(numberFrom(p.deposit, { price: 495_800, share: 0.1, cap: 100_000 })).toBe(49_580);
    expect(numberFrom(p.deposit, { price: 5_409_000, share: 0.1, cap: 100_000 })).toBe(100_000);
    expect(numberFrom(p.wholePacks, { need: 30, pack: 15 })).toBe(2);
    expect(numberFrom(p.wholePacks, { need: 0.1 * 3, pack: 0.3 })).toBe(1);
    expect(numberFrom(p.wholePacks, { need: 0, pack: 3 })).toBe(0);
    expect(numberFrom(p.priceRounded, { amount: 666_666.6667 })).toBe(666_667);
    expect(numberFrom(p.priceShare, { amount: 3_245_400, share: 0.05 })).toBe(162_270);
    expect(numberFrom(p.pricePerArea, { price: 495_800, area: 40.41 }) / 100).toBeCloseTo(122.7, 1);
    expect(numberFrom(p.overheadRate, { annualOverhead: 3_600_000, crewTime: 3_600_000, utilisation: 0.5 })).toBe(2);
  });
});
