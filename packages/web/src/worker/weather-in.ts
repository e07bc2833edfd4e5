import {
  climate,
  type Issue,
  instantIn,
  type Job,
  readJson,
  typedDocument,
  weatherDocumentOf,
  weatherFrom,
} from '@slabwright/core';
import { words } from '../words.ts';
import type { ColumnChoice, WeatherAsked } from './weather-api.ts';

const { weatherScience } = climate;
type Built = climate.weatherScience.Built;
type Place = climate.weatherScience.Place;

/** Weather as a person has it, made into the published weather file around the days of the job. */

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** What is kept around the first day of the coats: enough for the slab's past and for cars on the last coat. */
const BEFORE = 3 * DAY;
const AFTER = 16 * DAY;

export interface Made {
  /** A file of the published format; absent when nothing could be made. */
  readonly file?: unknown;
  readonly issues: readonly Issue[];
  /** Said by the screen itself. */
  readonly says?: readonly string[];
  /** Headings of a table whose columns are not named yet. */
  readonly headings?: readonly string[];
}

/** The first chosen start, else now: the weather is kept around it. */
export function anchorOf(job: Job, now: number): number {
  const starts = job.options.flatMap(({ starts: chosen = [] }) => chosen.map(({ at }) => Date.parse(at)));
  return starts.length > 0 ? Math.min(...starts) : now;
}

const NO_PLACE: Made = { issues: [], says: [words.weather.noPlace] };

export function placeOf({ place }: Job): Place | null {
  const { latitude, longitude, altitude } = place;
  if (latitude === undefined || longitude === undefined) return null;
  return { latitude, longitude, ...(altitude ? { elevation: altitude.value } : {}) };
}

/** A built series as a checked file. */
function made(built: Built, source: string, job: Job, anchor: number): Made {
  const { series, issues } = built;
  if (!series) return { issues };
  const { zone } = job.place;
  const file = weatherDocumentOf(series, { source, zone, from: anchor - BEFORE, to: anchor + AFTER });
  if (file.rows.length === 0) {
    const [from, until] = [series.start, weatherScience.endOf(series)].map((at) => instantIn(at, zone).slice(0, 10));
    return { issues, says: [words.weather.otherDays(from ?? '', until ?? '', instantIn(anchor, zone).slice(0, 10))] };
  }
  const read = weatherFrom(file);
  return read.ok ? { file, issues } : { issues: [...issues, ...read.issues] };
}

const separatorOf = (heading: string): ',' | ';' | '\t' => {
  const count = (sign: string): number => heading.split(sign).length;
  return count('\t') > 1 ? '\t' : count(';') > count(',') ? ';' : ',';
};

export const headingsOf = (text: string): readonly string[] => {
  const [first = ''] = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  return first.split(separatorOf(first)).map((cell) => cell.trim().replace(/^"|"$/g, ''));
};

function fromTable(text: string, name: string, columns: ColumnChoice, job: Job, anchor: number): Made {
  const place = placeOf(job);
  if (!place) return NO_PLACE;
  const [first = ''] = text.split(/\r?\n/);
  const { time, zone, fields } = columns;
  const built = weatherScience.readWeatherCsv(
    text,
    { time, zone, fields: fields as never, separator: separatorOf(first) },
    { kind: 'measured', name, place },
  );
  return made(built, name, job, anchor);
}

function fromText(asked: Extract<WeatherAsked, { is: 'file' }>, job: Job, anchor: number): Made {
  const { text, name, columns } = asked;
  if (/^\s*\{/.test(text)) {
    const json = readJson(text);
    if (!json.ok) return { issues: json.issues };
    const read = weatherFrom(json.value);
    return read.ok ? { file: json.value, issues: [] } : { issues: read.issues };
  }
  if (/^\s*LOCATION,/i.test(text)) {
    const year = Number(instantIn(anchor, job.place.zone).slice(0, 4));
    return made(weatherScience.readEpw(text, name, year), name, job, anchor);
  }
  return columns ? fromTable(text, name, columns, job, anchor) : { issues: [], headings: headingsOf(text) };
}

/** As the terminal makes them; the fields are named as the screen names them. */
function fromTyped({ numbers }: Extract<WeatherAsked, { is: 'typed' }>, job: Job, anchor: number): Made {
  if (!placeOf(job)) return NO_PLACE;
  const made = typedDocument(numbers, job, instantIn(anchor, job.place.zone));
  if (made.ok) return { file: made.value, issues: [] };
  const screen = (part: string | number): string | number =>
    words.weather.numbers[part as keyof typeof numbers] ?? part;
  return { issues: made.issues.map((issue) => ({ ...issue, path: issue.path.map(screen) })) };
}

const SERVICES = {
  'met-norway': weatherScience.MET_NORWAY,
  nws: weatherScience.NATIONAL_WEATHER_SERVICE,
} as const;

/** Weather of a job out of a file, five numbers or a forecast service. Asking goes out only with the person's leave. */
export async function weatherIn(
  asked: WeatherAsked,
  job: Job,
  now: number,
  fetchText: (url: string) => Promise<string>,
): Promise<Made> {
  const anchor = anchorOf(job, now);
  if (asked.is === 'file') return fromText(asked, job, anchor);
  if (asked.is === 'typed') return fromTyped(asked, job, anchor);
  const place = placeOf(job);
  if (!place) return NO_PLACE;
  const service = SERVICES[asked.service];
  const built = await weatherScience.askForecast(
    service,
    weatherScience.roundedPlace(place),
    { sendPlace: asked.allowed },
    { fetchText },
  );
  return made(built, asked.name, job, anchor);
}
