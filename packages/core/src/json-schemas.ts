import { z } from 'zod';
import { CATALOGUE_SCHEMA, CATALOGUE_VERSION, catalogue } from './catalogue.ts';
import { JOB_SCHEMA, JOB_VERSION, job } from './job.ts';
import { LOG_SCHEMA, LOG_VERSION, log } from './log.ts';
import { PRICE_BOOK_SCHEMA, PRICE_BOOK_VERSION, priceBook } from './price-book.ts';
import { SHARE_SCHEMA, SHARE_VERSION, share } from './share.ts';
import { WEATHER_SCHEMA, WEATHER_VERSION, weather } from './weather.ts';

const FORMATS = [
  { name: JOB_SCHEMA, version: JOB_VERSION, schema: job, title: 'A job: survey, options, choices. No prices.' },
  {
    name: CATALOGUE_SCHEMA,
    version: CATALOGUE_VERSION,
    schema: catalogue,
    title: 'Products as their data sheets state them, systems, tools, rates.',
  },
  { name: PRICE_BOOK_SCHEMA, version: PRICE_BOOK_VERSION, schema: priceBook, title: 'The money of a firm.' },
  { name: WEATHER_SCHEMA, version: WEATHER_VERSION, schema: weather, title: 'Hourly weather for one place.' },
  { name: LOG_SCHEMA, version: LOG_VERSION, schema: log, title: 'Readings and acts of the day, appended.' },
  {
    name: SHARE_SCHEMA,
    version: SHARE_VERSION,
    schema: share,
    title: 'A job with its catalogue and weather, handed on as one file. Money only where asked.',
  },
] as const;

/** The published JSON Schemas (draft 2020-12) of the file formats, by file name. What a file may hold, before its sense is checked. */
export function jsonSchemas(): ReadonlyMap<string, object> {
  return new Map(
    FORMATS.map(({ name, version, schema, title }) => {
      const made = z.toJSONSchema(schema(), { io: 'input', target: 'draft-2020-12' });
      return [`${name}-${version}.schema.json`, { $id: `urn:${name.replaceAll('.', ':')}:${version}`, title, ...made }];
    }),
  );
}
