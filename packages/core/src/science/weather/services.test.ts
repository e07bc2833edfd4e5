import { describe, expect, test } from 'vitest';
import metOwn from '../../../../../reference/weather/met-norway-answer.json' with { type: 'json' };
import metPublished from '../../../../../reference/weather/met-norway-published-example.json' with { type: 'json' };
import nwsGrid from '../../../../../reference/weather/nws-gridpoint-answer.json' with { type: 'json' };
import nwsPoints from '../../../../../reference/weather/nws-points-answer.json' with { type: 'json' };
import { MET_NORWAY } from './forecast-met-norway.ts';
import { NATIONAL_WEATHER_SERVICE, readInterval } from './forecast-nws.ts';
import { askForecast } from './forecast-service.ts';
import { HOLE, HOUR_MS, type WeatherSeries } from './series.ts';

const PLACE = { latitude: 33.52149, longitude: -86.81161 };
const seriesOf = (built: { readonly series?: WeatherSeries }): WeatherSeries => {
  if (built.series === undefined) throw new Error('no series');
  return built.series;
};

describe('asking', () => {
  test('nothing is sent without consent', async () => {
    const asked: string[] = [];
    const fetchText = async (url: string) => {
      asked.push(url);
      return '{}';
    };
    const built = await askForecast(MET_NORWAY, PLACE, { sendPlace: false }, { fetchText });
    expect(asked).toEqual([]);
    expect(built.issues[0]?.code).toBe('weather-asking-not-allowed');
  });

  test('the place is rounded to 0.01° before it leaves', () => {
    expect(NATIONAL_WEATHER_SERVICE.firstUrl(PLACE)).toBe('https://api.weather.gov/points/33.52,-86.81');
    expect(MET_NORWAY.firstUrl({ ...PLACE, elevation: 187 })).toBe(
      'https://api.met.no/weatherapi/locationforecast/2.0/compact?lat=33.52&lon=-86.81&altitude=190',
    );
  });

  test('two steps of the national service, and only to its own host', async () => {
    const asked: string[] = [];
    const fetchText = async (url: string) => {
      asked.push(url);
      return JSON.stringify(url.includes('/points/') ? nwsPoints : nwsGrid);
    };
    const built = await askForecast(NATIONAL_WEATHER_SERVICE, PLACE, { sendPlace: true }, { fetchText });
    expect(asked[1]).toBe('https://api.weather.gov/gridpoints/BMX/59,84');
    expect(built.series).toBeDefined();
    const elsewhere = JSON.stringify({ properties: { forecastGridData: 'https://elsewhere.example/x' } });
    const refused = await askForecast(
      NATIONAL_WEATHER_SERVICE,
      PLACE,
      { sendPlace: true },
      { fetchText: async () => elsewhere },
    );
    expect(refused.issues[0]?.code).toBe('weather-place-not-served');
  });

  test('a network that fails is an issue with its reason', async () => {
    const fetchText = async (): Promise<string> => {
      throw new Error('no route');
    };
    const built = await askForecast(MET_NORWAY, PLACE, { sendPlace: true }, { fetchText });
    expect(built.issues[0]).toMatchObject({ code: 'weather-service-unreachable', names: { reason: 'no route' } });
  });
});

