import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../jobs/garage/price-book.json' with { type: 'json' };
import workshopCatalogue from '../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../jobs/workshop/job.json' with { type: 'json' };
import workshopPrices from '../../../jobs/workshop/price-book.json' with { type: 'json' };
import { type CatalogueFile, catalogueFrom } from './catalogue.ts';
import { type JobFile, jobFrom } from './job.ts';
import type { Result } from './kernel/issue.ts';
import { answered, type PlanInput, plan } from './plan.ts';
import { type PriceBookFile, priceBookFrom } from './price-book.ts';
import { rankSystems, type SystemRanked } from './rank-systems.ts';
import { voice } from './words/say.ts';

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;
interface Files {
  readonly job: Writable<JobFile>;
  readonly catalogue: Writable<CatalogueFile>;
  priceBook: Writable<PriceBookFile> | undefined;
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const GARAGE = {
  job: garageJob,
  catalogue: garageCatalogue,
  priceBook: garagePrices,
  now: '2026-05-12T18:00:00-06:00',
};
const WORKSHOP = {
  job: workshopJob,
  catalogue: workshopCatalogue,
  priceBook: workshopPrices,
  now: '2026-10-11T18:00:00+01:00',
};

function inputOf(golden: typeof GARAGE | typeof WORKSHOP, change: (files: Files) => void = () => undefined): PlanInput {
  const { now, ...rest } = golden;
  const files = structuredClone(rest) as unknown as Files;
  change(files);
  return {
    job: must(jobFrom(files.job)),
    catalogue: must(catalogueFrom(files.catalogue)),
    ...(files.priceBook ? { priceBook: must(priceBookFrom(files.priceBook)) } : {}),
    now,
  };
}

function ranked(change?: (files: Files) => void, working = false) {
  const found = rankSystems(inputOf(GARAGE, change), { working });
  if (!found) throw new Error('the job has an option');
  const one = (id: string): SystemRanked => {
    const system = found.systems.find(({ system: name }) => name === id);
    if (!system) throw new Error(`no system ${id}`);
    return system;
  };
  return { ...found, one };
}

describe('the garage', () => {
  const found = ranked();

  test('three systems stand on the front, each cheapest, earliest or with most margin; two do not fit', () => {
    expect(found.systems.filter(({ front }) => front).map(({ system }) => system)).toEqual([
      'two-coat-sealer',
      'flake-one-day',
      'flake-moisture-primer',
    ]);
    expect(found.systems.filter(({ fits }) => fits === 'no').map(({ reason }) => reason?.code)).toEqual([
      'system-moisture-above-limit',
      'fits-too-late',
    ]);
  });

  test('what does not fit says its one reason and the change that would admit it, and carries no price', () => {
    for (const one of found.systems.filter(({ fits }) => fits === 'no')) {
      expect(one.reason?.lift).toBeDefined();
      expect(one.price).toBeUndefined();
      expect(one.front).toBe(false);
    }
  });

  test('margins by hand: (80 − 78) ÷ 80 moisture; 54.25 h to the date less 48 h and 2 h (own arithmetic)', () => {
    expect(found.one('two-coat-sealer').weakest).toMatchObject({ need: 'moisture' });
    expect(found.one('two-coat-sealer').weakest?.margin.value).toBeCloseTo(0.02 / 0.8, 9);
    expect(found.one('flake-one-day').untilUse?.value).toBe(50 * 3600);
    expect(found.one('flake-one-day').weakest).toMatchObject({ need: 'date' });
    expect(found.one('flake-one-day').weakest?.margin.value).toBeCloseTo(4.25 / 54.25, 9);
  });

  test('everything said has its words, in both unit systems', () => {
    for (const units of ['imperial', 'metric'] as const) {
      const v = voice(
        'en',
        { locale: 'en-US', units, currency: 'USD' },
        Object.fromEntries(found.entries.map((entry) => [entry.id, entry])),
      );
      const said = found.systems.flatMap((one) => [
        ...[one.reason, one.priceWhy, one.untilUseWhy].filter((why) => why !== undefined),
        ...[one.reason, ...one.also, ...one.cautions].flatMap((why) => (why?.lift ? [why, why.lift] : (why ?? []))),
      ]);
      expect(said.length).toBeGreaterThan(5);
      for (const one of said) expect(v.say(one)).not.toMatch(/\{|undefined|NaN|\bsafe\b|compliant|score/i);
    }
  });

  test('every number leads down to its readings, and stands once', () => {
    const { entries } = ranked(undefined, true);
    const ids = entries.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const known = new Set(ids);
    for (const entry of entries)
      if (entry.kind !== 'given')
        for (const input of Object.values(entry.inputs).flat()) expect(known.has(input)).toBe(true);
  });

  test('with and without the working the ranking is the same, and what is shown is kept', () => {
    const full = ranked(undefined, true);
    const lean = (of: typeof full) =>
      of.systems.map(({ margins, weakest, price, hours, untilUse, ...rest }) => ({
        ...rest,
        numbers: [price, hours, untilUse, weakest?.margin, ...(margins ?? []).map(({ margin }) => margin)].map(
          (one) => one && [one.id, one.value, one.unit, one.shows],
        ),
      }));
    expect(lean(found)).toEqual(lean(full));
    const kept = new Map(found.entries.map((entry) => [entry.id, entry]));
    expect(kept.size).toBe(found.entries.length);
    for (const { price, hours, untilUse, weakest } of found.systems)
      for (const one of [price, hours, untilUse, weakest?.margin])
        if (one) expect(kept.get(one.id), one.id).toMatchObject({ value: one.value, unit: one.unit });
    expect(found.entries.length).toBeLessThan(full.entries.length / 2);
  });

  test('the same input gives the same ranking', () => {
    const again = ranked();
    expect(JSON.stringify(again.systems)).toBe(JSON.stringify(found.systems));
  });
});

describe('both sides of a limit', () => {
  const limit = (id: string, humidity: string) => (files: Files) => {
    const product = files.catalogue.products.find((one) => one.id === id);
    if (product) product.moisture = [{ method: 'ASTM F2170', humidity }];
  };

  test('a limit at the reading admits, a tenth below it does not', () => {
    expect(ranked(limit('sealer-g', '78 %')).one('thin-sealer').fits).toBe('yes');
    expect(ranked(limit('sealer-g', '77.9 %')).one('thin-sealer').fits).toBe('no');
  });

  test('ready at the minute it is wanted fits, a minute earlier does not', () => {
    const by = (at: string) => (files: Files) => {
      if (files.job.use) files.job.use.vehicleBy = at;
    };
    // Own arithmetic: 11:45 and 50 h.
    expect(ranked(by('2026-05-15T13:45:00-06:00')).one('flake-one-day').fits).toBe('yes');
    expect(ranked(by('2026-05-15T13:44:00-06:00')).one('flake-one-day').reason?.code).toBe('fits-too-late');
  });
});

describe('margins of must-haves with numbers on both sides', () => {
  const slip = (files: Files) =>
    files.catalogue.products.flatMap(({ properties = [] }) => properties.filter(({ what }) => what === 'slip'));
  const of = (found: ReturnType<typeof ranked>, need: string) =>
    found.one('flake-one-day').margins?.find((one) => one.need === need)?.margin.value;

  test('slip 48 where 36 is asked, film 20 % within its sheet; the weakest stands first (own arithmetic)', () => {
    const found = ranked();
    expect(of(found, 'slip')).toBeCloseTo((48 - 36) / 36, 9);
    const values = (found.one('flake-one-day').margins ?? []).map(({ margin }) => margin.value);
    expect(values.length).toBeGreaterThan(6);
    expect([...values].sort((a, b) => a - b)).toEqual(values);
    expect(found.one('flake-one-day').weakest?.margin.value).toBe(values[0]);
  });

  test('a claim without its condition is unknown: it has no margin, and the others keep theirs', () => {
    const found = ranked((files) => {
      for (const claim of slip(files)) delete claim.conditions;
    });
    expect(of(found, 'slip')).toBeUndefined();
    expect(of(found, 'film')).toBe(of(ranked(), 'film'));
    expect(found.one('flake-one-day').margins?.every(({ margin }) => Number.isFinite(margin.value))).toBe(true);
  });

  test('one end of a range of temperatures gives no margin, both do', () => {
    const found = ranked(({ catalogue }) => {
      for (const { climate } of catalogue.products) delete climate?.slabMost;
    });
    expect(of(found, 'slab-temperature')).toBeUndefined();
    expect(of(ranked(), 'slab-temperature')).toBeGreaterThan(0);
  });
});

describe('what is not known', () => {
  test('a silent sheet is one unknown; it never beats a system without one', () => {
    const found = ranked(({ catalogue }) => {
      const product = catalogue.products.find(({ id }) => id === 'sealer-h');
      if (product) delete product.moisture;
    });
    expect(found.one('two-coat-sealer')).toMatchObject({ fits: 'not known' });
    expect(found.systems.every(({ beatenBy }) => beatenBy !== 'two-coat-sealer')).toBe(true);
  });

  test('without a price book the rest is compared, and the price is not known', () => {
    const found = ranked((files) => {
      files.priceBook = undefined;
    });
    expect(found.systems.every(({ price }) => price === undefined)).toBe(true);
    expect(found.one('flake-one-day').priceWhy?.code).toBe('price-no-price-book');
    expect(found.one('flake-one-day').hours?.value).toBe(ranked().one('flake-one-day').hours?.value);
  });

  test('a sheet without a time for cars leaves the days open', () => {
    const found = ranked(({ catalogue }) => {
      const product = catalogue.products.find(({ id }) => id === 'clear-f');
      if (product) product.times = product.times?.filter(({ what }) => what !== 'vehicle');
    });
    expect(found.one('flake-moisture-primer')).toMatchObject({ untilUseWhy: { code: 'fits-time-not-on-sheet' } });
  });

  test('a job without an option has nothing to try systems with', () => {
    expect(rankSystems(inputOf(GARAGE, ({ job }) => void (job.options as unknown[]).splice(0)))).toBeUndefined();
  });
});

test.each([
  ['garage', GARAGE],
  ['workshop', WORKSHOP],
] as const)(
  '%s: price and hours are those of a plan with that system (nothing is forgotten in what is shared)',
  (_, golden) => {
    const input = inputOf(golden);
    const found = rankSystems(input);
    const base = input.job.options.find(({ accepted }) => accepted) ?? input.job.options[0];
    if (!found || !base) throw new Error('no option');
    const { starts: _starts, paidHours: _paid, thinner: _thinner, changes: _changes, ...option } = base;
    const compared = found.systems.filter(({ fits }) => fits !== 'no');
    expect(compared.length).toBeGreaterThan(0);
    for (const one of compared) {
      const made = plan({ ...input, job: { ...input.job, options: [{ ...option, system: one.system }] } });
      const [planned] = made.options;
      if (!planned || !answered(planned.hours) || !answered(planned.price)) throw new Error('not answered');
      const numberOf = (id: string | undefined): number | undefined => {
        const entry = id === undefined ? undefined : made.entries[id];
        return entry && 'value' in entry ? entry.value : undefined;
      };
      expect(one.hours?.value, one.system).toBe(numberOf(planned.hours.personTime));
      expect(one.price?.value, one.system).toBe(numberOf(planned.price.total ?? planned.price.price));
    }
  },
);
