import {
  type Catalogue,
  catalogueFromText,
  checkCatalogue,
  checkJob,
  climate,
  type Issue,
  type Job,
  jobFrom,
  type PriceBook,
  priceBookFromText,
  type Result,
  readJson,
  WARNINGS,
  type WeatherFile,
  weatherFileOf,
  weatherFromText,
} from '@slabwright/core';
import { badInput, readBeside, readInput } from './read-file.ts';
import { sharedParts } from './shared.ts';
import { BadInput } from './terminal.ts';
import { type TypedOptions, typedWeatherOf, withReading } from './typed-numbers.ts';

export interface FileOptions extends TypedOptions {
  readonly catalogue?: string;
  readonly prices?: string;
  readonly weather?: string;
  readonly now?: string;
  /** The job's own text where it was read already: standard input can be read once only. */
  readonly text?: string;
}

export interface Loaded {
  /** What looks odd but stops nothing, in words. */
  readonly warnings: readonly string[];
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly priceBook?: PriceBook;
  readonly weather?: WeatherFile;
}

function read<T>(file: string, result: Result<T>): T {
  if (!result.ok) throw badInput(file, result.issues);
  return result.value;
}

const refuseIssues = (file: string, issues: readonly Issue[]): void => {
  if (issues.length > 0) throw badInput(file, issues);
};

const DAY = 86_400_000;
/** Days of a typical year kept before and after the moment planned for: the slab's past, and cars on the last coat. */
const BEFORE = 11 * DAY;
const AFTER = 8 * DAY;

/** A weather file, or a typical year (EPW) around the moment planned for, told by how it begins. */
function weatherIn(file: string, text: string, job: Job, now: string): WeatherFile {
  if (!/^\s*LOCATION,/i.test(text)) return read(file, weatherFromText(text));
  const at = Date.parse(now);
  const { series, issues, city } = climate.weatherScience.readEpw(text, file, Number(now.slice(0, 4)));
  if (!series) throw badInput(file, issues);
  const name = city ? { name: city } : {};
  return read(
    file,
    climate.weatherScience.endOf(series) < at + DAY
      ? { ok: false, issues: [{ code: 'weather-ends-early', path: ['weather'], value: now, names: { needed: now } }] }
      : weatherFileOf(series, { source: file, zone: job.place.zone, from: at - BEFORE, to: at + AFTER, ...name }),
  );
}

/** Reads a job with its catalogue and, when they are there, its price book and weather; checks each before anything is planned. */
export function load(path: string, options: FileOptions, now: string): Loaded {
  const { text, folder } =
    options.text === undefined ? readInput(path, 'job.json') : { text: options.text, folder: process.cwd() };
  const whole = readJson(text);
  // what the app hands on holds all of it; a file named beside it is taken instead
  const shared = whole.ok ? sharedParts(path, whole.value) : undefined;
  const document = withReading(shared ? { ok: true, value: shared.job } : whole, options, now);
  const job = read(path, document.ok ? jobFrom(document.value) : document);
  const beside = (name: string, named: string | undefined) =>
    shared && named === undefined ? undefined : readBeside(folder, name, named);
  const catalogueText = beside('catalogue.json', options.catalogue);
  const catalogue = catalogueText ? read(catalogueText.file, catalogueFromText(catalogueText.text)) : shared?.catalogue;
  if (!catalogue) {
    throw new BadInput([
      `${path}: no catalogue.json lies beside the job. Put one there or name it with --catalogue FILE; jobs/garage/catalogue.json is one to start from.`,
    ]);
  }
  refuseIssues(catalogueText?.file ?? path, checkCatalogue(catalogue));
  const found = checkJob(job, catalogue, now);
  refuseIssues(
    path,
    found.filter(({ code }) => !WARNINGS.has(code)),
  );
  const warnings = badInput(
    path,
    found.filter(({ code }) => WARNINGS.has(code)),
  ).lines;
  const prices = beside('price-book.json', options.prices);
  const priceBook = prices ? read(prices.file, priceBookFromText(prices.text)) : shared?.priceBook;
  const typed = typedWeatherOf(options, job, now);
  if (typed && options.weather !== undefined) {
    throw new BadInput([`--weather ${options.weather} and a typed day name two weathers. Leave one of them out.`]);
  }
  const file = typed ? undefined : beside('weather.json', options.weather);
  const weather = file ? weatherIn(file.file, file.text, job, now) : (typed ?? shared?.weather);
  return {
    warnings,
    job,
    catalogue,
    ...(priceBook ? { priceBook } : {}),
    ...(weather ? { weather } : {}),
  };
}
