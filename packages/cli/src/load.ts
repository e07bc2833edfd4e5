import {
  type Catalogue,
  catalogueFromText,
  checkCatalogue,
  checkJob,
  type Issue,
  type Job,
  jobFrom,
  type PriceBook,
  priceBookFromText,
  type Result,
  readJson,
  WARNINGS,
  type WeatherFile,
  weatherFromText,
} from '@slabwright/core';
import { badInput, readBeside, readInput } from './read-file.ts';
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

/** Reads a job with its catalogue and, when they are there, its price book and weather; checks each before anything is planned. */
export function load(path: string, options: FileOptions, now: string): Loaded {
  const { text, folder } =
    options.text === undefined ? readInput(path, 'job.json') : { text: options.text, folder: process.cwd() };
  const document = withReading(readJson(text), options, now);
  const job = read(path, document.ok ? jobFrom(document.value) : document);
  const catalogueText = readBeside(folder, 'catalogue.json', options.catalogue);
  if (!catalogueText) {
    throw new BadInput([
      `${path}: no catalogue.json lies beside the job. Put one there or name it with --catalogue FILE; jobs/garage/catalogue.json is one to start from.`,
    ]);
  }
  const catalogue = read(catalogueText.file, catalogueFromText(catalogueText.text));
  refuseIssues(catalogueText.file, checkCatalogue(catalogue));
  const found = checkJob(job, catalogue, now);
  refuseIssues(
    path,
    found.filter(({ code }) => !WARNINGS.has(code)),
  );
  const warnings = badInput(
    path,
    found.filter(({ code }) => WARNINGS.has(code)),
  ).lines;
  const prices = readBeside(folder, 'price-book.json', options.prices);
  const typed = typedWeatherOf(options, job, now);
  if (typed && options.weather !== undefined) {
    throw new BadInput([`--weather ${options.weather} and a typed day name two weathers. Leave one of them out.`]);
  }
  const file = typed ? undefined : readBeside(folder, 'weather.json', options.weather);
  const weather = file ? read(file.file, weatherFromText(file.text)) : typed;
  return {
    warnings,
    job,
    catalogue,
    ...(prices ? { priceBook: read(prices.file, priceBookFromText(prices.text)) } : {}),
    ...(weather ? { weather } : {}),
  };
}
