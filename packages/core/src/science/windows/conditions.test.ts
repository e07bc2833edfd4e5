import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { dewMargin } from '../air/dew-margin.ts';
import { MARK_MS } from '../heat/forcing.ts';
import type { SlabForecast } from '../heat/forecast.ts';
import { buildWeather, type WeatherRow } from '../weather/build.ts';
import { HOUR_MS, type WeatherSeries } from '../weather/series.ts';
import { conditionsOf } from './conditions.ts';

const weatherOf = (change: (row: WeatherRow, i: number) => WeatherRow | undefined = (row) => row): WeatherSeries => {
  const rows = Array.from({ length: 25 }, (_, i) =>
    change({ time: i * HOUR_MS, airTemperature: 24, relativeHumidity: 0.6, pressure: 101_325, rain: 0, wind: 1 }, i),
  ).filter((row) => row !== undefined);
  const { series } = buildWeather(rows, { kind: 'measured', name: 'own', place: { latitude: 40, longitude: -105 } });
  if (series === undefined) throw new Error('no series');
  return series;
};
const COUNT = 24 * 12 + 1;
const flat = (value: number): Float64Array => new Float64Array(COUNT).fill(value);
const slabOf = (surface: number, changes: Partial<SlabForecast> = {}): SlabForecast => ({
  history: { from: 0, count: COUNT, surface: flat(surface), top: flat(surface), air: flat(24) },
  fit: flat(0.4),
  perAirKelvin: flat(0),
  sun: flat(0),
  model: 0.5,
  airError: 1.5,
  ...changes,
});

describe('what the coats meet', () => {
  test('PS-10, PS-11: the margin is the one of air/dew-margin', () => {
    const conditions = conditionsOf(weatherOf(), slabOf(18));
    // Published check of the margin: air 24 °C 60 %, slab 18 °C: +2.24 K (± 0.03).
    expect(Math.abs((conditions.margin[50] as number) - 2.24)).toBeLessThanOrEqual(0.03);
    const other = { airTemperature: 24, relativeHumidity: 0.6, surfaceTemperature: 18 };
    const none = { airTemperatureError: 0, relativeHumidityError: 0, surfaceTemperatureError: 0 };
    expect(conditions.margin[50]).toBeCloseTo(evaluate(dewMargin, { ...other, ...none }).value, 6);
    expect(conditions.humidity[50]).toBeCloseTo(0.6, 6);
  });

  test('below 0 °C the frost point governs', () => {
    const cold = weatherOf((row) => ({ ...row, airTemperature: -2, relativeHumidity: 0.7 }));
    const conditions = conditionsOf(cold, slabOf(-4));
    const given = { airTemperature: -2, relativeHumidity: 0.7, surfaceTemperature: -4 };
    const none = { airTemperatureError: 0, relativeHumidityError: 0, surfaceTemperatureError: 0 };
    expect(conditions.margin[50]).toBeCloseTo(evaluate(dewMargin, { ...given, ...none }).value, 6);
  });

  test('an error of the air that moves slab and dew point alike counts less than one that moves only the dew point', () => {
    const still = conditionsOf(weatherOf(), slabOf(18, { perAirKelvin: flat(0) }));
    const along = conditionsOf(weatherOf(), slabOf(18, { perAirKelvin: flat(0.9) }));
    expect(along.marginDeviation[50] as number).toBeLessThan(still.marginDeviation[50] as number);
    expect(along.surfaceDeviation[50] as number).toBeGreaterThan(still.surfaceDeviation[50] as number);
  });

  test('a falling barometer counts as warming: 0.29 K for each hPa', () => {
    const falling = weatherOf((row, i) => ({ ...row, pressure: 101_325 - 100 * i }));
    const { breathing } = conditionsOf(falling, slabOf(20));
    const perHour = (breathing[24] as number) - (breathing[12] as number);
    expect(Math.abs(perHour - 0.29)).toBeLessThanOrEqual(0.01);
  });

  test('holes are not known; rain that was never given is not known either', () => {
    const holed = conditionsOf(
      weatherOf((row, i) => (i > 5 && i < 15 ? undefined : row)),
      slabOf(18),
    );
    expect(holed.known[12 * 10]).toBe(0);
    expect(holed.known[12 * 3]).toBe(1);
    const dry = conditionsOf(
      weatherOf(({ time, airTemperature, relativeHumidity }) => ({
        time,
        airTemperature: airTemperature as number,
        relativeHumidity: relativeHumidity as number,
      })),
      slabOf(18),
    );
    expect(dry.rainKnown[50]).toBe(0);
    expect(dry.assumed).toEqual(['weather-rain-not-given', 'weather-wind-not-given', 'weather-pressure-not-given']);
    expect(dry.from + (dry.count - 1) * MARK_MS).toBe(24 * HOUR_MS);
  });

  test('water put into the air inside narrows the margin', () => {
    const heater = conditionsOf(weatherOf(), slabOf(18), 0.05, 1.2);
    const without = conditionsOf(weatherOf(), slabOf(18));
    expect(heater.margin[50] as number).toBeLessThan((without.margin[50] as number) - 2);
  });
});
