import { describe, expect, test } from 'vitest';
import { type ColumnMap, readWeatherCsv } from './csv.ts';
import { readEpw } from './epw.ts';
import { HOUR_MS, type WeatherSource } from './series.ts';
import { typedWeather } from './typed.ts';

const place = { latitude: 40, longitude: -105 };
const SOURCE: WeatherSource = { kind: 'measured', name: 'logger.csv', place };
const MAP: ColumnMap = {
  time: 'Time',
  zone: 'UTC',
  fields: {
    airTemperature: { column: 'Temp', unit: '°F' },
    relativeHumidity: { column: 'RH', unit: '%' },
    rain: { column: 'Rain', unit: 'in' },
  },
  missingAtOrBelow: -99,
};

describe('CSV with a column map', () => {
  const csv = (lines: readonly string[]): string => ['Time,Temp,RH,Rain', ...lines].join('\r\n');
  const clock = (map: ColumnMap, times: readonly string[]) =>
    readWeatherCsv(csv(times.map((time) => `${time},68,50,0`)), map, SOURCE);

  test('units are brought to SI once', () => {
    const { series, issues } = readWeatherCsv(
      csv(['2026-05-01 10:00,68,50,0.1', '2026-05-01 11:00,"77",40,0']),
      MAP,
      SOURCE,
    );
    expect(issues).toEqual([]);
    expect(series?.airTemperature[0]).toBeCloseTo(20, 9);
    expect(series?.airTemperature[1]).toBeCloseTo(25, 9);
    expect(series?.rain?.[0]).toBeCloseTo(0.00254, 9);
  });

  test('the hour that does not exist in spring is said', () => {
    const map = { ...MAP, zone: 'America/Denver' };
    const { issues } = clock(map, ['2026-03-08 01:00', '2026-03-08 02:00', '2026-03-08 03:00', '2026-03-08 04:00']);
    expect(issues[0]).toMatchObject({ code: 'weather-time-does-not-exist', value: '2026-03-08 02:00' });
  });

  test('the hour that exists twice in autumn is first its first, then its second', () => {
    const map = { ...MAP, zone: 'America/Denver' };
    const { series, issues } = clock(map, [
      '2026-11-01 00:00',
      '2026-11-01 01:00',
      '2026-11-01 01:00',
      '2026-11-01 02:00',
    ]);
    expect(issues).toEqual([]);
    expect(series?.count).toBe(4);
    expect(new Date(series?.start as number).toISOString()).toBe('2026-11-01T06:00:00.000Z');
  });

  test('an offset in the text wins over the zone', () => {
    const { series } = clock({ ...MAP, zone: 'America/Denver' }, ['2026-05-01T10:00:00Z', '2026-05-01T13:00:00+02:00']);
    expect(series?.count).toBe(2);
  });

  test('missing marks, bad numbers, bad times, unknown columns, units and zones', () => {
    const { series, issues } = readWeatherCsv(
      csv([
        '2026-05-01 10:00,68,50,0',
        '2026-05-01 11:00,-99,50,0',
        '2026-05-01 12:00,x,50,0',
        'noon,70,50,0',
        '2026-05-01 13:00,70,50,0',
      ]),
      MAP,
      SOURCE,
    );
    expect(series?.count).toBe(4);
    expect(issues.map((each) => each.code)).toEqual([
      'weather-number-unreadable',
      'weather-time-unreadable',
      'weather-gap-filled',
    ]);
    const wrong = {
      ...MAP,
      zone: 'Mars/Base',
      fields: { airTemperature: { column: 'Tmp', unit: '°C' }, rain: { column: 'Rain', unit: '%' } },
    } as const;
    expect(readWeatherCsv(csv([]), wrong, SOURCE).issues.map((each) => each.code)).toEqual([
      'weather-zone-unknown',
      'weather-column-not-found',
      'weather-unit-unknown',
    ]);
  });

  test('a humidity column in fractions that the map calls per cent', () => {
    const rows = Array.from({ length: 5 }, (_, i) => `2026-05-01 1${i}:00,68,0.5,0`);
    expect(readWeatherCsv(csv(rows), MAP, SOURCE).issues.map((each) => each.code)).toContain(
      'weather-humidity-looks-like-fraction',
    );
  });
});