describe('National Weather Service, answer as the service publishes it', () => {
  const built = NATIONAL_WEATHER_SERVICE.read(JSON.stringify(nwsGrid), PLACE);

  test('hours, units, issue time and place', () => {
    const series = seriesOf(built);
    expect(new Date(series.start).toISOString()).toBe('2024-02-24T05:00:00.000Z');
    expect(series.count).toBe(25);
    expect(series.airTemperature[0]).toBeCloseTo(15.5556, 4);
    expect(series.relativeHumidity[0]).toBeCloseTo(0.46, 9);
    // An interval of two hours holds in both.
    expect(series.airTemperature[12]).toBe(series.airTemperature[13]);
    expect(series.wind?.[0]).toBeCloseTo(24.076 / 3.6, 9);
    expect(series.cloud?.[0]).toBeCloseTo(0.04, 9);
    expect(series.rain?.every((each) => each === 0)).toBe(true);
    expect(series.source.issued).toBe(Date.parse('2024-02-20T15:15:12Z'));
    expect(series.source.place.elevation).toBeCloseTo(167.03, 2);
    expect(built.issues).toEqual([]);
  });

  test('an amount of rain is spread over its hours and keeps its sum', () => {
    const wet = structuredClone(nwsGrid);
    (wet.properties.quantitativePrecipitation.values[1] as { value: number }).value = 2.794;
    const series = seriesOf(NATIONAL_WEATHER_SERVICE.read(JSON.stringify(wet), PLACE));
    const sum = (series.rain as Float64Array).reduce((a, b) => a + b, 0);
    expect(sum * 1000).toBeCloseTo(2.794, 9);
  });

  test('an unknown unit is named; an unreadable answer too', () => {
    const odd = structuredClone(nwsGrid);
    odd.properties.windSpeed.uom = 'wmoUnit:furlong';
    expect(NATIONAL_WEATHER_SERVICE.read(JSON.stringify(odd), PLACE).issues[0]).toMatchObject({
      code: 'weather-unit-unknown',
      value: 'wmoUnit:furlong',
    });
    expect(NATIONAL_WEATHER_SERVICE.read('<html>', PLACE).issues[0]?.code).toBe('weather-answer-unreadable');
  });

  test('intervals', () => {
    // The example of the service's own gridpoint page.
    expect(readInterval('2019-07-04T18:00:00+00:00/PT3H')).toEqual({
      start: Date.parse('2019-07-04T18:00:00Z'),
      length: 3 * HOUR_MS,
    });
    expect(readInterval('2024-02-20T09:00:00+00:00/P7DT16H')?.length).toBe((7 * 24 + 16) * HOUR_MS);
    expect(readInterval('2024-02-20T09:00:00+00:00')).toBeUndefined();
    expect(readInterval('soon/PT1H')).toBeUndefined();
  });
});

describe('MET Norway', () => {
  const keysOf = (json: unknown, prefix = ''): string[] => {
    if (Array.isArray(json)) return json.flatMap((each) => keysOf(each, `${prefix}[]`));
    if (json === null || typeof json !== 'object') return [prefix];
    return Object.entries(json).flatMap(([key, value]) => keysOf(value, `${prefix}.${key}`));
  };

  test('the stored answer has the published form and units', () => {
    // Steps further out carry the next six hours instead of the next one, in the same form.
    const published = new Set(
      keysOf(metPublished).flatMap((key) => [key, key.replace('next_1_hours', 'next_6_hours')]),
    );
    for (const key of keysOf(metOwn)) expect(published.has(key), key).toBe(true);
    for (const [name, unit] of Object.entries(metOwn.properties.meta.units)) {
      expect((metPublished.properties.meta.units as Record<string, string>)[name]).toBe(unit);
    }
  });

  test('hourly steps, then six-hourly ones filled and said', () => {
    const built = MET_NORWAY.read(JSON.stringify(metOwn), { latitude: 60.1, longitude: 10 });
    const series = seriesOf(built);
    expect(series.count).toBe(18);
    expect(series.airTemperature[0]).toBe(20.7);
    expect(series.relativeHumidity[0]).toBeCloseTo(0.486, 9);
    // The hour that follows 15:00 ends at 16:00.
    expect((series.rain?.[3] as number) * 1000).toBeCloseTo(0.3, 9);
    expect((series.rain?.[8] as number) * 1000).toBeCloseTo(0.3, 9);
    expect(series.state.includes(HOLE)).toBe(false);
    // 1020.5 hPa at the sea, 267 m up: about 31 hPa less.
    expect((series.pressure?.[0] as number) / 100).toBeCloseTo(988.6, 0);
    expect(series.source).toMatchObject({
      name: 'met-norway',
      issued: Date.parse('2020-06-10T13:04:26Z'),
      place: { elevation: 267 },
    });
    expect(built.issues.map((each) => each.code)).toEqual(['weather-gap-filled', 'weather-gap-filled']);
  });

  test('a changed unit is not read', () => {
    const odd = structuredClone(metOwn);
    odd.properties.meta.units.air_temperature = 'fahrenheit';
    const built = MET_NORWAY.read(JSON.stringify(odd), { latitude: 60.1, longitude: 10 });
    expect(built.series).toBeUndefined();
    expect(built.issues[0]).toMatchObject({ code: 'weather-unit-unknown', value: 'fahrenheit' });
    expect(MET_NORWAY.read('', PLACE).issues[0]?.code).toBe('weather-answer-unreadable');
  });
});
