import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import garageWeather from '../../../../../jobs/garage/weather.json' with { type: 'json' };
import workshopCatalogue from '../../../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../../../jobs/workshop/job.json' with { type: 'json' };
import workshopPrices from '../../../../../jobs/workshop/price-book.json' with { type: 'json' };
import { catalogueFrom } from '../../catalogue.ts';
import { type JobFile, jobFrom } from '../../job.ts';
import { epochOf } from '../../kernel/instant.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, plan } from '../../plan.ts';
import { type PriceBookFile, priceBookFrom } from '../../price-book.ts';
import { weatherFrom } from '../../weather.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;

function run(book = true, weather = false, change: (job: Writable<JobFile>) => void = () => undefined) {
  const job = structuredClone(garageJob) as unknown as Writable<JobFile>;
  change(job);
  const made = plan({
    job: must(jobFrom(job)),
    catalogue: must(catalogueFrom(garageCatalogue)),
    ...(book ? { priceBook: must(priceBookFrom(garagePrices)) } : {}),
    ...(weather ? { weather: must(weatherFrom(garageWeather)) } : {}),
    now: '2026-05-12T18:00:00-06:00',
  });
  const [option] = made.options;
  if (!option || !answered(option.cracks) || !answered(option.hours) || !answered(option.schedule))
    throw new Error('not answered');
  const value = (id: string | undefined): number | undefined => {
    const entry = id === undefined ? undefined : made.entries[id];
    return entry && 'value' in entry ? entry.value : undefined;
  };
  const { cracks } = option.cracks;
  const line = (id: string) => {
    const found = cracks.find((one) => one.id === id);
    if (!found) throw new Error(`no line ${id}`);
    return found;
  };
  return { option, hours: option.hours, schedule: option.schedule, cracks, line, value };
}

describe('treatment of each crack and joint (own arithmetic)', () => {
  const plain = run();

  test('its time is its share of the tasks of its area; together they are the tasks', () => {
    const works = new Set(['crack-fill', 'joint-fill', 'crack-reinforce', 'joint-recut-and-fill']);
    const tasks = plain.hours.tasks.filter(({ work }) => works.has(work));
    const sum = (ids: readonly (string | undefined)[]): number =>
      ids.reduce((total, id) => total + (plain.value(id) ?? Number.NaN), 0);
    expect(sum(plain.cracks.map(({ work }) => work))).toBeCloseTo(sum(tasks.map(({ time }) => time)), 6);
  });

  test('a crack of the drawing at 9 m/h, its labour at 38 an hour, its filler 6 by 12 mm', () => {
    const crack = plain.line('crack-1');
    const length = plain.value(crack.length) ?? Number.NaN;
    const rate = plain.value(plain.hours.tasks.find(({ work }) => work === 'crack-fill')?.rate) ?? Number.NaN;
    expect(plain.value(crack.work)).toBeCloseTo(length / rate, 6);
    expect(plain.value(crack.labour)).toBeCloseTo(Math.round(((length / rate) * 3800) / 3600), 9);
    expect(plain.value(crack.filler)).toBeCloseTo(length * 6e-3 * 12e-3, 12);
  });

  test('without a price book the time is there and the labour is not known', () => {
    const bare = run(false);
    expect(bare.line('crack-1').labour).toBeUndefined();
    expect(bare.value(bare.line('crack-1').work)).toBe(plain.value(plain.line('crack-1').work));
  });

  test('coated over, a joint takes less work, and the plan is cheaper by it', () => {
    const over = run(true, false, (job) => {
      for (const option of job.options) option.coatOver = ['joint-across', 'joint-lengthwise'];
    });
    const [less, more] = [over, plain].map((one) => one.value(one.line('joint-across').work) ?? Number.NaN);
    expect(less).toBeLessThan(more as number);
    expect(over.value(over.hours.personTime)).toBeLessThan(plain.value(plain.hours.personTime) ?? 0);
  });
});

test('with weather joints are cut when the metre laid last bears feet, never before', () => {
  const sunny = run(true, true);
  const { earliest } = sunny.line('joint-across');
  if (!earliest) throw new Error('no earliest hour');
  expect(sunny.line('crack-1').earliest).toBeUndefined();
  const cut = sunny.schedule.tasks.filter(({ work }) => work === 'joint-recut-and-fill');
  expect(cut.length).toBeGreaterThan(0);
  for (const { from } of cut) expect(epochOf(from)).toBeGreaterThanOrEqual(epochOf(earliest));
});