describe('EPW typical year', () => {
  // Written here after the published field list: eight header lines, 35 fields an hour.
  const epw = (): string => {
    const header = ['LOCATION,Testville,XX,XXX,own,000000,40.00,-105.00,-7.0,1600.0', ...Array(7).fill('COMMENTS,')];
    const lines: string[] = [];
    for (let i = 0; i < 8760; i++) {
      const date = new Date(Date.UTC(2025, 0, 1) + i * HOUR_MS);
      const air =
        10 - 12 * Math.cos((2 * Math.PI * (i / 24 - 20)) / 365) - 6 * Math.cos((2 * Math.PI * ((i % 24) - 3)) / 24);
      const cells = Array(35).fill('0') as string[];
      cells[0] = '1995';
      cells[1] = String(date.getUTCMonth() + 1);
      cells[2] = String(date.getUTCDate());
      cells[3] = String(date.getUTCHours() + 1);
      cells[6] = i === 100 ? '99.9' : air.toFixed(1);
      cells[8] = '55';
      cells[9] = '83500';
      cells[13] = '250';
      cells[21] = '2.5';
      cells[22] = '4';
      cells[33] = '999';
      lines.push(cells.join(','));
    }
    return [...header, ...lines].join('\n');
  };
  const text = epw();

  test('place, hours in the year asked for, units, missing marks, and the yearly wave of its ground', () => {
    const { series, issues, ground, city } = readEpw(text, 'testville.epw', 2026);
    expect(city).toBe('Testville');
    expect(series?.count).toBe(8760);
    // Hour 1 ends at 01:00 local standard time, seven hours behind UTC.
    expect(new Date(series?.start as number).toISOString()).toBe('2026-01-01T08:00:00.000Z');
    expect(series?.source.place).toEqual({ latitude: 40, longitude: -105, elevation: 1600 });
    expect(series?.cloud?.[0]).toBeCloseTo(0.4, 9);
    expect(series?.rain).toBeUndefined();
    expect(issues.map((each) => each.code)).toEqual(['weather-gap-filled']);
    expect(ground?.mean).toBeCloseTo(10, 1);
    expect(ground?.amplitude).toBeCloseTo(12, 1);
    expect(Math.abs((ground?.coldestDay as number) - 21)).toBeLessThanOrEqual(1);
  });

  test('what is no EPW, and lines that are none', () => {
    expect(readEpw('a,b,c', 'x', 2026).issues[0]?.code).toBe('weather-epw-no-location');
    const broken = text.replace(/\n1995,1,1,2,/, '\n1995,1,1,25,');
    expect(readEpw(broken, 'x', 2026).issues[0]?.code).toBe('weather-epw-line-unreadable');
  });
});

describe('five numbers typed by hand', () => {
  const day = { coldest: 8, warmest: 22, morningHumidity: 0.85, wind: 2, cloud: 0.3 };

  test('coldest at six, warmest at three, the water in the air constant', () => {
    const { series, issues } = typedWeather(day, place, 0, 3);
    expect(issues).toEqual([]);
    expect(series?.airTemperature[6]).toBeCloseTo(8, 9);
    expect(series?.airTemperature[15]).toBeCloseTo(22, 9);
    expect(series?.airTemperature[30]).toBeCloseTo(8, 9);
    expect(series?.relativeHumidity[6]).toBeCloseTo(0.85, 9);
    expect(series?.relativeHumidity[15]).toBeLessThan(0.4);
    expect(series?.rain).toBeUndefined();
  });

  test('numbers that cannot be are named', () => {
    expect(typedWeather({ ...day, warmest: 5 }, place, 0, 3).issues[0]?.code).toBe('weather-warmest-below-coldest');
    expect(typedWeather({ ...day, coldest: -80 }, place, 0, 3).issues[0]?.code).toBe('weather-typed-outside');
    expect(typedWeather({ ...day, wind: -1 }, place, 0, 3).issues[0]?.path).toEqual(['weather', 'wind']);
    expect(typedWeather({ ...day, cloud: Number.NaN }, place, 0, 3).issues[0]?.code).toBe('weather-typed-outside');
    expect(typedWeather({ ...day, morningHumidity: 0 }, place, 0, 3).issues[0]?.code).toBe('weather-typed-outside');
    expect(typedWeather({ ...day, morningHumidity: 85 }, place, 0, 3).issues[0]?.code).toBe(
      'weather-typed-looks-like-percent',
    );
  });
});
