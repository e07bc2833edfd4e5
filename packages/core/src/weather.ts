import { z } from 'zod';
import { instant, quantity, text, zone } from './fields.ts';
import type { Result } from './kernel/issue.ts';
import { checkSchema, readJson, validate } from './read.ts';

/** Hourly weather as data: where it came from, when it was issued, for which place, and one row an hour. */

export const WEATHER_SCHEMA = 'slabwright.weather';
export const WEATHER_VERSION = 1;

export const WEATHER_KINDS = ['forecast', 'measured', 'typical year', 'typed'] as const;

const temperature = () => quantity('°C', { least: '-80 °C', most: '60 °C', shows: 'temperature' });

export const weather = () =>
  z.strictObject({
    schema: z.literal(`${WEATHER_SCHEMA}/${WEATHER_VERSION}`),
    source: text(200),
    /** What it is: how far it is to be believed. A forecast where nothing is said. */
    kind: z.enum(WEATHER_KINDS).optional(),
    issued: instant().optional(),
    place: z.strictObject({
      name: text(120).optional(),
      latitude: z.number().min(-90).max(90),
      longitude: z.number().min(-180).max(180),
      zone: zone(),
    }),
    rows: z
      .array(
        z.strictObject({
          at: instant(),
          air: temperature(),
          humidity: quantity('1', { least: '1 %', most: '100 %', shows: 'humidity' }),
          wind: quantity('m/s', { least: '0 m/s', most: '80 m/s' }).optional(),
          cloud: quantity('1', { least: '0 %', most: '100 %', shows: 'share' }).optional(),
          sun: quantity('W/m²', { least: '0 W/m²', most: '1500 W/m²' }).optional(),
          rain: quantity('m', { least: '0 mm', most: '500 mm', shows: 'small-length' }).optional(),
          pressure: quantity('Pa', { least: '500 hPa', most: '1100 hPa', shows: 'pressure' }).optional(),
        }),
      )
      .min(1)
      .max(9000),
  });

export type WeatherFile = z.output<ReturnType<typeof weather>>;

const WEATHER = weather();

export function weatherFrom(value: unknown): Result<WeatherFile> {
  const issues = checkSchema(value, WEATHER_SCHEMA, WEATHER_VERSION);
  return issues.length > 0 ? { ok: false, issues } : validate(WEATHER, value);
}

export function weatherFromText(content: string): Result<WeatherFile> {
  const json = readJson(content);
  return json.ok ? weatherFrom(json.value) : json;
}
