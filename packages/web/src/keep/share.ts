import type { CatalogueFile, Instant, JobFile, PriceBookFile } from '@slabwright/core';
import type { Change, Json, Store } from '@slabwright/store';
import { catalogueHeading, type JobDocument, jobHeading, priceBookHeading } from './documents.ts';
import { weatherTitle } from './weather.ts';

/** A job handed on as one file: with the catalogue and weather it is planned with, and with prices only where asked. */

export interface ShareBody {
  readonly schema: 'slabwright.share/1';
  readonly asOf?: Instant;
  readonly job: JobFile;
  readonly catalogue: CatalogueFile;
  readonly weather?: Json;
  readonly priceBook?: PriceBookFile;
}

export const shareOf = (
  { job, asOf }: JobDocument,
  catalogue: CatalogueFile,
  weather: Json | null,
  priceBook: PriceBookFile | null,
): ShareBody => ({
  schema: 'slabwright.share/1',
  ...(asOf ? { asOf } : {}),
  job,
  catalogue,
  ...(weather === null ? {} : { weather }),
  ...(priceBook === null ? {} : { priceBook }),
});

/** Whether two files say the same, whatever the order of their fields. */
export function sameFile(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [one, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length && keys.every((key) => key in other && sameFile(one[key], other[key]))
  );
}

interface Placed {
  readonly id: string;
  readonly changes: readonly Change[];
}

const put = (kind: string, id: string, title: string, searchText: string, body: unknown, expected = 0): Change => ({
  do: 'put',
  draft: { kind, id, title, searchText, updatedAt: new Date().toISOString(), body: body as Json },
  expected,
});

const freshId = (kind: string): string => `${kind}-${crypto.randomUUID().slice(0, 8)}`;

/**
 * Where a part of a shared job lies here: the one that says the same if there is one, else a document of its own. What
 * other jobs here are planned with is never changed by a file from elsewhere.
 */
async function placed(
  store: Store,
  kind: string,
  wanted: string,
  title: string,
  searchText: string,
  body: unknown,
): Promise<Placed> {
  const { headings } = await store.list({ kind, limit: 1000 });
  for (const { id } of headings) {
    const found = await store.get(kind, id);
    if (found && sameFile(found.body, body)) return { id, changes: [] };
  }
  const id = (await store.get(kind, wanted)) ? freshId(kind) : wanted;
  return { id, changes: [put(kind, id, title, searchText, body)] };
}

export interface ShareTaken {
  readonly job: string;
  /** A job of this name was here; its older version stays in its history. */
  readonly before: boolean;
  readonly same: boolean;
}

/** Takes in a shared job that was read and found whole: all of it or, when the store refuses, nothing. */
export async function takeShare(store: Store, share: ShareBody): Promise<ShareTaken> {
  const { job, catalogue, weather, priceBook, asOf } = share;
  const known = await store.get('job', job.id);
  const before = known ? (known.body as unknown as JobDocument) : null;
  const goods = await placed(
    store,
    'catalogue',
    catalogue.id,
    catalogueHeading.title(catalogue),
    catalogueHeading.searchText(catalogue),
    catalogue,
  );
  const sky =
    weather === undefined
      ? null
      : await placed(store, 'weather', freshId('weather'), weatherTitle(weather), '', weather);
  const money =
    priceBook === undefined
      ? null
      : await placed(store, 'price-book', priceBook.id, priceBookHeading.title(priceBook), '', priceBook);
  // A copy without prices that comes back keeps the prices this device has for it.
  const prices = money?.id ?? before?.priceBook;
  const document: JobDocument = {
    job,
    catalogue: goods.id,
    ...(prices === undefined ? {} : { priceBook: prices }),
    ...(sky ? { weather: sky.id } : {}),
    ...(asOf === undefined ? {} : { asOf }),
  };
  const same = known !== null && !known.removed && sameFile(before, document);
  const changes = [...goods.changes, ...(sky?.changes ?? []), ...(money?.changes ?? [])];
  if (!same) {
    const [title, searchText] = [jobHeading.title(document), jobHeading.searchText(document)];
    changes.push(put('job', job.id, title, searchText, document, known?.revision ?? 0));
  }
  if (changes.length > 0) await store.transaction(changes);
  return { job: job.id, before: known !== null, same };
}
