import type { CatalogueFile } from '@slabwright/core';
import type { Heading, Json, Store } from '@slabwright/store';
import { catalogueHeading } from './documents.ts';

/** Catalogues and price books of this device: which there are, and how a new one begins. */

export interface Goods {
  readonly catalogues: readonly Heading[];
  readonly priceBooks: readonly Heading[];
}

export async function goodsHere(store: Store): Promise<Goods> {
  const [catalogues, priceBooks] = await Promise.all([
    store.list({ kind: 'catalogue', limit: 500 }),
    store.list({ kind: 'price-book', limit: 500 }),
  ]);
  return { catalogues: catalogues.headings, priceBooks: priceBooks.headings };
}

/** An id out of what somebody calls it, such as `winter-stock`; another number where it is taken. */
export async function freeId(store: Store, kind: string, name: string): Promise<string> {
  const stem =
    name
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 32) || kind;
  let id = stem;
  for (let n = 2; await store.get(kind, id); n += 1) id = `${stem}-${n}`;
  return id;
}

const keep = (store: Store, kind: string, id: string, searchText: string, body: unknown): Promise<unknown> =>
  store.put({ kind, id, title: id, searchText, updatedAt: new Date().toISOString(), body: body as Json }, 0);

/** A catalogue with nothing in it, or with what another one holds. */
export async function newCatalogue(store: Store, name: string, like: CatalogueFile | null): Promise<string> {
  const id = await freeId(store, 'catalogue', name);
  const body: CatalogueFile = like
    ? { ...structuredClone(like), id }
    : { schema: 'slabwright.catalogue/1', id, products: [], systems: [] };
  await keep(store, 'catalogue', id, catalogueHeading.searchText(body), body);
  return id;
}

/** What a price book cannot be without; every other line is added in its form. */
export interface FirstPrices {
  readonly currency: string;
  readonly wage: string;
  readonly overhead: string;
  readonly profit: string;
}

const share = (typed: string): string => (/[%\s]/.test(typed.trim()) ? typed.trim() : `${typed.trim()} %`);

export const firstPriceBook = (id: string, { currency, wage, overhead, profit }: FirstPrices): Json => ({
  schema: 'slabwright.price-book/1',
  id,
  currency: currency.trim().toUpperCase(),
  packs: [],
  wage: wage.trim(),
  overhead: share(overhead),
  profit: share(profit),
});

export async function keepPriceBook(store: Store, id: string, body: Json): Promise<void> {
  await keep(store, 'price-book', id, '', body);
}
