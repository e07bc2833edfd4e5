import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { priceFromShares, priceLine, wholePacks } from './index.ts';

describe('price', () => {
  test('the printed shares of a price and its cost make up the price', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10_000_000 }),
        fc.integer({ min: 0, max: 45 }),
        fc.integer({ min: 0, max: 45 }),
        (cost, overhead, profit) => {
          const [overheadShare, profitShare] = [overhead / 100, profit / 100];
          const price = evaluate(priceFromShares, { cost, overheadShare, profitShare }).value;
          expect(price).toBeGreaterThanOrEqual(cost);
          expect(Math.abs(price - cost - price * (overheadShare + profitShare))).toBeLessThan(1e-6 * (1 + price));
        },
      ),
    );
  });

  test('packs are whole, cover the need, and one fewer would not', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 1, max: 5000 }), (need, pack) => {
        const { value } = evaluate(wholePacks, { need, pack });
        expect(Number.isInteger(value)).toBe(true);
        expect(value * pack).toBeGreaterThanOrEqual(need);
        expect((value - 1) * pack).toBeLessThan(need);
      }),
    );
  });

  test('a line is whole minor units, within half a unit of the product', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 0, max: 1_000_000 }), (hundredths, rate) => {
        const { value } = evaluate(priceLine, { quantity: (hundredths / 100) * 3600, per: 3600, rate });
        expect(Number.isInteger(value)).toBe(true);
        expect(Math.abs(value - (hundredths * rate) / 100)).toBeLessThanOrEqual(0.5 + 1e-6);
      }),
    );
  });
});
