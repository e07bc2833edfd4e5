import { type Catalogue, type PriceBook, SHARE_SCHEMA, shareFrom, type WeatherFile } from '@slabwright/core';
import { badInput } from './read-file.ts';

/** A job as the app hands it on, taken apart: the job still as written, so that a typed reading can be added to it. */
export interface SharedParts {
  readonly job: unknown;
  readonly catalogue: Catalogue;
  readonly weather?: WeatherFile;
  readonly priceBook?: PriceBook;
}

const fieldsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  value !== null && typeof value === 'object' ? (value as Record<string, unknown>) : {};

/**
 * The parts of a shared job; undefined where the file is something else.
 * @throws BadInput when it is a shared job and one of its parts is wrong.
 */
export function sharedParts(file: string, value: unknown): SharedParts | undefined {
  const { schema, job } = fieldsOf(value);
  if (typeof schema !== 'string' || !schema.startsWith(`${SHARE_SCHEMA}/`)) return undefined;
  const read = shareFrom(value);
  if (!read.ok) throw badInput(file, read.issues);
  const { catalogue, weather, priceBook } = read.value;
  return { job, catalogue, ...(weather ? { weather } : {}), ...(priceBook ? { priceBook } : {}) };
}
