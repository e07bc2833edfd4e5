import type { CatalogueFile, Instant, JobFile, PriceBookFile } from '@slabwright/core';
import type { Change, Json, Store } from '@slabwright/store';
import { catalogueHeading, type JobDocument, jobHeading, priceBookHeading } from './documents.ts';
import { weatherTitle } from './weather.ts';

/** Jobs that come with the program: invented people, finished plans, to look around in. */

/** Moments they are planned as of: the evening before their first day. */
const AS_OF = {
  patio: '2026-06-12T20:00:00-06:00',
  basement: '2026-06-01T18:00:00-06:00',
  workshop: '2026-10-11T18:00:00+01:00',
  garage: '2026-05-12T18:00:00-06:00',
} as const satisfies Record<string, Instant>;

export const EXAMPLES = Object.keys(AS_OF) as readonly (keyof typeof AS_OF)[];

/** The same on every device, so that backups of two devices agree on where the examples began. */
const MADE = Date.UTC(2026, 0, 1);

type Loaded = readonly [job: JobFile, catalogue: CatalogueFile, priceBook: PriceBookFile, weather: Json | null];

const FILES = import.meta.glob<unknown>('../../../../jobs/*/{job,catalogue,price-book,weather}.json', {
  import: 'default',
});

async function load(name: string): Promise<Loaded> {
  const file = (kind: string): Promise<unknown> => {
    const found = FILES[`../../../../jobs/${name}/${kind}.json`];
    if (!found) throw new Error(`the example ${name} has no ${kind}`);
    return found();
  };
  const weather = FILES[`../../../../jobs/${name}/weather.json`];
  const all = [file('job'), file('catalogue'), file('price-book'), weather ? weather() : null];
  return (await Promise.all(all)) as unknown as Loaded;
}

const weatherFileOf = (id: string): string => `../../../../jobs/${id.replace(/^example-/, '')}/weather.json`;

/** Whether an example comes with weather now; one that was put here by an earlier version came without. */
export const hasExampleWeather = (id: string): boolean => FILES[weatherFileOf(id)] !== undefined;

export async function exampleWeather(id: string): Promise<Json | null> {
  const weather = FILES[weatherFileOf(id)];
  return weather ? ((await weather()) as Json) : null;
}

/** The changes that put the examples into a store; those already there are left alone. */
export async function exampleChanges(store: Store): Promise<readonly Change[]> {
  const changes: Change[] = [];
  let at = MADE;
  for (const name of EXAMPLES) {
    const id = `example-${name}`;
    // One after the other, so that the list shows the garage first; counted for those left out too.
    const updatedAt = new Date(at++).toISOString();
    if (await store.get('job', id)) continue;
    const [job, catalogue, priceBook, weather] = await load(name);
    const document: JobDocument = {
      job,
      catalogue: id,
      priceBook: id,
      ...(weather ? { weather: id } : {}),
      asOf: AS_OF[name],
      example: true,
    };
    const put = (kind: string, title: string, searchText: string, body: unknown): Change => ({
      do: 'put',
      draft: { kind, id, updatedAt, title, searchText, body: body as Json },
      expected: 0,
    });
    changes.push(
      put('catalogue', catalogueHeading.title(catalogue), catalogueHeading.searchText(catalogue), catalogue),
      put('price-book', priceBookHeading.title(priceBook), '', priceBook),
      ...(weather ? [put('weather', weatherTitle(weather), '', weather)] : []),
      put('job', jobHeading.title(document), jobHeading.searchText(document), document),
    );
  }
  return changes;
}
