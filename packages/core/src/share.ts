import { z } from 'zod';
import { type Catalogue, catalogue, catalogueFrom } from './catalogue.ts';
import { instant } from './fields.ts';
import { type Job, job, jobFrom } from './job.ts';
import type { Instant } from './kernel/instant.ts';
import type { Issue, Result } from './kernel/issue.ts';
import { type PriceBook, priceBook, priceBookFrom } from './price-book.ts';
import { checkSchema, readJson, validate } from './read.ts';
import { type WeatherFile, weather, weatherFrom } from './weather.ts';

/** A job as one person hands it to another: the job and what it is planned with, in one file. Money only where asked. */

export const SHARE_SCHEMA = 'slabwright.share';
export const SHARE_VERSION = 1;

export const share = () =>
  z.strictObject({
    schema: z.literal(`${SHARE_SCHEMA}/${SHARE_VERSION}`),
    /** Planned as of this moment; left out: as of now. */
    asOf: instant().optional(),
    job: job(),
    catalogue: catalogue(),
    weather: weather().optional(),
    priceBook: priceBook().optional(),
  });

export type ShareFile = z.input<ReturnType<typeof share>>;

export interface Share {
  readonly asOf?: Instant;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly weather?: WeatherFile;
  readonly priceBook?: PriceBook;
}

/** The outside of the file; each part is read by the reader of its own format, so that it is refused in the same words. */
const OUTSIDE = z.strictObject({
  schema: z.literal(`${SHARE_SCHEMA}/${SHARE_VERSION}`),
  asOf: instant().optional(),
  job: z.unknown(),
  catalogue: z.unknown(),
  weather: z.unknown().optional(),
  priceBook: z.unknown().optional(),
});

/** Reads a shared job. A part that is wrong makes the whole file wrong: half a job is not planned. */
export function shareFrom(value: unknown): Result<Share> {
  const head = checkSchema(value, SHARE_SCHEMA, SHARE_VERSION);
  if (head.length > 0) return { ok: false, issues: head };
  const outside = validate(OUTSIDE, value);
  if (!outside.ok) return outside;
  const parts = outside.value;
  const issues: Issue[] = [];
  const part = <T>(name: 'job' | 'catalogue' | 'weather' | 'priceBook', read: (value: unknown) => Result<T>): T => {
    const result = read(parts[name]);
    if (result.ok) return result.value;
    issues.push(...result.issues.map((issue) => ({ ...issue, path: [name, ...issue.path] })));
    return undefined as T;
  };
  const read: Share = {
    ...(parts.asOf === undefined ? {} : { asOf: parts.asOf }),
    job: part('job', jobFrom),
    catalogue: part('catalogue', catalogueFrom),
    ...(parts.weather === undefined ? {} : { weather: part('weather', weatherFrom) }),
    ...(parts.priceBook === undefined ? {} : { priceBook: part('priceBook', priceBookFrom) }),
  };
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: read };
}

export function shareFromText(text: string): Result<Share> {
  const json = readJson(text);
  return json.ok ? shareFrom(json.value) : json;
}
