import { existsSync, readFileSync } from 'node:fs';
import type { CatalogueFile, Instant, JobFile, PriceBookFile } from '@slabwright/core';
import type { Change, Json, Store } from '@slabwright/store';
import {
  catalogueWords,
  type HeadingWords,
  type JobDocument,
  jobWords,
  priceBookWords,
  weatherWords,
} from './job-document.ts';

/** Jobs that come with the program: invented people, whole plans, to look around in. The garage comes last, so that it lists first. */
const PLANNED_AS_OF = {
  patio: '2026-06-12T20:00:00-06:00',
  basement: '2026-06-01T18:00:00-06:00',
  workshop: '2026-10-11T18:00:00+01:00',
  garage: '2026-05-12T18:00:00-06:00',
} as const satisfies Record<string, Instant>;

const JOBS = new URL('../../../jobs/', import.meta.url);

const read = (name: string, file: string): unknown =>
  JSON.parse(readFileSync(new URL(`${name}/${file}`, JOBS), 'utf8'));

function changesOf(name: keyof typeof PLANNED_AS_OF, updatedAt: string): readonly Change[] {
  const id = `example-${name}`;
  const put = (kind: string, words: HeadingWords, body: unknown): Change => ({
    do: 'put',
    draft: { kind, id, updatedAt, ...words, body: body as Json },
    expected: 0,
  });
  // These files are of our own making; the golden jobs' tests check them.
  const catalogue = read(name, 'catalogue.json') as CatalogueFile;
  const priceBook = read(name, 'price-book.json') as PriceBookFile;
  const weather = existsSync(new URL(`${name}/weather.json`, JOBS)) ? read(name, 'weather.json') : null;
  const job = read(name, 'job.json') as JobFile;
  const document: JobDocument = {
    job,
    catalogue: id,
    priceBook: id,
    ...(weather ? { weather: id } : {}),
    asOf: PLANNED_AS_OF[name],
    example: true,
  };
  return [
    put('catalogue', catalogueWords(catalogue), catalogue),
    put('price-book', priceBookWords(priceBook), priceBook),
    ...(weather ? [put('weather', weatherWords(weather as { readonly source: string }), weather)] : []),
    put('job', jobWords(document), document),
  ];
}

/** The same on every device, so that backups of two devices agree on where the demo jobs began. */
const MADE = Date.UTC(2026, 0, 1);

/** Puts the demo jobs into a store that never held any job. Gives their ids. */
export async function addDemoJobs(store: Store): Promise<readonly string[]> {
  const kept = await store.list({ kind: 'job', limit: 1 });
  const removed = await store.list({ kind: 'job', removed: true, limit: 1 });
  if (kept.total + removed.total > 0) return [];
  const names = Object.keys(PLANNED_AS_OF) as (keyof typeof PLANNED_AS_OF)[];
  await store.transaction(names.flatMap((name, index) => changesOf(name, new Date(MADE + index).toISOString())));
  return names.map((name) => `example-${name}`);
}
