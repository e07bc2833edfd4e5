import { type Built, buildWeather, type WeatherRow } from './build.ts';
import type { ForecastService } from './forecast-service.ts';
import { roundedPlace } from './place.ts';
import { at, type Json, listAt, numberAt, parseJson, textAt } from './read-json.ts';
import { HOUR_MS, type Place, type WeatherField } from './series.ts';

/**
 * United States National Weather Service, api.weather.gov: raw grid forecast of a 2.5 km square (public domain).
 *
 * Two steps: /points/{lat},{lon} names the square; its `forecastGridData` holds layers of intervals such as
 * `2019-07-04T18:00:00+00:00/PT3H`, equal neighbours merged. Format: the service's own gridpoint page and schema.
 */
const HOST = 'https://api.weather.gov/';

/** Layer of the service, our quantity, and the units it may state with their factor to SI. */
interface LayerReading {
  readonly layer: string;
  readonly field: WeatherField;
  readonly toSi: Readonly<Record<string, (value: number) => number>>;
  /** True for an amount over the interval, which is spread over its hours. */
  readonly amount?: boolean;
}

const percent = { 'wmoUnit:percent': (value: number) => value / 100 };
const LAYERS: readonly LayerReading[] = [
  {
    layer: 'temperature',
    field: 'airTemperature',
    toSi: { 'wmoUnit:degC': (value) => value, 'wmoUnit:degF': (value) => ((value - 32) * 5) / 9 },
  },
  { layer: 'relativeHumidity', field: 'relativeHumidity', toSi: percent },
  { layer: 'skyCover', field: 'cloud', toSi: percent },
  {
    layer: 'windSpeed',
    field: 'wind',
    toSi: { 'wmoUnit:km_h-1': (value) => value / 3.6, 'wmoUnit:m_s-1': (value) => value },
  },
  { layer: 'quantitativePrecipitation', field: 'rain', toSi: { 'wmoUnit:mm': (value) => value / 1000 }, amount: true },
];

/** Start and length of an interval `instant/duration`, ms; undefined when it is none. */
export const readInterval = (text: string): { readonly start: number; readonly length: number } | undefined => {
  const [from, duration] = text.split('/');
  const start = Date.parse(from ?? '');
  const parts = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?)?$/.exec(duration ?? '');
  if (!Number.isFinite(start) || parts === null) return undefined;
  const [days, hours, minutes] = [parts[1], parts[2], parts[3]].map((each) => Number(each ?? 0)) as [
    number,
    number,
    number,
  ];
  const length = ((days * 24 + hours) * 60 + minutes) * 60_000;
  return length > 0 ? { start, length } : undefined;
};

const nextUrl: NonNullable<ForecastService['nextUrl']> = (answer) => {
  const url = textAt(parseJson(answer), 'properties', 'forecastGridData');
  // Only the service's own host: an answer must not send us elsewhere.
  if (url?.startsWith(HOST)) return { url, issues: [] };
  return { issues: [{ code: 'weather-place-not-served', path: ['weather'], names: { service: 'nws' } }] };
};

/** Hours of one layer: instants for what holds at a time, hour ends for amounts. */
const hoursOf = (
  values: readonly Json[],
  reading: LayerReading,
  convert: (value: number) => number,
  into: Map<number, { -readonly [K in WeatherField]?: number }>,
): void => {
  for (const each of values) {
    const interval = readInterval(textAt(each, 'validTime') ?? '');
    const value = numberAt(each, 'value');
    if (interval === undefined || value === undefined) continue;
    const hours = Math.max(1, Math.round(interval.length / HOUR_MS));
    const si = convert(value) / (reading.amount ? hours : 1);
    for (let h = 0; h < hours; h++) {
      const time = interval.start + (h + (reading.amount ? 1 : 0)) * HOUR_MS;
      const row = into.get(time) ?? {};
      row[reading.field] = si;
      into.set(time, row);
    }
  }
};

const read = (answer: string, place: Place): Built => {
  const path = ['weather'];
  const json = parseJson(answer);
  const properties = at(json, 'properties');
  const issued = Date.parse(textAt(properties, 'updateTime') ?? '');
  if (properties === undefined || listAt(properties, 'temperature', 'values') === undefined) {
    return { issues: [{ code: 'weather-answer-unreadable', path, names: { service: 'nws' } }] };
  }
  const issues = [];
  const byTime = new Map<number, { -readonly [K in WeatherField]?: number }>();
  for (const reading of LAYERS) {
    const values = listAt(properties, reading.layer, 'values');
    if (values === undefined || values.length === 0) continue;
    const unit = textAt(properties, reading.layer, 'uom') ?? '';
    const convert = reading.toSi[unit];
    if (convert === undefined) {
      issues.push({
        code: 'weather-unit-unknown',
        path: [...path, reading.field],
        value: unit,
        limits: Object.keys(reading.toSi),
      });
      continue;
    }
    hoursOf(values, reading, convert, byTime);
  }
  const rows: WeatherRow[] = [...byTime].sort(([a], [b]) => a - b).map(([time, values]) => ({ time, ...values }));
  const elevation = numberAt(properties, 'elevation', 'value');
  const source = {
    kind: 'forecast' as const,
    name: 'nws',
    place: { ...place, ...(place.elevation === undefined && elevation !== undefined ? { elevation } : {}) },
    terms: 'nws-api',
    ...(Number.isFinite(issued) ? { issued } : {}),
  };
  const built = buildWeather(rows, source);
  return { ...built, issues: [...issues, ...built.issues] };
};

export const NATIONAL_WEATHER_SERVICE: ForecastService = {
  name: 'nws',
  terms: 'nws-api',
  firstUrl: (place) => {
    const { latitude, longitude } = roundedPlace(place);
    return `${HOST}points/${latitude},${longitude}`;
  },
  nextUrl,
  read,
};