test('with weather the day of a joint is the widest swing of the slab’s own hours, not of two readings', () => {
  const [sunny, plain] = [run(true, true), run()];
  expect(plain.value(plain.line('joint-across').day)).toBeGreaterThan(0);
  expect(sunny.value(sunny.line('joint-across').day)).not.toBe(plain.value(plain.line('joint-across').day));
});

describe('filler of the workshop, in whole packs (own arithmetic)', () => {
  const workshop = (change: (prices: Writable<PriceBookFile>) => void = () => undefined) => {
    const prices = structuredClone(workshopPrices) as unknown as Writable<PriceBookFile>;
    change(prices);
    const made = plan({
      job: must(jobFrom(workshopJob)),
      catalogue: must(catalogueFrom(workshopCatalogue)),
      priceBook: must(priceBookFrom(prices)),
      now: '2026-10-12T08:00:00+02:00',
    });
    const [option] = made.options;
    if (!option || !answered(option.cracks) || !answered(option.quantities) || !answered(option.price))
      throw new Error('not answered');
    const value = (id: string | undefined): number => {
      const entry = id === undefined ? undefined : made.entries[id];
      return entry && 'value' in entry ? entry.value : Number.NaN;
    };
    return { cracks: option.cracks, quantities: option.quantities, price: option.price, value };
  };

  test('five cartridges of 600 mL for 2.7 L of cracks, three sets of 5 L for 12 L of joints', () => {
    const { quantities, cracks, value } = workshop();
    const fillers = quantities.buying.filter(({ kind }) => kind === 'filler');
    expect(fillers.map(({ item, packs }) => [item, packs.map(({ count }) => value(count))])).toEqual([
      ['crack-epoxy', [5]],
      ['joint-elastic', [3]],
    ]);
    for (const [at, kind] of ['rigid', 'flexible'].entries()) {
      const own = cracks.cracks.filter(({ fillerKind }) => fillerKind === kind);
      expect(value(fillers[at]?.needed)).toBeCloseTo(
        own.reduce((sum, { filler }) => sum + value(filler), 0),
        12,
      );
    }
  });

  test('shares of all lines are the packs: 5 at 20 and 3 at 220; a line costs its labour and its share', () => {
    const { cracks, price, value } = workshop();
    const shares = cracks.cracks.reduce((sum, { fillerCost }) => sum + value(fillerCost), 0);
    expect(shares).toBeCloseTo(76_000, 6);
    const lines = price.lines.filter(({ id }) => /^(crack-epoxy|joint-elastic)\./.test(id));
    expect(lines.map(({ amount }) => value(amount))).toEqual([10_000, 66_000]);
    for (const { cost, labour, fillerCost } of cracks.cracks)
      expect(value(cost)).toBeCloseTo(value(labour) + value(fillerCost), 9);
  });

  test('a pack without a price is named, and no line states a cost that leaves it out', () => {
    const bare = workshop((prices) => {
      prices.packs = prices.packs.filter(({ product }) => product !== 'joint-elastic');
    });
    expect(bare.price.price).toBeUndefined();
    expect(bare.price.verdict.reasons).toMatchObject([
      { verdict: 'not known', code: 'price-pack-missing', names: { item: 'Elastic joint filler' } },
    ]);
    const joints = bare.cracks.cracks.filter(({ fillerKind }) => fillerKind === 'flexible');
    expect(joints.length).toBeGreaterThan(0);
    for (const joint of joints) expect(joint.cost ?? joint.fillerCost).toBeUndefined();
    expect(bare.cracks.notes.map(({ code }) => code)).toContain('cracks-treatment-priced');
  });

  test('a catalogue without such a filler says so, and buys none', () => {
    const { option } = run();
    if (!answered(option.quantities)) throw new Error('not answered');
    expect(option.quantities.buying.some(({ kind }) => kind === 'filler')).toBe(false);
    expect(option.quantities.notes.map(({ code }) => code)).toContain('quantities-filler-not-sold');
  });
});
