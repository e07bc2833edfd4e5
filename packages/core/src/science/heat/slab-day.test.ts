import { describe, expect, test } from 'vitest';
import { buildWeather } from '../weather/build.ts';
import { HOUR_MS, type WeatherSeries } from '../weather/series.ts';
import { annualWaveAt, dayOfYear, roughAnnualWave } from './annual-wave.ts';
import { calibrate, surfaceAt } from './calibrate.ts';
import { slabIssues } from './check.ts';
import { type Exposure, GARAGE, heatedRoom, PATIO } from './exposure.ts';
import { forcingOf, stripSun } from './forcing.ts';
import { FORECAST_ERRORS, forecastSlab, surfaceDeviation } from './forecast.ts';
import { GRANULAR_BASE, STONE_MIX_CONCRETE, slabOnGround } from './materials.ts';
import { withParameters } from './parameters.ts';
import { runSlab, type SlabSetup } from './slab-day.ts';

const DAY = 24 * HOUR_MS;
const START = Date.parse('2026-05-01T07:00:00Z');
const weatherOf = (days: number, air: (hour: number) => number, more: object = {}): WeatherSeries => {
  const rows = Array.from({ length: days * 24 + 1 }, (_, i) => ({
    time: START + i * HOUR_MS,
    airTemperature: air(i),
    relativeHumidity: 0.5,
    ...more,
  }));
  const { series } = buildWeather(rows, {
    kind: 'measured',
    name: 'own',
    place: { latitude: 40, longitude: -105, elevation: 1600 },
  });
  if (series === undefined) throw new Error('no series');
  return series;
};
const swing = (hour: number): number => 18 + 7 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
const setupOf = (exposure: Exposure): SlabSetup => ({
  layers: slabOnGround(0.1, 0.1),
  ground: roughAnnualWave(40, 0),
  groundShift: 0,
  exposure,
});
const doorsOf = (days: number) =>
  Array.from({ length: days }, (_, day) => ({
    from: START + day * DAY + 8 * HOUR_MS,
    to: START + day * DAY + 17 * HOUR_MS,
  }));

describe('days of a slab', () => {
  const weather = weatherOf(13, swing);
  const forcing = forcingOf(weather, START, START + 13 * DAY);

  test('an open door is felt at once, a shut one slowly', () => {
    const shut = runSlab(setupOf(GARAGE), forcing, [], START + 10 * DAY);
    const open = runSlab(setupOf(GARAGE), forcing, doorsOf(13), START + 10 * DAY);
    const at = (day: number, hour: number): number => START + day * DAY + hour * HOUR_MS;
    expect(surfaceAt(open, at(10, 16))).toBeGreaterThan(surfaceAt(shut, at(10, 16)) + 1);
    expect(open.air[12 * 12] as number).toBeGreaterThan(shut.air[12 * 12] as number);
    expect(open.count).toBe(3 * 288 + 1);
    for (const each of [...open.surface, ...open.top, ...open.air]) expect(Number.isFinite(each)).toBe(true);
  });

  test('a door event between two marks moves the slab from that moment on', () => {
    const late = runSlab(
      setupOf(GARAGE),
      forcing,
      [{ from: START + 10 * DAY + 8 * HOUR_MS + 130_000, to: START + 10 * DAY + 17 * HOUR_MS }],
      START + 10 * DAY,
    );
    const shut = runSlab(setupOf(GARAGE), forcing, [], START + 10 * DAY);
    expect(late.surface[96]).toBe(shut.surface[96]);
    expect(Math.abs((late.surface[97] as number) - (shut.surface[97] as number))).toBeGreaterThan(1e-4);
  });

  test('a heated room keeps its slab near its own temperature', () => {
    const room = runSlab(setupOf(heatedRoom(21)), forcing, [], START + 10 * DAY);
    expect(room.surface.every((each) => each > 15 && each < 21)).toBe(true);
  });

  test('a patio swings wider than a garage and cools further under a clear night', () => {
    const sunny = forcingOf(weatherOf(13, swing, { cloud: 0 }), START, START + 13 * DAY);
    const patio = runSlab(setupOf(PATIO), sunny, [], START + 10 * DAY);
    const garage = runSlab(setupOf(GARAGE), sunny, [], START + 10 * DAY);
    const range = (values: Float64Array): number => Math.max(...values) - Math.min(...values);
    expect(range(patio.surface)).toBeGreaterThan(2 * range(garage.surface));
    expect(Math.min(...patio.surface)).toBeLessThan(Math.min(...garage.surface));
    expect(sunny.assumed).toEqual(['weather-radiation-from-clouds', 'weather-wind-assumed']);
  });

  test('the sunlit strip beside an open door is warmer than the floor behind it', () => {
    const sunny = weatherOf(13, swing, { cloud: 0 });
    const lit = forcingOf(sunny, START, START + 13 * DAY);
    const strip = stripSun(sunny, lit, { facing: Math.PI, height: 2.1 }, 0.5);
    const inSun = runSlab(setupOf(GARAGE), lit, doorsOf(13), START + 10 * DAY, strip);
    const behind = runSlab(setupOf(GARAGE), lit, doorsOf(13), START + 10 * DAY);
    const differences = inSun.surface.map((each, i) => each - (behind.surface[i] as number));
    expect(Math.max(...differences)).toBeGreaterThan(3);
    expect(Math.min(...differences)).toBeGreaterThanOrEqual(0);
  });

  test('after ten days of spin-up the slab is within half a kelvin of one that has had forty', () => {
    const right = runSlab(setupOf(GARAGE), forcing, [], START + 10 * DAY);
    const long = forcingOf(weatherOf(40, swing), START, START + 40 * DAY);
    const settled = runSlab(setupOf(GARAGE), long, [], START + 37 * DAY);
    expect(Math.abs((right.surface[100] as number) - (settled.surface[100] as number))).toBeLessThan(0.5);
  });
});

