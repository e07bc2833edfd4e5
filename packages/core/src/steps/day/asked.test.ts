import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garageWeather from '../../../../../jobs/garage/weather.json' with { type: 'json' };
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import { epochOf } from '../../kernel/instant.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, type Plan, plan } from '../../plan.ts';
import { weatherFrom } from '../../weather.ts';

/** What is asked beside slab and air, and what the sheets say of it. */

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
// biome-ignore lint/suspicious/noExplicitAny: files are changed on purpose
type Change = (file: any) => void;
const changed = (file: unknown, change: Change): unknown => {
  const copy = structuredClone(file);
  change(copy);
  return copy;
};
const same: Change = () => {};
const planned = ({ job = same, catalogue = same, weather = same }): Plan =>
  plan({
    job: must(jobFrom(changed(garageJob, job))),
    catalogue: must(catalogueFrom(changed(garageCatalogue, catalogue))),
    weather: must(weatherFrom(changed(garageWeather, weather))),
    now: '2026-05-13T11:40:00-06:00',
  });
function coatsOf(made: Plan) {
  const day = made.options[0]?.day;
  if (!day || !answered(day)) throw new Error('the garage has hours');
  return { coats: day.coats, notes: day.notes.map(({ code }) => code) };
}
const codes = (made: Plan, layer: string): readonly string[] =>
  coatsOf(made)
    .coats.find((coat) => coat.layer === layer)
    ?.start?.verdict.reasons.map(({ code }) => code) ?? [];
const product =
  (id: string, change: Change): Change =>
  (file) =>
    change(file.products.find((one: { readonly id: string }) => one.id === id));
const value = (made: Plan, id: string | undefined): number => {
  const entry = id === undefined ? undefined : made.entries[id];
  if (!entry || entry.kind === 'list' || entry.kind === 'series') throw new Error(`no number ${id}`);
  return entry.value;
};
const read =
  (material: string): Change =>
  (file) =>
    file.survey.climate.push({
      at: '2026-05-13T11:30:00-06:00',
      air: '70 °F',
      humidity: '45 %',
      slab: '66 °F',
      material,
    });

describe('the resin in its pail', () => {
  const cool = planned({ job: read('75 °F') });
  const first = (made: Plan) => coatsOf(made).coats[0]?.pots[0];

  test('is asked for; read, it gives the pot life with its working', () => {
    expect(coatsOf(planned({})).notes).toContain('day-material-not-read');
    expect(coatsOf(cool).notes).not.toContain('day-material-not-read');
    const { material } = first(cool) ?? {};
    expect(cool.entries[material ?? '']).toMatchObject({ origin: 'reading', typed: '75 °F' });
    expect(codes(cool, 'base')).not.toContain('day-material-hot');
  });

  test('out of a van in the sun it sets sooner, and its sheet stops it', () => {
    const hot = planned({ job: read('95 °F') });
    expect(value(hot, first(hot)?.time)).toBeLessThan(value(cool, first(cool)?.time) * 0.75);
    const reason = coatsOf(hot).coats[0]?.start?.verdict.reasons.find(({ code }) => code === 'day-material-hot');
    // 95 °F against the 85 °F of the sheet: 10 °F, 5.56 K (own arithmetic).
    expect(value(hot, reason?.lift?.figures?.by)).toBeCloseTo(50 / 9, 9);
    expect(reason?.verdict).toBe('stop');
    expect(codes(planned({ job: read('50 °F') }), 'base')).toContain('day-material-cold');
  });

  test('a reading of the morning before says nothing of this pail', () => {
    const stale = planned({
      job: (file) =>
        file.survey.climate.push({
          at: '2026-05-12T07:00:00-06:00',
          air: '60 °F',
          humidity: '70 %',
          material: '95 °F',
        }),
    });
    expect(codes(stale, 'base')).not.toContain('day-material-hot');
  });
});

describe('a burner without a flue', () => {
  const amine = product('clear-c', (one) => {
    one.amine = true;
  });
  const heated =
    (heater: string): Change =>
    (file) => {
      file.survey.exposure = { ...file.survey.exposure, heater };
    };

  test('stops an amine-cured coat until it is hard; electric heat does not', () => {
    const burning = planned({ catalogue: amine, job: heated('unvented flame') });
    const reason = coatsOf(burning).coats[1]?.start?.verdict.reasons.find(({ code }) => code === 'day-unvented-burner');
    expect(reason?.verdict).toBe('stop');
    expect(reason?.names?.until).toMatch(/^2026-05-1[34] \d\d:\d\d$/);
    expect(codes(planned({ catalogue: amine, job: heated('electric or vented') }), 'clear')).not.toContain(
      'day-unvented-burner',
    );
    expect(codes(planned({ job: heated('unvented flame') }), 'clear')).not.toContain('day-unvented-burner');
  });

  test('is named where nobody said what warms the room', () => {
    expect(coatsOf(planned({ catalogue: amine })).notes).toContain('day-no-burner-until');
    expect(coatsOf(planned({})).notes).not.toContain('day-no-burner-until');
  });
});

