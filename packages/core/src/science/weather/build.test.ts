import { describe, expect, test } from 'vitest';
import { buildWeather, freshness, STALE_AFTER, type WeatherRow } from './build.ts';
import { rainOver } from './rain.ts';
import { FILLED, GIVEN, HOLE, HOUR_MS, isCovered, valueAt, type WeatherSource } from './series.ts';

const SOURCE: WeatherSource = { kind: 'forecast', name: 'own', place: { latitude: 40, longitude: -105 }, issued: 0 };
const hours = (
  count: number,
  change: (row: WeatherRow, i: number) => WeatherRow | undefined = (row) => row,
): WeatherRow[] =>
  Array.from({ length: count }, (_, i) =>
    change({ time: i * HOUR_MS, airTemperature: 10 + (i % 24), relativeHumidity: 0.5 }, i),
  ).filter((row) => row !== undefined);
const codes = (rows: readonly WeatherRow[], source = SOURCE): readonly string[] =>
  buildWeather(rows, source).issues.map((each) => each.code);

test('good rows make a series without an issue', () => {
  const { series, issues } = buildWeather(hours(48), SOURCE);
  expect(issues).toEqual([]);
  expect(series?.count).toBe(48);
  expect(series?.state.every((each) => each === GIVEN)).toBe(true);
  expect(
    valueAt(series as never, (series as never as { airTemperature: Float64Array }).airTemperature, 0.5 * HOUR_MS),
  ).toBe(10.5);
});

describe('what is wrong is named', () => {
  test('holes: short ones filled, long ones kept as holes, both said', () => {
    const { series, issues } = buildWeather(
      hours(48, (row, i) => ((i >= 5 && i < 8) || (i >= 20 && i < 30) ? undefined : row)),
      SOURCE,
    );
    expect(issues.map((each) => [each.code, each.names?.hours])).toEqual([
      ['weather-gap-filled', '3'],
      ['weather-gap', '10'],
    ]);
    expect(series?.state[6]).toBe(FILLED);
    expect(series?.state[25]).toBe(HOLE);
    expect(series?.airTemperature[6]).toBeCloseTo(16, 9);
    expect(isCovered(series as never, 4 * HOUR_MS, 9 * HOUR_MS)).toBe(true);
    expect(isCovered(series as never, 18 * HOUR_MS, 22 * HOUR_MS)).toBe(false);
    expect(isCovered(series as never, 40 * HOUR_MS, 60 * HOUR_MS)).toBe(false);
  });

  test('times out of order and doubled', () => {
    const rows = hours(10);
    [rows[3], rows[4]] = [rows[4] as WeatherRow, rows[3] as WeatherRow];
    expect(codes(rows)).toContain('weather-times-out-of-order');
    expect(codes([...hours(10), { time: 9 * HOUR_MS, airTemperature: 1, relativeHumidity: 0.5 }])).toContain(
      'weather-time-twice',
    );
    expect(codes([...hours(10), { time: Number.NaN, airTemperature: 1 }])).toContain('weather-time-unreadable');
  });

  test('−80 °C becomes a gap with its limits, not a temperature', () => {
    const { series, issues } = buildWeather(
      hours(24, (row, i) => (i === 7 ? { ...row, airTemperature: -80 } : row)),
      SOURCE,
    );
    const found = issues.find((each) => each.code === 'weather-value-outside');
    expect(found).toMatchObject({ value: '-80 °C', limits: ['-60 °C', '60 °C'] });
    expect(series?.airTemperature[7]).toBeCloseTo(17, 9);
    expect(series?.state[7]).toBe(FILLED);
  });

  test('units: humidity as a fraction read as per cent or the reverse, °F, kelvin, hPa', () => {
    const change = (field: keyof WeatherRow, by: (value: number) => number) =>
      hours(24, (row) => ({ ...row, [field]: by(row[field] as number) }));
    expect(codes(change('relativeHumidity', (value) => value / 100))).toContain('weather-humidity-looks-like-fraction');
    expect(codes(change('relativeHumidity', (value) => value * 100))).toContain('weather-humidity-looks-like-percent');
    expect(codes(change('airTemperature', (value) => value * 1.8 + 32))).toContain(
      'weather-temperature-looks-like-fahrenheit',
    );
    expect(codes(change('airTemperature', (value) => value + 273.15))).toContain(
      'weather-temperature-looks-like-kelvin',
    );
    expect(codes(hours(24, (row) => ({ ...row, pressure: 1013 })))).toContain(
      'weather-pressure-looks-like-hectopascal',
    );
  });

  test('an unusable column leaves no series, and thousands of equal faults are counted, not listed', () => {
    const built = buildWeather(
      hours(300, (row) => ({ ...row, wind: 500 })),
      SOURCE,
    );
    expect(built.series?.wind).toBeUndefined();
    expect(built.issues.filter((each) => each.code === 'weather-value-outside').length).toBe(5);
    expect(built.issues.find((each) => each.code === 'weather-more-of-these')?.names?.more).toBe('295');
    expect(buildWeather([], SOURCE).series).toBeUndefined();
    expect(codes([])).toContain('weather-column-missing');
  });

  test('a place that is none; the poles are places', () => {
    expect(codes(hours(24), { ...SOURCE, place: { latitude: 91, longitude: 0 } })).toEqual([
      'weather-latitude-outside',
    ]);
    expect(codes(hours(24), { ...SOURCE, place: { latitude: 0, longitude: 181 } })).toEqual([
      'weather-longitude-outside',
    ]);
    expect(codes(hours(24), { ...SOURCE, place: { latitude: 90, longitude: 0 } })).toEqual([]);
  });

  test('rain for a part of the hours stays, with what is not known marked', () => {
    const { series, issues } = buildWeather(
      hours(48, (row, i) => (i < 20 ? { ...row, rain: 0 } : row)),
      SOURCE,
    );
    expect(issues.map((each) => each.code)).toEqual(['weather-column-incomplete']);
    expect(series?.partial?.rain?.[10]).toBe(GIVEN);
    expect(series?.partial?.rain?.[30]).toBe(HOLE);
  });

  test('rain over a stretch, and whether it is known', () => {
    const wet = buildWeather(
      hours(48, (row, i) => (i < 30 ? { ...row, rain: i === 10 ? 0.004 : 0 } : row)),
      SOURCE,
    ).series as never;
    expect(rainOver(wet, 8 * HOUR_MS, 12 * HOUR_MS)).toEqual({ depth: 0.004, known: true });
    expect(rainOver(wet, 10 * HOUR_MS, 12 * HOUR_MS)).toEqual({ depth: 0, known: true });
    expect(rainOver(wet, 20 * HOUR_MS, 40 * HOUR_MS).known).toBe(false);
    expect(rainOver(wet, 20 * HOUR_MS, 60 * HOUR_MS).known).toBe(false);
  });

  test('a stale forecast and one that ends before it is needed', () => {
    const { series } = buildWeather(hours(48), SOURCE);
    const found = (now: number, until: number): readonly string[] =>
      freshness(series as never, now, until).map((each) => each.code);
    expect(found(STALE_AFTER, 0)).toEqual([]);
    expect(found(STALE_AFTER + 1, 0)).toEqual(['weather-forecast-stale']);
    expect(found(0, 48 * HOUR_MS)).toEqual(['weather-ends-early']);
  });
});
