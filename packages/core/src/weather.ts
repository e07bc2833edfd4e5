import { z } from 'zod';
import { instant, quantity, text, zone } from './fields.ts';
import type { Issue, Result } from './kernel/issue.ts';
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
/** The file as it is written, before it is read. */
export type WeatherDocument = z.input<ReturnType<typeof weather>>;

const WEATHER = weather();

export function weatherFrom(value: unknown): Result<WeatherFile> {
  const issues = checkSchema(value, WEATHER_SCHEMA, WEATHER_VERSION);
  if (issues.length > 0) return { ok: false, issues };
  const read = validate(WEATHER, value);
  return read.ok ? read : { ok: false, issues: gathered(read.issues) };
}

/** Issues of one kind and field that are said one by one; a file in a wrong unit has hundreds. */
const MOST_OF_A_KIND = 5;

/** The same slip in every row is said once, and what it looks like. */
function gathered(issues: readonly Issue[]): readonly Issue[] {
  const kinds = new Map<string, Issue[]>();
  for (const issue of issues) {
    const field = issue.path[0] === 'rows' ? issue.path[2] : undefined;
    const key = field === undefined ? issue.path.join('.') : `rows ${field}`;
    const kind = `${key} ${issue.code}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), issue]);
  }
  return [...kinds.values()].flatMap((alike): readonly Issue[] => {
    const [first] = alike;
    if (!first || alike.length <= MOST_OF_A_KIND) return alike;
    const field = first.path[2] ?? '';
    const slip = field === 'humidity' ? SLIPS[first.code] : undefined;
    const value = `${alike.length}`;
    if (slip?.looks(alike)) return [{ code: slip.code, path: ['rows', field], value }];
    const more = { code: first.code, more: `${alike.length - MOST_OF_A_KIND}` };
    return [...alike.slice(0, MOST_OF_A_KIND), { code: 'weather-more-of-these', path: ['rows', field], names: more }];
  });
}

/** A humidity between 0 and 1 where a percentage was meant, or typed as a number. */
const SLIPS: Readonly<
  Record<string, { readonly code: string; readonly looks: (alike: readonly Issue[]) => boolean } | undefined>
> = {
  'out-of-range': {
    code: 'weather-humidity-below-air',
    looks: (alike) => alike.every(({ value = '' }) => Number.parseFloat(value) <= 1),
  },
  'quantity-needs-a-unit': { code: 'weather-humidity-bare', looks: () => true },
};

export function weatherFromText(content: string): Result<WeatherFile> {
  const json = readJson(content);
  return json.ok ? weatherFrom(json.value) : json;
}
