import type { Issue } from '../../kernel/issue.ts';
import { pressureRatioAt } from './altitude.ts';
import { type Built, buildWeather, type WeatherRow } from './build.ts';
import type { ForecastService } from './forecast-service.ts';
import { roundedPlace } from './place.ts';
import { type Json, listAt, numberAt, parseJson, textAt } from './read-json.ts';
import { HOUR_MS, type Place, type WeatherField } from './series.ts';

/**
 * MET Norway, api.met.no: Locationforecast 2.0, compact, for any place on earth (data under CC BY 4.0).
 *
 * Instants with `instant.details`, and amounts over the hours that follow in `next_1_hours` and, further out, where the
 * steps are six hours, `next_6_hours`. Units are stated in `meta.units` and checked. Format: the service's own page on
 * its forecast JSON. It asks each caller to identify itself, which the shell does.
 */
const HOST = 'https://api.met.no/weatherapi/locationforecast/2.0/compact';

interface Reading {
  readonly name: string;
  readonly field: WeatherField;
  readonly unit: string;
  readonly toSi: (value: number) => number;
}

const INSTANT: readonly Reading[] = [
  { name: 'air_temperature', field: 'airTemperature', unit: 'celsius', toSi: (value) => value },
  { name: 'relative_humidity', field: 'relativeHumidity', unit: '%', toSi: (value) => value / 100 },
  { name: 'cloud_area_fraction', field: 'cloud', unit: '%', toSi: (value) => value / 100 },
  { name: 'wind_speed', field: 'wind', unit: 'm/s', toSi: (value) => value },
  { name: 'air_pressure_at_sea_level', field: 'pressure', unit: 'hPa', toSi: (value) => value * 100 },
];
const RAIN = { name: 'precipitation_amount', unit: 'mm' } as const;

const read = (answer: string, place: Place): Built => {
  const path = ['weather'];
  const json = parseJson(answer);
  const steps = listAt(json, 'properties', 'timeseries');
  if (steps === undefined)
    return { issues: [{ code: 'weather-answer-unreadable', path, names: { service: 'met-norway' } }] };
  const issues: Issue[] = [];
  const trusted = (name: string, unit: string, field: string): boolean => {
    const stated = textAt(json, 'properties', 'meta', 'units', name);
    if (stated === undefined || stated === unit) return true;
    issues.push({ code: 'weather-unit-unknown', path: [...path, field], value: stated, limits: [unit] });
    return false;
  };
  const readings = INSTANT.filter(({ name, unit, field }) => trusted(name, unit, field));
  const rain = trusted(RAIN.name, RAIN.unit, 'rain');
  const [, , altitude] = (listAt(json, 'geometry', 'coordinates') ?? []) as readonly unknown[];
  const elevation = place.elevation ?? (typeof altitude === 'number' ? altitude : undefined);
  const ratio = pressureRatioAt(elevation ?? 0);

  const byTime = new Map<number, { -readonly [K in WeatherField]?: number }>();
  const rowAt = (time: number): { -readonly [K in WeatherField]?: number } => {
    const row = byTime.get(time) ?? {};
    byTime.set(time, row);
    return row;
  };
  for (const step of steps) {
    const time = Date.parse(textAt(step, 'time') ?? '');
    if (!Number.isFinite(time)) continue;
    const row = rowAt(time);
    for (const { name, field, toSi } of readings) {
      const value = numberAt(step, 'data', 'instant', 'details', name);
      if (value !== undefined) row[field] = toSi(value) * (field === 'pressure' ? ratio : 1);
    }
    if (rain) addRain(step, time, rowAt);
  }
  const rows: WeatherRow[] = [...byTime].sort(([a], [b]) => a - b).map(([time, values]) => ({ time, ...values }));
  const issued = Date.parse(textAt(json, 'properties', 'meta', 'updated_at') ?? '');
  const source = {
    kind: 'forecast' as const,
    name: 'met-norway',
    place: { ...place, ...(elevation === undefined ? {} : { elevation }) },
    terms: 'met-norway-terms',
    ...(Number.isFinite(issued) ? { issued } : {}),
  };
  const built = buildWeather(rows, source, { longestFill: 5 });
  return { ...built, issues: [...issues, ...built.issues] };
};

/** Rain of the next hour, or of the next six spread evenly where no hourly amount is given. */
const addRain = (step: Json, time: number, rowAt: (time: number) => { rain?: number }): void => {
  const hour = numberAt(step, 'data', 'next_1_hours', 'details', RAIN.name);
  if (hour !== undefined) {
    rowAt(time + HOUR_MS).rain = hour / 1000;
    return;
  }
  const six = numberAt(step, 'data', 'next_6_hours', 'details', RAIN.name);
  if (six === undefined) return;
  for (let h = 1; h <= 6; h++) rowAt(time + h * HOUR_MS).rain ??= six / 6000;
};

export const MET_NORWAY: ForecastService = {
  name: 'met-norway',
  terms: 'met-norway-terms',
  firstUrl: (place) => {
    const { latitude, longitude, elevation } = roundedPlace(place);
    const altitude = elevation === undefined ? '' : `&altitude=${elevation}`;
    return `${HOST}?lat=${latitude}&lon=${longitude}${altitude}`;
  },
  read,
};