describe('calibration', () => {
  const weather = weatherOf(13, swing);
  const forcing = forcingOf(weather, START, START + 13 * DAY);
  const doors = doorsOf(13);
  const prior = setupOf(GARAGE);
  /** A garage of our own making, whose true parameters are moved from the prior. */
  const truth = withParameters(prior, ['film', 'conductivity', 'share', 'gain', 'ground'], [0.3, 0.15, 0.15, 1.5, 1]);
  const real = runSlab(truth, forcing, doors, START + 9 * DAY);
  const readingsAt = (hours: readonly number[]) =>
    hours.map((hour) => ({
      time: START + 9 * DAY + hour * HOUR_MS,
      temperature: surfaceAt(real, START + 9 * DAY + hour * HOUR_MS),
    }));
  const nextDayError = (setup: SlabSetup): number => {
    const run = runSlab(setup, forcing, doors, START + 10 * DAY);
    let sum = 0;
    for (let m = 0; m < 288; m++)
      sum += ((run.surface[m] as number) - surfaceAt(real, START + 10 * DAY + m * 300_000)) ** 2;
    return Math.sqrt(sum / 288);
  };

  test('readings over the day bring the next day near; more of them nearer (own twin, no validation)', () => {
    const errors = [[], [8, 12, 16], [7, 9, 11, 13, 16, 20]].map((hours) =>
      nextDayError(calibrate({ setup: prior, forcing, doors, readings: readingsAt(hours) }).setup),
    );
    expect(errors[1] as number).toBeLessThan((errors[0] as number) / 2);
    expect(errors[2] as number).toBeLessThan(0.3);
  });

  test('the deviations shrink with readings, and cover the truth', () => {
    const few = calibrate({ setup: prior, forcing, doors, readings: readingsAt([8, 12, 16]) });
    const none = calibrate({ setup: prior, forcing, doors, readings: [] });
    for (const [i, each] of few.deviations.entries())
      expect(each).toBeLessThanOrEqual((none.deviations[i] as number) + 1e-6);
    const forecast = forecastSlab(few, forcing, doors, START + 10 * DAY, START + 10 * DAY, FORECAST_ERRORS);
    const outside = Array.from({ length: 288 }, (_, m) => {
      const off = Math.abs((forecast.history.surface[m] as number) - surfaceAt(real, START + 10 * DAY + m * 300_000));
      return off > 2 * surfaceDeviation(forecast, m);
    });
    expect(outside.filter(Boolean).length).toBe(0);
    expect(forecast.perAirKelvin[0]).toBeCloseTo(0, 1);
    expect(forecast.perAirKelvin[200] as number).toBeGreaterThan(0.05);
  });

  test('one reading moves only the gain', () => {
    const one = calibrate({ setup: prior, forcing, doors, readings: readingsAt([12]) });
    const gain = one.names.indexOf('gain');
    for (const [i, each] of one.values.entries()) {
      if (i === gain) expect(Math.abs(each)).toBeGreaterThan(0.1);
      else expect(each).toBe(0);
    }
  });

  test('readings no slab explains, and readings outside the weather, are said', () => {
    const [good] = readingsAt([12]);
    const wild = [
      good,
      { time: START + 9 * DAY + 13 * HOUR_MS, temperature: 45 },
      { time: START + 9 * DAY + 14 * HOUR_MS, temperature: 2 },
    ];
    const fit = calibrate({ setup: prior, forcing, doors, readings: wild as { time: number; temperature: number }[] });
    expect(fit.cautions).toContain('slab-readings-unexplained');
    const early = calibrate({ setup: prior, forcing, doors, readings: [{ time: START - DAY, temperature: 15 }] });
    expect(early.cautions).toEqual(['slab-reading-outside-weather']);
    expect(early.readings).toBe(0);
  });
});

describe('what is said about the slab', () => {
  const slab = { slabThickness: 0.1, baseThickness: 0.1, ...STONE_MIX_CONCRETE };

  test('1 mm and 3 m are no slabs; the limits are in the message', () => {
    expect(slabIssues(slab)).toEqual([]);
    for (const slabThickness of [0.001, 3, Number.NaN]) {
      expect(slabIssues({ ...slab, slabThickness })[0]).toMatchObject({
        code: 'slab-value-outside',
        limits: ['0.025 m', '1.5 m'],
      });
    }
  });

  test('each end of each range is inside, and just beyond it is not', () => {
    expect(slabIssues({ ...slab, slabThickness: 0.025 })).toEqual([]);
    expect(slabIssues({ ...slab, slabThickness: 1.5 })).toEqual([]);
    expect(slabIssues({ ...slab, slabThickness: 1.501 }).length).toBe(1);
    expect(slabIssues({ ...slab, conductivity: 0 }).length).toBe(1);
  });
});

test('the yearly wave of the ground: flat far down, late by its depth, coldest on its day', () => {
  const wave = { mean: 12, amplitude: 10, coldestDay: 20 };
  expect(annualWaveAt(wave, GRANULAR_BASE, 0, 20)).toBeCloseTo(2, 9);
  expect(annualWaveAt(wave, GRANULAR_BASE, 0, 20 + 182.5)).toBeCloseTo(22, 9);
  expect(Math.abs(annualWaveAt(wave, GRANULAR_BASE, 25, 20) - 12)).toBeLessThan(0.01);
  expect(annualWaveAt(wave, GRANULAR_BASE, 2, 40)).toBeLessThan(annualWaveAt(wave, GRANULAR_BASE, 2, 20));
  expect(dayOfYear(Date.parse('2026-01-01T00:00:00Z'))).toBe(1);
});
