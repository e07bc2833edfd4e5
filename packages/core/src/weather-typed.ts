import type { Job } from './job.ts';
import { epochOf, fromLocal, type Instant, instantIn } from './kernel/instant.ts';
import type { Issue, Result } from './kernel/issue.ts';
import type { Unit } from './kernel/unit.ts';
import { DAY_MS, type TypedDay, typedWeather } from './science/weather/index.ts';
import { parseQuantity } from './units/index.ts';
import { type WeatherDocument, type WeatherFile, weatherFrom } from './weather.ts';
import { weatherDocumentOf } from './weather-of-series.ts';

/** Weather of a day as a person types it out of any bulletin, each number with its unit. */
export interface TypedNumbers {
  /** Coldest and warmest air of the day. */
  readonly coldest: string;
  readonly warmest: string;
  /** Relative humidity at the coldest hour. */
  readonly humidity: string;
  readonly wind: string;
  readonly cloud: string;
}
export type TypedNumber = keyof TypedNumbers;

const UNITS: Readonly<Record<TypedNumber, Unit>> = {
  coldest: '°C',
  warmest: '°C',
  humidity: '1',
  wind: 'm/s',
  cloud: '1',
};
export const TYPED_NUMBERS = Object.keys(UNITS) as readonly TypedNumber[];
const FIELD: Readonly<Record<TypedNumber, keyof TypedDay>> = {
  coldest: 'coldest',
  warmest: 'warmest',
  humidity: 'morningHumidity',
  wind: 'wind',
  cloud: 'cloud',
};

/** Days the numbers are held for, from the day before the one planned for. */
const HELD_DAYS = 8;

function parsed(numbers: TypedNumbers): { readonly day: TypedDay; readonly issues: readonly Issue[] } {
  const day = { coldest: 0, warmest: 0, morningHumidity: 0, wind: 0, cloud: 0 };
  const issues = TYPED_NUMBERS.flatMap((name): readonly Issue[] => {
    const read = parseQuantity(numbers[name], UNITS[name]);
    if (read.ok) {
      day[FIELD[name]] = read.quantity.value;
      return [];
    }
    const { code, typed, got = '', gotDimension = '', expectedDimension, didYouMean = [] } = read.trouble;
    const plain = (text: string): string => text.replaceAll('-', ' ');
    const names = {
      got,
      gotDimension: plain(gotDimension),
      expectedDimension: plain(expectedDimension),
      didYouMean: didYouMean.join(', '),
    };
    return [{ code, path: [name], value: typed, names }];
  });
  return { day, issues };
}

/** An issue of the typed day under the name and in the words the person used. */
function asTyped(issue: Issue, numbers: TypedNumbers): Issue {
  const name = TYPED_NUMBERS.find((one) => FIELD[one] === issue.path.at(-1));
  return name ? { ...issue, path: [name], value: numbers[name] } : issue;
}

/**
 * A weather file out of five typed numbers, held the same for eight days from the day before `from`. It says of itself
 * that it was typed, so that the plan takes it as the assumption it is.
 *
 * @param from moment planned for, or the first start chosen
 */
export function weatherFromTyped(numbers: TypedNumbers, job: Pick<Job, 'place'>, from: Instant): Result<WeatherFile> {
  const document = typedDocument(numbers, job, from);
  return document.ok ? weatherFrom(document.value) : document;
}

/** The same in the published form, to be kept beside the job. */
export function typedDocument(numbers: TypedNumbers, job: Pick<Job, 'place'>, from: Instant): Result<WeatherDocument> {
  const { latitude, longitude, altitude, zone } = job.place;
  if (latitude === undefined || longitude === undefined) {
    const missing = latitude === undefined ? 'latitude' : 'longitude';
    return { ok: false, issues: [{ code: 'weather-place-missing', path: ['place', missing] }] };
  }
  const { day, issues } = parsed(numbers);
  if (issues.length > 0) return { ok: false, issues };
  const date = instantIn(epochOf(from) - DAY_MS, zone).slice(0, 10);
  const local = fromLocal(`${date}T00:00:00`, zone);
  const midnight = epochOf(local.kind === 'one' ? local.instant : local.kind === 'two' ? local.first : local.after);
  const place = { latitude, longitude, ...(altitude ? { elevation: altitude.value } : {}) };
  const built = typedWeather(day, place, midnight, HELD_DAYS);
  const { series } = built;
  if (!series) return { ok: false, issues: built.issues.map((issue) => asTyped(issue, numbers)) };
  const source = `typed: ${TYPED_NUMBERS.map((name) => numbers[name].trim()).join(', ')}`;
  return { ok: true, value: weatherDocumentOf(series, { source, zone }) };
}
