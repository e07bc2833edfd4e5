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

const costed = costing({ garage: { job: garageJob, catalogue: garageCatalogue, priceBook: garagePrices } });

interface Read {
  /** Half hours after midnight. */
  readonly at: number;
  readonly air: number;
  readonly humidity: number;
  readonly slab: number | undefined;
}

const read = fc.record<Read>({
  at: fc.integer({ min: 0, max: 47 }),
  air: fc.integer({ min: 5, max: 34 }),
  humidity: fc.integer({ min: 20, max: 95 }),
  slab: fc.option(fc.integer({ min: 5, max: 34 }), { nil: undefined }),
});

const HALF_HOUR = 1_800_000;
const MIDNIGHT = Date.parse('2026-05-13T00:00:00-06:00');
const instant = (at: number): string => new Date(MIDNIGHT + at * HALF_HOUR).toISOString();

const day =
  (reads: readonly Read[], start: number) =>
  (files: Files): void => {
    const [option] = files.job.options;
    const [area] = files.job.areas;
    if (!option || !area) throw new Error('the golden job has an option and an area');
    files.job.survey.climate = reads.map(({ at, air, humidity, slab }) => ({
      at: instant(at),
      air: `${air} °C`,
      humidity: `${humidity} %`,
      ...(slab === undefined ? {} : { slab: `${slab} °C` }),
    }));
    delete area.sun;
    option.starts = [{ layer: 'base', at: instant(start) }];
  };

/** Base coat of the garage: slab and air 40 to 95 °F, at most 85 % humidity, foot after 2 h, no margin of its own. */
const LIMITS = { least: (40 - 32) / 1.8, most: (95 - 32) / 1.8, humidity: 85, margin: 3, foot: 4 };

test('go is only said with readings near the start and through the cure, all of them within every limit', () => {
  let said = 0;
  fc.assert(
    fc.property(fc.array(read, { minLength: 0, maxLength: 12 }), fc.integer({ min: 4, max: 40 }), (reads, start) => {
      const run = costed('garage', day(reads, start));
      sayAll(run);
      const gate = run.hours.gates.find(({ layer }) => layer === 'base');
      for (const entry of run.entries.values()) {
        if (entry.kind === 'figure' || entry.kind === 'given') expect(Number.isFinite(entry.value)).toBe(true);
      }
      if (gate?.verdict.word !== 'go') return;
      said++;
      const usable = reads.filter(({ slab }) => slab !== undefined);
      const near = usable.filter(({ at }) => Math.abs(at - start) <= 4);
      expect(near.length).toBeGreaterThan(0);
      expect(usable.some(({ at }) => at >= start + LIMITS.foot)).toBe(true);
      expect(gate.margin?.value).toBeGreaterThanOrEqual(LIMITS.margin);
      // The reading next to the start, before or after, lies within the sheet.
      const nearest = near.reduce((a, b) => (Math.abs(b.at - start) < Math.abs(a.at - start) ? b : a));
      expect(nearest.slab).toBeGreaterThanOrEqual(LIMITS.least);
      expect(nearest.slab).toBeLessThanOrEqual(LIMITS.most);
      expect(nearest.humidity).toBeLessThanOrEqual(LIMITS.humidity);
    }),
    { numRuns: 150, seed: 7 },
  );
  // A law about go that never sees one would prove nothing.
  expect(said).toBeGreaterThan(0);
});

test('taking a reading away never turns a gate into go', () => {
  const fair = fc.array(
    fc.record<Read>({
      at: fc.integer({ min: 0, max: 47 }),
      air: fc.integer({ min: 18, max: 22 }),
      humidity: fc.integer({ min: 30, max: 50 }),
      slab: fc.constant(20),
    }),
    { minLength: 3, maxLength: 8 },
  );
  fc.assert(
    fc.property(fair, fc.integer({ min: 4, max: 40 }), (reads, start) => {
      const word = (of: readonly Read[]) => costed('garage', day(of, start)).hours.gates[0]?.verdict.word;
      if (word(reads) === 'not known') expect(word(reads.slice(1))).not.toBe('go');
    }),
    { numRuns: 60 },
  );
});
