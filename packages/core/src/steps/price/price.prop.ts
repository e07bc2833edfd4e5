import fc from 'fast-check';
import { expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import { voice } from '../../words/index.ts';
import { type Costed, costing, type Files } from '../testing/costed.ts';

/** Says everything: a sentence that lacks a word or a figure throws. */
const sayAll = (run: Costed): void => {
  const reader = { locale: 'en-US', units: 'imperial', currency: run.price.currency ?? 'USD' } as const;
  const v = voice('en', reader, Object.fromEntries(run.entries));
  for (const one of run.said()) expect(v.say(one)).not.toMatch(/undefined|NaN/);
};

const costed = costing({
  garage: { job: garageJob, catalogue: garageCatalogue, priceBook: garagePrices },
});

const cents = (most: number) => fc.integer({ min: 0, max: most }).map((minor) => (minor / 100).toFixed(2));

interface Drawn {
  readonly wage: string;
  readonly pack: string;
  readonly line: string;
  readonly overhead: number;
  readonly profit: number;
  readonly minimum: string;
  readonly contingency: number;
  readonly tax: number;
  readonly on: 'line' | 'invoice';
  readonly taxed: 'material' | 'everything' | 'nothing';
  readonly most: string;
}

const drawn = fc.record<Drawn>({
  wage: cents(20_000),
  pack: cents(100_000),
  line: cents(500_000),
  overhead: fc.integer({ min: 0, max: 45 }),
  profit: fc.integer({ min: 0, max: 45 }),
  minimum: cents(2_000_000),
  contingency: fc.integer({ min: 0, max: 30 }),
  tax: fc.integer({ min: 0, max: 2500 }),
  on: fc.constantFrom('line', 'invoice'),
  taxed: fc.constantFrom('material', 'everything', 'nothing'),
  most: cents(500_000),
});

const apply =
  (d: Drawn) =>
  (files: Files): void => {
    const book = files.priceBook;
    const [option] = files.job.options;
    if (!book || !option) throw new Error('the golden job has an option and a price book');
    book.wage = d.wage;
    book.packs = book.packs.map((pack) => ({ ...pack, price: d.pack }));
    book.lines = [{ id: 'one', name: 'One', per: 'ft²', amount: d.line }];
    book.overhead = `${d.overhead} %`;
    book.profit = `${d.profit} %`;
    book.minimumJob = d.minimum;
    option.contingency = `${d.contingency} %`;
    const [place] = book.places ?? [];
    if (!place) throw new Error('the golden price book has a place');
    place.tax = { rate: `${(d.tax / 100).toFixed(2)} %`, on: d.on, taxed: d.taxed };
    place.deposit = { share: '10 %', most: d.most };
  };

const RUNS = { numRuns: 40 };

test('totals are the sum of printed lines, all in whole cents, and a price is never below its cost', () => {
  fc.assert(
    fc.property(drawn, (d) => {
      const run = costed('garage', apply(d));
      sayAll(run);
      const { price } = run;
      const cost = price.lines.reduce((sum, { amount }) => sum + amount.value, 0);
      const beforeContingency = price.lines
        .filter(({ kind }) => kind !== 'contingency')
        .reduce((sum, { amount }) => sum + amount.value, 0);
      expect(price.direct?.value).toBe(beforeContingency);
      const asked = price.price?.value ?? Number.NaN;
      expect(asked).toBeGreaterThanOrEqual(cost);
      const minimum = Math.round(Number(d.minimum) * 100);
      expect(asked).toBeGreaterThanOrEqual(minimum);
      expect(price.total?.value).toBe(asked + (price.tax?.value ?? Number.NaN));
      // Overhead, profit and cost miss the price by the rounding of three lines at most.
      const parts = cost + (price.overhead?.value ?? 0) + (price.profit?.value ?? 0);
      expect(Math.abs(asked - parts)).toBeLessThanOrEqual(1.5);
      const most = Math.round(Number(d.most) * 100);
      expect(price.deposit?.value).toBeLessThanOrEqual(Math.min(most, Math.round(asked / 10) + 1));
      const amounts = [...price.lines.map(({ amount }) => amount), price.price, price.tax, price.deposit];
      for (const amount of amounts) expect(Number.isInteger(amount?.value)).toBe(true);
    }),
    RUNS,
  );
});

test('a deduction that goes below the cost is always flagged, and only then', () => {
  fc.assert(
    fc.property(drawn, cents(2_000_000), (d, less) => {
      const run = costed('garage', (files) => {
        apply(d)(files);
        const [option] = files.job.options;
        if (!option || !files.priceBook) throw new Error('the golden job has an option');
        option.changes = ['less'];
        files.priceBook.changes = [{ id: 'less', name: 'Less', per: 'job', amount: less, deducts: true }];
      });
      sayAll(run);
      const { price } = run;
      const cost = price.lines.reduce((sum, { amount }) => sum + amount.value, 0);
      const after = (price.price?.value ?? 0) - (price.changes[0]?.amount.value ?? 0);
      const flagged = price.verdict.reasons.some(({ code }) => code === 'price-change-below-cost');
      expect(flagged).toBe(after < cost);
    }),
    RUNS,
  );
});

test('dearer is never cheaper: wage, packs and lines only raise the price', () => {
  fc.assert(
    fc.property(drawn, fc.integer({ min: 1, max: 100_000 }), fc.constantFrom('wage', 'pack', 'line'), (d, more, of) => {
      const raised = { ...d, [of]: (Number(d[of]) + more / 100).toFixed(2) };
      const before = costed('garage', apply(d)).price.price?.value ?? Number.NaN;
      const after = costed('garage', apply(raised)).price.price?.value ?? Number.NaN;
      expect(after).toBeGreaterThanOrEqual(before);
    }),
    { numRuns: 20 },
  );
});
