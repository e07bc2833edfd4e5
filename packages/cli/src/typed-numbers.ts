import {
  type Issue,
  type Job,
  type Result,
  TYPED_NUMBERS,
  type TypedNumber,
  type TypedNumbers,
  type WeatherFile,
  weatherFromTyped,
} from '@slabwright/core';
import { BadInput } from './terminal.ts';
import { plainVoice } from './voice.ts';

/** Numbers typed on the command line: the day's weather as five, a reading of the moment as three. */
export interface TypedOptions {
  readonly airLow?: string;
  readonly airHigh?: string;
  readonly humidity?: string;
  readonly wind?: string;
  readonly cloud?: string;
  readonly slabNow?: string;
  readonly airNow?: string;
  readonly humidityNow?: string;
  readonly materialNow?: string;
}

type Flag = readonly [key: keyof TypedOptions, flag: string];

const DAY: Readonly<Record<TypedNumber, Flag>> = {
  coldest: ['airLow', '--air-low'],
  warmest: ['airHigh', '--air-high'],
  humidity: ['humidity', '--humidity'],
  wind: ['wind', '--wind'],
  cloud: ['cloud', '--cloud'],
};
const NOW: readonly (readonly [field: string, ...Flag])[] = [
  ['slab', 'slabNow', '--slab-now'],
  ['air', 'airNow', '--air-now'],
  ['humidity', 'humidityNow', '--humidity-now'],
];

const EXAMPLE_DAY = '--air-low "8 °C" --air-high "22 °C" --humidity "85 %" --wind "2 m/s" --cloud "30 %"';
const EXAMPLE_NOW = '--slab-now "16 °C" --air-now "18 °C" --humidity-now "60 %"';

/** Some of the flags given and some not: names those that are missing, with a whole line to copy. */
function refuseParts(flags: readonly Flag[], options: TypedOptions, what: string, example: string): boolean {
  const missing = flags.filter(([key]) => options[key] === undefined);
  if (missing.length === flags.length) return false;
  if (missing.length === 0) return true;
  const names = missing.map(([, flag]) => flag).join(', ');
  throw new BadInput([`${what}; ${names} ${missing.length > 1 ? 'are' : 'is'} missing. Write for example ${example}.`]);
}

/** The typed day as hourly weather around the first start chosen, or the moment planned for. */
export function typedWeatherOf(options: TypedOptions, job: Job, now: string): WeatherFile | undefined {
  const flags = TYPED_NUMBERS.map((name) => DAY[name]);
  const what =
    'The weather of a day is typed as five numbers: coldest and warmest air, humidity at the coldest hour, wind, cloud';
  if (!refuseParts(flags, options, what, EXAMPLE_DAY)) return undefined;
  const text = (name: TypedNumber): string => options[DAY[name][0]] ?? '';
  const numbers: TypedNumbers = {
    coldest: text('coldest'),
    warmest: text('warmest'),
    humidity: text('humidity'),
    wind: text('wind'),
    cloud: text('cloud'),
  };
  const starts = job.options.flatMap(({ starts: chosen = [] }) => chosen.map(({ at }) => at));
  const first = starts.reduce((least, at) => (Date.parse(at) < Date.parse(least) ? at : least), now);
  const made = weatherFromTyped(numbers, job, first);
  if (made.ok) return made.value;
  const issues = made.issues.map((issue): Issue => ({ ...issue, path: issue.path.map(flagOf) }));
  const voice = plainVoice();
  throw new BadInput(
    issues.map((issue) => voice.sayIssue(issue)),
    issues,
  );
}

const flagOf = (part: string | number): string | number => DAY[part as TypedNumber]?.[1] ?? part;

/** The document of a job with the reading of the moment among its readings, where one was typed. */
export function withReading(document: Result<unknown>, options: TypedOptions, now: string): Result<unknown> {
  const flags = NOW.map(([, ...flag]): Flag => flag);
  if (options.materialNow !== undefined && options.slabNow === undefined)
    throw new BadInput([
      `--material-now goes with the reading of its moment. Write for example ${EXAMPLE_NOW} --material-now "24 °C".`,
    ]);
  if (!refuseParts(flags, options, 'A reading is three numbers of one moment', EXAMPLE_NOW)) return document;
  if (!document.ok || typeof document.value !== 'object' || document.value === null) return document;
  const job = document.value as { readonly survey?: { readonly climate?: unknown } };
  const { climate = [] } = job.survey ?? {};
  if (!Array.isArray(climate)) return document;
  const { materialNow: material } = options;
  const reading = {
    at: now,
    ...Object.fromEntries(NOW.map(([field, key]) => [field, options[key]])),
    ...(material === undefined ? {} : { material }),
  };
  return { ok: true, value: { ...job, survey: { ...job.survey, climate: [...climate, reading] } } };
}
