import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garageWeather from '../../../../../jobs/garage/weather.json' with { type: 'json' };
import { type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { type JobFile, jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, type Plan, type PlanInput, plan } from '../../plan.ts';
import { type WeatherFile, weatherFrom } from '../../weather.ts';
import { voice } from '../../words/say.ts';
import { siteStateOf } from './site-state.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const catalogue = must(catalogueFrom(garageCatalogue as unknown as CatalogueFile));
const job = must(jobFrom(garageJob as unknown as JobFile));
const weather = must(weatherFrom(garageWeather));
const NOW = '2026-05-12T18:00:00-06:00';

// biome-ignore lint/suspicious/noExplicitAny: files are damaged on purpose
type Damage = (file: any) => void;
const damagedWeather = (damage: Damage): WeatherFile => {
  const file = structuredClone(garageWeather);
  damage(file);
  return must(weatherFrom(file));
};
const damagedJob = (damage: Damage) => {
  const file = structuredClone(garageJob) as unknown as JobFile;
  damage(file);
  return must(jobFrom(file));
};
const input: PlanInput = { job, catalogue, weather, now: NOW };
const garage = plan(input);

/** Every number of the plan is one, and everything it says can be said. */
function sound(made: Plan): readonly string[] {
  for (const entry of Object.values(made.entries)) {
    const numbers = entry.kind === 'list' || entry.kind === 'series' ? entry.values : [entry.value];
    for (const number of numbers) expect(Number.isFinite(number), entry.id).toBe(true);
  }
  const v = voice('en', { locale: 'en-US', units: 'metric' }, made.entries);
  const codes: string[] = [];
  const say = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    if ('code' in value && typeof value.code === 'string' && !('by' in value)) {
      codes.push(value.code);
      expect(v.say(value as never)).not.toMatch(/\{|undefined|NaN/);
    }
    for (const [key, inner] of Object.entries(value)) if (key !== 'names') say(inner);
  };
  const { entries: _, ...rest } = made;
  say(rest);
  return codes;
}

const dayOf = (made: Plan) => {
  const lit = made.options[0]?.day;
  if (!lit || !answered(lit)) throw new Error('no day');
  return lit;
};

describe('the day of the garage', () => {
  test('windows, a judged start and stages for each coat; each instant with its band in order', () => {
    sound(garage);
    const lit = dayOf(garage);
    expect(lit.coats.map(({ layer }) => layer)).toEqual(['base', 'clear']);
    for (const coat of lit.coats) {
      expect(coat.starts.length).toBeGreaterThan(2);
      for (const { word, limiting } of coat.starts) expect(limiting === undefined).toBe(word === 'go');
      expect(coat.start?.by).toBe('chosen');
      for (const { first, last } of coat.milestones) {
        expect(Date.parse(last.at)).toBeGreaterThanOrEqual(Date.parse(first.at));
        expect(Date.parse(last.low)).toBeLessThanOrEqual(Date.parse(last.at));
        if (last.high) expect(Date.parse(last.high)).toBeGreaterThanOrEqual(Date.parse(last.at));
      }
    }
  });

  test('without starts the day proposes them, each in the recoat window of the one before', () => {
    const made = plan({
      ...input,
      job: damagedJob((file) => {
        for (const option of file.options) delete option.starts;
      }),
    });
    sound(made);
    const [base, clear] = dayOf(made).coats;
    expect(base?.start?.by).toBe('proposed');
    const opens = base?.milestones.find(({ what }) => what === 'recoat opens')?.last;
    const closes = base?.milestones.find(({ what }) => what === 'recoat closes')?.first;
    const at = Date.parse(clear?.start?.at ?? '');
    // Stages are told in whole minutes, on quarter hours of the slab.
    const slack = 5 * 60_000;
    expect(at).toBeGreaterThanOrEqual(Date.parse(opens?.at ?? '') - slack);
    expect(Date.parse(clear?.start?.laid ?? '')).toBeLessThanOrEqual(Date.parse(closes?.at ?? '') + slack);
    const [option] = made.options;
    if (!option || !answered(option.schedule)) throw new Error('no schedule');
    const mixed = option.schedule.tasks.filter(({ layer, work }) => layer === 'base' && work === 'mix');
    for (const { from } of mixed) expect(Date.parse(from)).toBeGreaterThanOrEqual(Date.parse(base?.start?.at ?? ''));
  });

  test('a calibrated state handed back gives the same plan; a stale one is not used', () => {
    const calibrated = siteStateOf(job, weather, NOW);
    expect(JSON.stringify(plan({ ...input, calibrated }))).toBe(JSON.stringify(garage));
    expect(siteStateOf(job, weather, NOW, calibrated)).toBe(calibrated);
    const warmer = damagedWeather((file) => {
      for (const row of file.rows) row.air = '30 °C';
    });
    const other = plan({ ...input, weather: warmer, calibrated });
    expect(other.entries['site.slab']).not.toEqual(garage.entries['site.slab']);
    const later = siteStateOf(job, weather, '2026-05-12T19:00:00-06:00', calibrated);
    expect(later.hours?.calibration).toBe(calibrated.hours?.calibration);
    expect(later).not.toBe(calibrated);
  });

  test('a slab that nobody read stays not known, whatever the forecast says', () => {
    const made = plan({ ...input, job: damagedJob((file) => delete file.survey.climate) });
    const codes = sound(made);
    expect(codes).toContain('day-slab-never-read');
    expect(made.options[0]?.hours.verdict.word).toBe('not known');
  });
});

describe('bad input makes sentences, never NaN', () => {
  const weathers: readonly (readonly [string, Damage, string])[] = [
    ['holes', (file) => file.rows.splice(20, 9), 'weather-gap'],
    ['times out of order', (file) => file.rows.reverse(), 'weather-times-out-of-order'],
    ['minus eighty', (file) => (file.rows[30].air = '-80 °C'), 'weather-value-outside'],
    [
      'humidity written 0-1 as per cent',
      (file) => {
        for (const row of file.rows) row.humidity = '1 %';
      },
      'weather-humidity-looks-like-fraction',
    ],
    ['one row', (file) => file.rows.splice(1), 'weather-column-missing'],
    ['an old forecast', (file) => (file.issued = '2026-05-10T00:00:00-06:00'), 'weather-forecast-stale'],
  ];
  test.each(weathers)('%s', (_, damage, code) => {
    expect(sound(plan({ ...input, weather: damagedWeather(damage) }))).toContain(code);
  });

  test.each([90, -90])('a site at the pole, latitude %d', (latitude) => {
    sound(plan({ ...input, weather: damagedWeather((file) => (file.place.latitude = latitude)) }));
  });

  test.each(['20 mm', '3 m'])('a slab of %s', (thickness) => {
    const made = plan({ ...input, job: damagedJob((file) => (file.survey.slab.thickness = thickness)) });
    expect(sound(made)).toContain('slab-value-outside');
    expect(made.site && answered(made.site)).toBe(false);
  });

  test('a night in which the clock jumps', () => {
    const shifted = damagedWeather((file) => {
      file.issued = '2026-03-07T17:00:00-07:00';
      for (const [i, row] of file.rows.entries())
        row.at = new Date(Date.parse('2026-03-07T07:00:00Z') + i * 3_600_000).toISOString();
    });
    const made = plan({
      ...input,
      now: '2026-03-07T18:00:00-07:00',
      weather: shifted,
      job: damagedJob((file) => {
        for (const option of file.options) {
          delete option.starts;
          option.workday = { from: '02:30', until: '18:00' };
        }
        file.survey.climate = [{ at: '2026-03-07T06:00:00-07:00', air: '14 °C', humidity: '85 %', slab: '15.5 °C' }];
      }),
    });
    sound(made);
    // 02:30 does not exist on 8 March: the day begins at 03:00 by the new clock.
    const tasks = made.options.flatMap(({ schedule }) => (answered(schedule) ? schedule.tasks : []));
    expect(tasks.some(({ from }) => from.startsWith('2026-03-08T02:'))).toBe(false);
  });
});
