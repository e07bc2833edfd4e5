import fc from 'fast-check';
import { expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import { catalogueFrom } from '../../catalogue.ts';
import { type Job, jobFrom } from '../../job.ts';
import { epochOf, instantIn } from '../../kernel/instant.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, type OptionPlan, type Plan, plan } from '../../plan.ts';
import { type WeatherFile, weatherFrom } from '../../weather.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const catalogue = must(catalogueFrom(garageCatalogue));
const garage = must(jobFrom(garageJob));
const { zone } = garage.place;
const NOW = '2026-05-12T18:00:00-06:00';
const HOUR = 3_600_000;
const SECOND = 1000;

const skies = fc.record({
  mean: fc.double({ min: 12, max: 26, noNaN: true }),
  swing: fc.double({ min: 0, max: 10, noNaN: true }),
  trend: fc.double({ min: -2, max: 2, noNaN: true }),
  /** Dew point below the mean of the air, K. */
  dry: fc.double({ min: 3, max: 16, noNaN: true }),
  cloud: fc.integer({ min: 0, max: 100 }),
  falling: fc.double({ min: -40, max: 40, noNaN: true }),
  hole: fc.option(fc.integer({ min: 20, max: 90 }), { freq: 4 }),
});
type Sky = typeof skies extends fc.Arbitrary<infer S> ? S : never;
const weatherOf = ({ mean, swing, trend, dry, cloud, falling, hole }: Sky): WeatherFile => {
  const rows = Array.from({ length: 24 * 6 }, (_, i) => {
    const air = mean + (trend * i) / 24 + swing * Math.sin((2 * Math.PI * (i - 9)) / 24);
    const vapour = (t: number): number => Math.exp((17.6 * t) / (243 + t));
    const humidity = Math.min(1, Math.max(0.05, vapour(mean - dry) / vapour(air)));
    return {
      at: instantIn(epochOf('2026-05-12T00:00:00-06:00') + i * HOUR, zone),
      air: `${air.toFixed(2)} °C`,
      humidity: `${(humidity * 100).toFixed(1)} %`,
      wind: '2 m/s',
      cloud: `${cloud} %`,
      rain: '0 mm',
      pressure: `${(830 + (falling * i) / 144).toFixed(1)} hPa`,
    };
  });
  return must(
    weatherFrom({
      schema: 'slabwright.weather/1',
      source: 'drawn',
      issued: '2026-05-12T17:00:00-06:00',
      place: { latitude: garage.place.latitude, longitude: garage.place.longitude, zone },
      rows: rows.filter((_, i) => hole === null || i < hole || i > hole + 6),
    }),
  );
};

const clock = (hour: number): string => `${`${hour}`.padStart(2, '0')}:00`;
/** The garage with another crew, another working day and other rates; nothing read, no start chosen. */
const crews = fc.record({
  people: fc.integer({ min: 1, max: 5 }),
  from: fc.integer({ min: 5, max: 11 }),
  hours: fc.integer({ min: 5, max: 12 }),
  pace: fc.double({ min: 0.5, max: 3, noNaN: true }),
});
type Crew = typeof crews extends fc.Arbitrary<infer C> ? C : never;
const jobOf = ({ people, from, hours }: Crew): Job => {
  const { climate: _, ...survey } = garage.survey;
  const options = garage.options.slice(0, 1).map(({ starts: __, ...option }) => ({
    ...option,
    people,
    workday: { from: clock(from), until: clock(Math.min(23, from + hours)) },
  }));
  return { ...garage, survey, options };
};

/** A rate with its band, so much faster. */
function faster<T extends { readonly value: number; readonly low?: number; readonly high?: number }>(
  fact: T,
  by: number,
): T {
  const { value, low, high } = fact;
  return {
    ...fact,
    value: value * by,
    ...(low === undefined ? {} : { low: low * by }),
    ...(high === undefined ? {} : { high: high * by }),
  };
}
/** The firm's rates, all of them faster or slower. */
const paced = (pace: number): typeof catalogue => ({
  ...catalogue,
  rates: (catalogue.rates ?? []).map((rate) => {
    if ('area' in rate) return { ...rate, area: faster(rate.area, pace) };
    if ('length' in rate) return { ...rate, length: faster(rate.length, pace) };
    return { ...rate, whole: faster(rate.whole, 1 / pace) };
  }),
});

function seriesOf(made: Plan, id: string) {
  const entry = made.entries[id];
  if (entry?.kind !== 'series' || !entry.from || !entry.step) throw new Error(`${id} is a series over time`);
  const [from, step] = [epochOf(entry.from), entry.step * 1000];
  return (values: readonly number[], first: number, last: number): readonly number[] =>
    values.filter((_, i) => from + i * step >= first && from + i * step <= last);
}

function checkOption(made: Plan, option: OptionPlan, workday: { readonly from: string; readonly until: string }): void {
  const { site } = made;
  const { day, schedule } = option;
  if (!site || !answered(site) || !day || !answered(day) || !answered(schedule)) return;
  const inside = (from: string, until: string): void => {
    const begin = instantIn(epochOf(from), zone);
    const end = instantIn(epochOf(until), zone);
    expect(begin.slice(0, 10), `${from} to ${until}`).toBe(end.slice(0, 10));
    expect(begin.slice(11, 16) >= workday.from, from).toBe(true);
    expect(end.slice(11, 19) <= `${workday.until}:00`, until).toBe(true);
  };
  const margins = made.entries[site.margin];
  const slabs = made.entries[site.slab];
  if (margins?.kind !== 'series' || slabs?.kind !== 'series') throw new Error('the site has its series');
  for (const [i, coat] of day.coats.entries()) {
    const { start } = coat;
    if (!start) continue;
    const product = catalogue.products.find(({ id }) => id === coat.product);
    const { climate = {} } = product ?? {};
    const [at, laid, until] = [start.at, start.laid, start.sensitiveUntil].map(epochOf) as [number, number, number];
    // A start that is proposed is one that may be used, over its whole sensitive time.
    expect(['go', 'caution']).toContain(start.verdict.word);
    const cut = seriesOf(made, site.margin);
    const rule = climate.dewMargin?.value ?? 3;
    for (const margin of cut(margins.values, at, until)) expect(margin).toBeGreaterThanOrEqual(rule - 1e-3);
    if (start.verdict.word === 'go')
      for (const low of cut(margins.low ?? [], at, until)) expect(low).toBeGreaterThanOrEqual(1 - 1e-3);
    for (const slab of seriesOf(made, site.slab)(slabs.values, at, laid)) {
      expect(slab).toBeGreaterThanOrEqual((climate.slabLeast?.value ?? Number.NEGATIVE_INFINITY) - 1e-3);
      expect(slab).toBeLessThanOrEqual((climate.slabMost?.value ?? Number.POSITIVE_INFINITY) + 1e-3);
    }
    inside(start.at, start.laid);
    // The coat below bears it, on the slow side; it is laid before that closes, on the quick side.
    const below = day.coats[i - 1];
    const opens = below?.milestones.find(({ what }) => what === 'recoat opens');
    const closes = below?.milestones.find(({ what }) => what === 'recoat closes');
    if (opens?.last.high) expect(at).toBeGreaterThanOrEqual(epochOf(opens.last.high) - 60_000);
    if (closes) expect(laid).toBeLessThanOrEqual(epochOf(closes.first.low) + 60_000);
  }
  const starts = new Map(day.coats.flatMap(({ layer, start }) => (start ? [[layer, start] as const] : [])));
  const first = day.coats[0]?.start;
  const hands = new Map<string, number>();
  for (const task of [...schedule.tasks].sort((a, b) => epochOf(a.from) - epochOf(b.from))) {
    inside(task.from, task.until);
    // Instants are told in whole seconds.
    expect(epochOf(task.from)).toBeGreaterThanOrEqual((hands.get(task.who) ?? 0) - SECOND);
    hands.set(task.who, epochOf(task.until));
    const start = task.layer === undefined ? undefined : starts.get(task.layer);
    if (start && FLOOR.has(task.work)) {
      expect(epochOf(task.from)).toBeGreaterThanOrEqual(epochOf(start.at) - SECOND);
      expect(epochOf(task.until)).toBeLessThanOrEqual(epochOf(start.laid) + SECOND);
    }
    if (first && PREPARATION.has(task.work))
      expect(epochOf(task.until)).toBeLessThanOrEqual(epochOf(first.at) + SECOND);
  }
}

const FLOOR = new Set(['mix', 'cut-in', 'squeegee', 'back-roll', 'roll-thin', 'broadcast']);
const PREPARATION = new Set(['set-up', 'grind', 'edge', 'vacuum', 'crack-fill']);

test('a scheduled plan never breaks a window it was given, whatever crew, rates, working day and weather', () => {
  let placed = 0;
  fc.assert(
    fc.property(crews, skies, (crew, sky) => {
      const job = jobOf(crew);
      const made = plan({ job, catalogue: paced(crew.pace), weather: weatherOf(sky), now: NOW });
      for (const option of made.options) {
        const workday = job.options.find(({ id }) => id === option.id)?.workday;
        if (!workday) throw new Error('every option has its working day');
        checkOption(made, option, workday);
        if (option.day && answered(option.day)) placed += option.day.coats.filter(({ start }) => start).length;
      }
    }),
    { numRuns: 60 },
  );
  // Enough of the days drawn have places, else nothing was looked at.
  expect(placed).toBeGreaterThan(20);
});
