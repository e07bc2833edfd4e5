import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildWeather } from './build.ts';
import { HOUR_MS, OPTIONAL_FIELDS } from './series.ts';

const number = fc.option(fc.oneof(fc.double(), fc.double({ min: -100, max: 1100, noNaN: true })), { nil: undefined });
const row = fc.record(
  {
    time: fc.integer({ min: 0, max: 400 }).map((quarter) => quarter * 15 * 60_000),
    airTemperature: fc.option(fc.double({ min: -90, max: 70 }), { nil: undefined }),
    relativeHumidity: fc.option(fc.double({ min: -0.2, max: 1.2 }), { nil: undefined }),
    wind: number,
    cloud: number,
    radiation: number,
    rain: number,
    pressure: number,
  },
  { requiredKeys: ['time'] },
);

test('whatever the rows, the series holds only finite numbers within the limits, on whole hours', () => {
  fc.assert(
    fc.property(fc.array(row, { maxLength: 120 }), (rows) => {
      const given = rows.map((each) =>
        Object.fromEntries(Object.entries(each).filter(([, value]) => value !== undefined)),
      );
      const { series, issues } = buildWeather(given as never, {
        kind: 'measured',
        name: 'own',
        place: { latitude: 0, longitude: 0 },
      });
      if (series === undefined) {
        expect(issues.length).toBeGreaterThan(0);
        return;
      }
      expect(series.start % HOUR_MS).toBe(0);
      for (const each of series.airTemperature) expect(each >= -60 && each <= 60).toBe(true);
      for (const each of series.relativeHumidity) expect(each >= 0.01 && each <= 1).toBe(true);
      for (const field of OPTIONAL_FIELDS)
        for (const each of series[field] ?? []) expect(Number.isFinite(each)).toBe(true);
    }),
    { numRuns: 200 },
  );
});
