import {
  climate,
  fromLocal,
  type Instant,
  type Issue,
  instantIn,
  type Job,
  parseQuantity,
  readJson,
  weatherFrom,
} from '@slabwright/core';
import { words } from '../words.ts';
import type { ColumnChoice, WeatherAsked } from './weather-api.ts';

const { weatherScience } = climate;
type Built = climate.weatherScience.Built;
type Place = climate.weatherScience.Place;
type Series = climate.weatherScience.WeatherSeries;

/** Weather as a person has it, made into the published weather file around the days of the job. */

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** What is kept around the first day of the coats: enough for the slab's past and for cars on the last coat. */
const BEFORE = 3 * DAY;
const AFTER = 16 * DAY;
/** Days that five typed numbers are held for, from the day before. */
const TYPED_DAYS = 8;

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

const rounded = (value: number, decimals: number): string => value.toFixed(decimals);

/** The hours of a series as a weather file; hours without data are left out, the plan says so where it needs them. */
export function fileOf(series: Series, source: string, zone: string, anchor: number, issued?: Instant): unknown {
  const { latitude, longitude } = series.source.place;
  const rows = Array.from({ length: series.count }, (_, i) => i).flatMap((i) => {
    const time = series.start + i * HOUR;
    if (series.state[i] === weatherScience.HOLE || time < anchor - BEFORE || time > anchor + AFTER) return [];
    const own = (values: Float64Array | undefined, field: string): number | undefined =>
      series.partial?.[field as 'wind']?.[i] === weatherScience.HOLE ? undefined : values?.[i];
    const [wind, cloud, sun, rain, pressure] = [
      own(series.wind, 'wind'),
      own(series.cloud, 'cloud'),
      own(series.radiation, 'radiation'),
      own(series.rain, 'rain'),
      own(series.pressure, 'pressure'),
    ];
    return [
      {
        at: instantIn(time, zone),
        air: `${rounded(series.airTemperature[i] ?? 0, 2)} °C`,
        humidity: `${rounded(Math.max((series.relativeHumidity[i] ?? 0) * 100, 1), 1)} %`,
        ...(wind === undefined ? {} : { wind: `${rounded(wind, 2)} m/s` }),
        ...(cloud === undefined ? {} : { cloud: `${rounded(cloud * 100, 0)} %` }),
        ...(sun === undefined ? {} : { sun: `${rounded(sun, 0)} W/m²` }),
        ...(rain === undefined ? {} : { rain: `${rounded(rain * 1000, 2)} mm` }),
        ...(pressure === undefined ? {} : { pressure: `${rounded(pressure / 100, 1)} hPa` }),
      },
    ];
  });
  return {
    schema: 'slabwright.weather/1',
    source: source.slice(0, 200),
    kind: series.source.kind,
    ...(issued ? { issued } : {}),
    place: { latitude, longitude, zone },
    rows,
  };
}

/** A built series as a checked file. */
function made(built: Built, source: string, job: Job, anchor: number): Made {
  const { series, issues } = built;
  if (!series) return { issues };
  const { zone } = job.place;
  const issued = series.source.issued === undefined ? undefined : instantIn(series.source.issued, zone);
  const file = fileOf(series, source, zone, anchor, issued);
  if ((file as { rows: unknown[] }).rows.length === 0) {
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

function fromTyped({ numbers }: Extract<WeatherAsked, { is: 'typed' }>, job: Job, anchor: number): Made {
  const place = placeOf(job);
  if (!place) return NO_PLACE;
  const issues: Issue[] = [];
  const value = (field: keyof typeof numbers, unit: '°C' | '1' | 'm/s'): number => {
    const parsed = parseQuantity(numbers[field], unit);
    if (parsed.ok) return parsed.quantity.value;
    const { code, typed, got, gotDimension = '', expectedDimension, didYouMean = [] } = parsed.trouble;
    issues.push({
      code,
      path: [words.weather.numbers[field]],
      value: typed,
      names: {
        got: got ?? '',
        gotDimension: gotDimension.replaceAll('-', ' '),
        expectedDimension: expectedDimension.replaceAll('-', ' '),
        didYouMean: didYouMean.join(', '),
      },
    });
    return 0;
  };
  const day = {
    coldest: value('coldest', '°C'),
    warmest: value('warmest', '°C'),
    morningHumidity: value('humidity', '1'),
    wind: value('wind', 'm/s'),
    cloud: value('cloud', '1'),
  };
  if (issues.length > 0) return { issues };
  const { zone } = job.place;
  const date = instantIn(anchor - DAY, zone).slice(0, 10);
  const local = fromLocal(`${date}T00:00:00`, zone);
  const midnight = Date.parse(local.kind === 'one' ? local.instant : local.kind === 'two' ? local.first : local.after);
  return made(weatherScience.typedWeather(day, place, midnight, TYPED_DAYS), asTyped(numbers), job, anchor);
}

const asTyped = (numbers: Readonly<Record<string, string>>): string => `typed: ${Object.values(numbers).join(', ')}`;

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
