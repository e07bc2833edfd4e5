import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garageWeather from '../../../../../jobs/garage/weather.json' with { type: 'json' };
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { plan } from '../../plan.ts';
import { weatherFrom } from '../../weather.ts';
import { voice } from '../../words/say.ts';

/** What a person reads when a weather or a slab cannot be: field, value, range with its unit, a way out. */

// biome-ignore lint/suspicious/noExplicitAny: files are damaged on purpose
type Damage = (file: any) => void;
function damaged(file: unknown, damage: Damage): unknown {
  const copy = structuredClone(file);
  damage(copy);
  return copy;
}
const none: Damage = () => {};

const mute = voice('en', { locale: 'en-US', units: 'metric' }, {});
const refused = (result: Result<unknown>): string =>
  result.ok ? '' : result.issues.map((issue) => mute.sayIssue(issue)).join('\n');

/** Everything the plan says of the site, or what refuses the files before there is one. */
function said(weatherDamage: Damage, jobDamage: Damage): string {
  const weather = weatherFrom(damaged(garageWeather, weatherDamage));
  const job = jobFrom(damaged(garageJob, jobDamage));
  const catalogue = catalogueFrom(garageCatalogue);
  if (!weather.ok || !job.ok || !catalogue.ok) return [weather, job, catalogue].map(refused).join('\n');
  const made = plan({
    job: job.value,
    catalogue: catalogue.value,
    weather: weather.value,
    now: '2026-05-12T18:00:00-06:00',
  });
  for (const entry of Object.values(made.entries)) {
    const numbers = entry.kind === 'list' || entry.kind === 'series' ? entry.values : [entry.value];
    expect(numbers.every(Number.isFinite), entry.id).toBe(true);
  }
  const { site } = made;
  if (!site) throw new Error('weather makes a site');
  const v = voice('en', { locale: 'en-US', units: 'metric' }, made.entries);
  return [...site.verdict.reasons, ...site.notes].map((one) => v.say(one)).join('\n');
}

const rows =
  (change: (row: Record<string, unknown>, i: number) => void): Damage =>
  (file) =>
    file.rows.forEach(change);

describe('weather that cannot be', () => {
  const cases: readonly (readonly [string, Damage, RegExp])[] = [
    [
      'a hole of nine hours',
      (file) => file.rows.splice(20, 9),
      /No weather from .*20:00 to .*04:00 \(9 hours\)\. Hours that need it stay not known: fetch the forecast again/,
    ],
    [
      'one hour missing',
      (file) => file.rows.splice(20, 1),
      /One hour at .*20:00 was filled by a straight line between the hours on both sides/,
    ],
    [
      'two rows exchanged',
      ({ rows: list }) => ([list[10], list[30]] = [list[30], list[10]]),
      /weather\.rows\[11\]\.at: .*11:00 comes after a later hour\. The rows were put in order; check the file/,
    ],
    [
      'an hour twice',
      ({ rows: list }) => (list[12].at = list[11].at),
      /weather\.rows\[12\]\.at: .*11:00 stands twice; the first is used/,
    ],
    [
      '−80 °C',
      ({ rows: list }) => (list[12].air = '-80 °C'),
      /weather\.rows\[12\]\.air is -80 °C at .*12:00: air lies between -60 °C and 60 °C\. The value is left out/,
    ],
    ['−90 °C', ({ rows: list }) => (list[12].air = '-90 °C'), /rows\[12\]\.air is "-90 °C".*-80 °C and 60 °C/],
    [
      'humidity as a fraction of one per cent',
      rows((row) => (row.humidity = `${Number.parseFloat(String(row.humidity)) / 100} %`)),
      /^rows\.humidity: 97 of the humidities are at most 1 %.*They look like fractions: write "80 %" or "0\.8"\.$/m,
    ],
    [
      'humidity as a bare number',
      rows((row) => (row.humidity = Number.parseFloat(String(row.humidity)) / 100)),
      /^rows\.humidity: 97 of the humidities are bare numbers\. Write them as text, "80 %" or "0\.8"\.$/m,
    ],
    [
      'the hour of spring that is none, without an offset',
      ({ rows: list }) => (list[5].at = '2026-03-08T02:30:00'),
      /rows\[5\]\.at is "2026-03-08T02:30:00": write date, time and offset/,
    ],
    [
      'weather of the pole for a job elsewhere',
      (file) => (file.place.latitude = 90),
      /The weather is of a place 5\d\d\d km from the job; beyond 50 km it is another weather/,
    ],
    [
      'an old forecast',
      (file) => (file.issued = '2026-05-10T00:00:00-06:00'),
      /issued 66 hours ago .*more than 12 h is stale\. Fetch it again/,
    ],
    ['a typical year', (file) => (file.kind = 'typical year'), /typical year, not of this one.*right to 5 °C/],
  ];
  test.each(cases)('%s', (_, damage, sentence) => {
    expect(said(damage, none)).toMatch(sentence);
  });

  test('humidity as a fraction is a humidity: 0.8 is 80 %', () => {
    const whole = weatherFrom(garageWeather);
    const fractions = weatherFrom(
      damaged(
        garageWeather,
        rows((row) => (row.humidity = `${Number.parseFloat(String(row.humidity)) / 100}`)),
      ),
    );
    if (!whole.ok || !fractions.ok) throw new Error('both are weather');
    expect(fractions.value.rows[7]?.humidity.value).toBeCloseTo(whole.value.rows[7]?.humidity.value ?? 0, 12);
  });

  test('one kind of slip is told five times, the rest is counted', () => {
    const text = said(
      rows((row) => (row.wind = '200 m/s')),
      none,
    );
    expect(text.match(/200 m\/s/g)).toHaveLength(5);
    expect(text).toContain('92 more of the kind out-of-range');
  });

  test('a whole job at the pole, sun all day: hours, no NaN, no other place', () => {
    const there: Damage = (file) => {
      file.place.latitude = 90;
    };
    const text = said(there, there);
    expect(text).not.toContain('another weather');
    expect(text).toContain("The ground's temperature is assumed");
  });
});

describe('slabs that cannot be', () => {
  const slab =
    (thickness: string): Damage =>
    (file) => {
      file.survey.slab.thickness = thickness;
    };
  test('1 mm is refused with its range', () => {
    expect(said(none, slab('1 mm'))).toMatch(/survey\.slab\.thickness is "1 mm"; it must lie between 20 mm and 3 m/);
  });
  test.each(['20 mm', '3 m'])('%s is a slab, but none whose day can be worked out', (thickness) => {
    const text = said(none, slab(thickness));
    expect(text).toContain('No hours can be worked out');
    expect(text).toMatch(
      new RegExp(
        `survey\\.slab\\.thickness is ${thickness}: it lies between 0\\.025 m and 1\\.5 m\\. Check the number`,
      ),
    );
  });
});