test('a sheet that asks for a cooling slab makes a warming one a stop; without it a caution', () => {
  const verdict = (made: Plan) =>
    coatsOf(made).coats[0]?.start?.verdict.reasons.find(({ code }) => code.startsWith('day-window-rising'))?.verdict;
  const earlier: Change = (file) => {
    file.options[0].starts[0].at = '2026-05-13T09:00:00-06:00';
  };
  expect(verdict(planned({ job: earlier }))).toBe('caution');
  const falling = product('base-b', (one) => {
    one.climate.onlyFalling = true;
  });
  expect(verdict(planned({ job: earlier, catalogue: falling }))).toBe('stop');
});

describe('wind over an open floor', () => {
  const outside: Change = (file) => {
    file.survey.exposure = { kind: 'patio' };
  };
  const windy: Change = (file) => {
    for (const row of file.rows) row.wind = '9 m/s';
  };
  test('the limit of the sheet stops; where it is silent, strong wind is a caution; inside it is nothing', () => {
    expect(codes(planned({ job: outside, weather: windy }), 'base')).toContain('day-window-wind-strong');
    const limited = product('base-b', (one) => {
      one.climate.windMost = '5 m/s';
    });
    const stopped = planned({ job: outside, weather: windy, catalogue: limited });
    expect(codes(stopped, 'base')).toContain('day-window-wind');
    expect(codes(planned({ weather: windy }), 'base').join()).not.toContain('window-wind');
  });
});

describe('what cures by the humidity of the air', () => {
  const wet: Change = (file) => {
    for (const row of file.rows) row.humidity = '84 %';
  };
  const open = (made: Plan) => {
    const stage = coatsOf(made).coats[1]?.milestones.find(({ what }) => what === 'open');
    const start = coatsOf(made).coats[1]?.start;
    if (!stage || !start) throw new Error('the clear coat has an open time');
    const since = (at: string): number => epochOf(at) - epochOf(start.at);
    return {
      at: since(stage.first.at),
      low: since(stage.first.low),
      holds: stage.holds.map(({ code }) => code),
      stage,
    };
  };
  const cured = (yes: boolean): Change =>
    product('clear-c', (one) => {
      if (yes) one.humidityCured = true;
      else delete one.humidityCured;
    });

  test('above the water of the sheet the lower bound of the open time shrinks with the ratio, the centre stays', () => {
    const moist = planned({ weather: wet, catalogue: cured(true) });
    const plain = planned({ weather: wet, catalogue: cured(false) });
    const [a, b] = [open(moist), open(plain)];
    expect(a.at).toBe(b.at);
    expect(a.low).toBeLessThan(b.low);
    expect(a.holds).toContain('day-water-above-sheet');
    const said = a.stage.holds.find(({ code }) => code === 'day-water-above-sheet');
    // Instants are told in whole minutes.
    expect(Math.abs(b.low / value(moist, said?.figures?.ratio) - a.low)).toBeLessThanOrEqual(60_000);
  });

  test('two humidities on the sheet move the whole time', () => {
    const points: Change = (file) => {
      cured(true)(file);
      product('clear-c', (one) =>
        one.times.push(
          { what: 'open time', at: '24 °C', humidity: '30 %', value: '15 min' },
          { what: 'open time', at: '24 °C', humidity: '60 %', value: '10 min' },
        ),
      )(file);
    };
    const made = planned({ weather: wet, catalogue: points });
    const { at, holds } = open(made);
    expect(holds).not.toContain('day-water-above-sheet');
    expect(at).toBeLessThan(open(planned({ weather: wet, catalogue: cured(true) })).at);
  });
});

test('hours to come that a table calls measured carry the error of a forecast', () => {
  const width = (kind: string): number => {
    const made = planned({
      weather: (file) => {
        file.kind = kind;
      },
    });
    const entry = made.entries['site.slab'];
    if (entry?.kind !== 'series') throw new Error('the slab is a series');
    const last = entry.values.length - 20;
    return (entry.high?.[last] ?? 0) - (entry.low?.[last] ?? 0);
  };
  expect(width('measured')).toBeCloseTo(width('forecast'), 9);
  expect(width('typed')).toBeGreaterThan(1.3 * width('forecast'));
  expect(width('typical year')).toBeGreaterThan(width('typed'));
});
