import { describe, expect, test } from 'vitest';
import { GARAGE, PATIO } from '../heat/exposure.ts';
import { STONE_MIX_CONCRETE } from '../heat/materials.ts';
import { buildWeather } from '../weather/build.ts';
import { withPast } from '../weather/past.ts';
import { FILLED, HOLE, HOUR_MS, type WeatherSeries } from '../weather/series.ts';
import { siteHours } from './site-hours.ts';

const START = Date.parse('2026-05-13T07:00:00Z');
const forecast = (hours: number, rain = 0): WeatherSeries => {
  const rows = Array.from({ length: hours + 1 }, (_, i) => ({
    time: START + i * HOUR_MS,
    airTemperature: 16 + 7 * Math.sin((2 * Math.PI * (i - 9)) / 24),
    relativeHumidity: 0.55,
    cloud: 0.3,
    rain,
    wind: 2,
    pressure: 84_000,
  }));
  const place = { latitude: 40, longitude: -105, elevation: 1600 };
  const { series } = buildWeather(rows, { kind: 'forecast', name: 'own', place, issued: START });
  if (series === undefined) throw new Error('no series');
  return series;
};
const slab = { slabThickness: 0.1, baseThickness: 0.1, ...STONE_MIX_CONCRETE };
const NOW = START + 8 * HOUR_MS;
const request = {
  weather: forecast(96),
  now: NOW,
  until: NOW + 72 * HOUR_MS,
  slab,
  exposure: GARAGE,
  doors: [],
  readings: [],
};

describe('hours of a site', () => {
  test('a forecast alone is enough: the past is assumed and said, and readings narrow the band', () => {
    const bare = siteHours(request);
    expect(bare.issues).toEqual([]);
    expect(bare.cautions).toEqual(
      expect.arrayContaining(['slab-past-weather-assumed', 'slab-ground-assumed', 'slab-not-read']),
    );
    const read = siteHours({
      ...request,
      readings: [1, 4, 7].map((hour) => ({ time: START + hour * HOUR_MS, temperature: 14 })),
    });
    expect(read.cautions).not.toContain('slab-not-read');
    const at = (result: typeof bare): number => result.hours?.conditions.surfaceDeviation[100] as number;
    expect(at(read)).toBeLessThan(at(bare));
    for (const each of read.hours?.conditions.margin ?? [Number.NaN]) expect(Number.isFinite(each)).toBe(true);
  });

  test('the hours start at the moment of planning and end with the weather', () => {
    const { hours, issues } = siteHours({ ...request, until: NOW + 200 * HOUR_MS });
    expect(issues.map((each) => each.code)).toEqual(['weather-ends-early']);
    expect(hours?.conditions.from).toBe(NOW);
    expect((hours?.conditions.count as number) - 1).toBe((96 - 8) * 12);
  });

  test('no slab, or weather that is over: no hours, and the reason', () => {
    expect(siteHours({ ...request, slab: { ...slab, slabThickness: 0.001 } }).hours).toBeUndefined();
    const over = siteHours({ ...request, now: START + 200 * HOUR_MS, until: START + 220 * HOUR_MS });
    expect(over.hours).toBeUndefined();
    expect(over.issues.map((each) => each.code)).toEqual(['weather-forecast-stale', 'weather-ends-early']);
  });

  test('rain wets a patio and cools it; a garage does not feel it', () => {
    const mean = (exposure: typeof GARAGE | typeof PATIO, rain: number): number => {
      const { hours } = siteHours({ ...request, weather: forecast(96, rain), exposure });
      const surface = hours?.conditions.surface ?? new Float64Array(1);
      return surface.reduce((a, b) => a + b, 0) / surface.length;
    };
    expect(mean(PATIO, 0.001)).toBeLessThan(mean(PATIO, 0) - 1);
    expect(mean(GARAGE, 0.001)).toBe(mean(GARAGE, 0));
  });
});

test('the past put before a forecast repeats its first day, hour for hour, and knows of no rain', () => {
  const series = forecast(48, 0.001);
  const { series: longer, added } = withPast(series, START - 50 * HOUR_MS);
  expect(added).toBe(50);
  expect(longer.count).toBe(series.count + 50);
  expect(longer.airTemperature[50]).toBe(series.airTemperature[0]);
  expect(longer.airTemperature[26]).toBe(series.airTemperature[0]);
  expect(longer.airTemperature[49]).toBe(series.airTemperature[23]);
  expect(longer.state[0]).toBe(FILLED);
  expect(longer.rain?.[10]).toBe(0);
  expect(longer.partial?.rain?.[10]).toBe(HOLE);
  expect(withPast(series, START).series).toBe(series);
});
