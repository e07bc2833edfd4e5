import { expect, test } from 'vitest';
import garageCatalogue from '../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../jobs/garage/job.json' with { type: 'json' };
import garageWeather from '../../../jobs/garage/weather.json' with { type: 'json' };
import { type CatalogueFile, catalogueFrom } from './catalogue.ts';
import { type JobFile, jobFrom } from './job.ts';
import { epochOf } from './kernel/instant.ts';
import type { Result } from './kernel/issue.ts';
import { answered, type PlanInput, plan } from './plan.ts';
import { rankSystems } from './rank-systems.ts';
import { type SiteState, siteStateOf } from './steps/day/site-state.ts';
import { weatherFrom } from './weather.ts';
import { voice } from './words/say.ts';

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;
interface Files {
  readonly job: Writable<JobFile>;
  readonly catalogue: Writable<CatalogueFile>;
  readonly weather: typeof garageWeather;
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** The slab is fitted once for all tests of this file. */
let fitted: SiteState | undefined;
const now = '2026-05-12T18:00:00-06:00';

function inputOf(change: (files: Files) => void = () => undefined): PlanInput {
  const files = structuredClone({
    job: garageJob,
    catalogue: garageCatalogue,
    weather: garageWeather,
  }) as unknown as Files;
  change(files);
  const read = {
    job: must(jobFrom(files.job)),
    catalogue: must(catalogueFrom(files.catalogue)),
    weather: must(weatherFrom(files.weather)),
    now,
  };
  fitted = siteStateOf(read.job, read.weather, now, fitted);
  return { ...read, calibrated: fitted };
}

function ranked(input: PlanInput) {
  const found = rankSystems(input);
  if (!found) throw new Error('the job has an option');
  const v = voice(
    'en',
    { locale: 'en-US', units: 'metric' },
    Object.fromEntries(found.entries.map((entry) => [entry.id, entry])),
  );
  const one = (id: string) => {
    const system = found.systems.find((each) => each.system === id);
    if (!system) throw new Error(`no system ${id}`);
    const texts = [system.reason, system.reason?.lift, system.untilUseWhy].flatMap((said) =>
      said ? [v.say(said)] : [],
    );
    return { ...system, text: texts.join(' ') };
  };
  return { ...found, one };
}

const late = (files: Files): void => {
  if (files.job.use) files.job.use.vehicleBy = '2026-06-30T18:00:00-06:00';
};

test('starts and first use are those of a plan with that system (nothing is laid out otherwise)', () => {
  const input = inputOf(late);
  const found = ranked(input);
  const base = input.job.options.find(({ accepted }) => accepted) ?? input.job.options[0];
  if (!base) throw new Error('no option');
  const { starts: _, paidHours: __, thinner: ___, changes: ____, ...option } = base;
  expect(found.timesFrom).toBe('weather');
  const laid = found.systems.filter(({ ready }) => ready !== undefined);
  expect(laid.length).toBeGreaterThan(2);
  for (const { system, ready, starts } of laid) {
    const [planned] = plan({ ...input, job: { ...input.job, options: [{ ...option, system }] } }).options;
    if (!planned?.day || !answered(planned.day)) throw new Error('no day');
    const { coats } = planned.day;
    expect(coats[0]?.start?.at, system).toBe(starts);
    const stage = coats.at(-1)?.milestones.find(({ what }) => what === 'vehicle');
    expect(Math.abs(epochOf(stage?.last.at ?? '') - epochOf(ready ?? '')), system).toBeLessThanOrEqual(31_000);
  }
});

test('a coat too cold in every hour of the weather, though one reading was warm enough, has no start before the day it is wanted', () => {
  const { one } = ranked(
    inputOf(({ catalogue }) => {
      const product = catalogue.products.find(({ id }) => id === 'clear-f');
      if (product) product.climate = { ...product.climate, slabLeast: '21.4 °C' };
    }),
  );
  const shut = one('flake-moisture-primer');
  expect(shut).toMatchObject({ fits: 'no', front: false, reason: { code: 'fits-no-start' } });
  expect(shut.text).toMatch(
    /no start in the weather given before .*15.May.2026.18:00; what shuts most hours is slab too cold/,
  );
});

test('weather that ends before the wished day leaves it open, and asks for more', () => {
  const { one } = ranked(
    inputOf((files) => {
      late(files);
      const product = files.catalogue.products.find(({ id }) => id === 'clear-f');
      if (product) product.climate = { ...product.climate, slabLeast: '21.4 °C' };
    }),
  );
  const open = one('flake-moisture-primer');
  expect(open).toMatchObject({ fits: 'not known', reason: { verdict: 'not known', code: 'fits-no-start' } });
  expect(open.text).toMatch(/Give weather beyond/);
});

test('wanted at the minute it is ready fits; a minute before it does not', () => {
  const ready = ranked(inputOf(late)).one('flake-one-day').ready ?? '';
  const minute = (ms: number): string => new Date(Math.ceil(epochOf(ready) / 60_000) * 60_000 + ms).toISOString();
  const by = (at: string) => (files: Files) => {
    if (files.job.use) files.job.use.vehicleBy = at;
  };
  expect(ranked(inputOf(by(minute(0)))).one('flake-one-day').fits).toBe('yes');
  expect(ranked(inputOf(by(minute(-60_000)))).one('flake-one-day').reason?.code).toBe('fits-too-late-in-weather');
});

test('dew point and temperatures are those of the worst hour of each coat, as the plan lays it (own arithmetic)', () => {
  const input = inputOf(late);
  const found = ranked(input);
  const base = input.job.options.find(({ accepted }) => accepted) ?? input.job.options[0];
  if (!base) throw new Error('no option');
  const { starts: _, paidHours: __, thinner: ___, changes: ____, ...option } = base;
  const { conditions } = fitted?.hours ?? {};
  if (!conditions) throw new Error('no hours');
  const laid = found.systems.filter(({ ready }) => ready !== undefined);
  expect(laid.length).toBeGreaterThan(2);
  for (const { system, margins = [] } of laid) {
    const of = (need: string) => margins.find((one) => one.need === need)?.margin.value;
    const made = plan({ ...input, job: { ...input.job, options: [{ ...option, system }] } });
    const [planned] = made.options;
    if (!planned?.day || !answered(planned.day)) throw new Error('no day');
    const value = (id: string | undefined): number => {
      const entry = id === undefined ? undefined : made.entries[id];
      return entry && 'value' in entry ? entry.value : Number.NaN;
    };
    const sheets = new Map(input.catalogue.products.map((one) => [one.id, one]));
    const dews = planned.day.coats.map(({ product, start }) => {
      const limit = sheets.get(product)?.climate?.dewMargin?.value ?? 3;
      return (value(start?.margin) - limit) / limit;
    });
    expect(of('dew-point'), system).toBeCloseTo(Math.min(...dews), 6);
    // Slab and air count while a film is open, which lies within its sensitive time: never below its worst hour.
    const rooms = planned.day.coats.flatMap(({ product, start }) => {
      const { slabLeast, slabMost } = sheets.get(product)?.climate ?? {};
      if (!start || !slabLeast || !slabMost) return [];
      const mark = (at: string): number => Math.round((epochOf(at) - conditions.from) / 300_000);
      const room = (degrees: number): number =>
        Math.min(degrees - slabLeast.value, slabMost.value - degrees) / (slabMost.value - slabLeast.value);
      const whole = [...conditions.surface.subarray(mark(start.at), mark(start.sensitiveUntil) + 1)].map(room);
      const laying = [...conditions.surface.subarray(mark(start.at), mark(start.laid) + 1)].map(room);
      return [[Math.min(...whole), Math.min(...laying)] as const];
    });
    if (rooms.length === 0) continue;
    expect(of('slab-temperature'), system).toBeGreaterThanOrEqual(Math.min(...rooms.map(([least]) => least)) - 1e-9);
    expect(of('slab-temperature'), system).toBeLessThanOrEqual(Math.min(...rooms.map(([, most]) => most)) + 1e-9);
  }
});

test('without weather, and where no start is found, the readings of the survey stand for the room', () => {
  const input = inputOf(late);
  const { weather: _, calibrated: __, ...bare } = input;
  const of = (from: ReturnType<typeof ranked>) =>
    from.one('flake-one-day').margins?.find(({ need }) => need === 'dew-point')?.margin.value;
  expect(of(ranked(bare))).toBeGreaterThan(0);
  expect(of(ranked(bare))).not.toBe(of(ranked(input)));
});
