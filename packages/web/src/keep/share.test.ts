import type { CatalogueFile, JobFile, PriceBookFile } from '@slabwright/core';
import { shareFromText } from '@slabwright/core';
import type { Json } from '@slabwright/store';
import { openMemoryStore } from '@slabwright/store/memory';
import { describe, expect, test } from 'vitest';
import catalogueFile from '../../../../jobs/garage/catalogue.json' with { type: 'json' };
import jobFile from '../../../../jobs/garage/job.json' with { type: 'json' };
import priceFile from '../../../../jobs/garage/price-book.json' with { type: 'json' };
import weatherFile from '../../../../jobs/garage/weather.json' with { type: 'json' };
import type { JobDocument } from './documents.ts';
import { type ShareBody, sameFile, shareOf, takeShare } from './share.ts';

const job = jobFile as unknown as JobFile;
const catalogue = catalogueFile as unknown as CatalogueFile;
const prices = priceFile as unknown as PriceBookFile;
const weather = weatherFile as unknown as Json;
const document: JobDocument = { job, catalogue: 'here', asOf: '2026-05-12T18:00:00-06:00' };

/** The way over a file and back. */
function sent(share: ShareBody): ShareBody {
  const text = JSON.stringify(share, null, 2);
  expect(shareFromText(text).ok).toBe(true);
  return JSON.parse(text) as ShareBody;
}

const bodyOf = async (store: Awaited<ReturnType<typeof openMemoryStore>>, kind: string, id = '') =>
  (await store.get(kind, id))?.body as unknown;

describe('a job shared as one file', () => {
  test('comes out on another device as it went in, with the moment it is planned as of', async () => {
    const store = await openMemoryStore();
    const taken = await takeShare(store, sent(shareOf(document, catalogue, weather, prices)));
    const found = (await bodyOf(store, 'job', taken.job)) as JobDocument;
    expect(found.job).toEqual(job);
    expect(found.asOf).toBe(document.asOf);
    expect(await bodyOf(store, 'catalogue', found.catalogue)).toEqual(catalogue);
    expect(await bodyOf(store, 'weather', found.weather)).toEqual(weather);
    expect(await bodyOf(store, 'price-book', found.priceBook)).toEqual(prices);
  });

  test('holds no price unless asked, and a crew copy coming back keeps the prices of the office', async () => {
    const crew = shareOf(document, catalogue, weather, null);
    expect(JSON.stringify(crew)).not.toContain('price-book');
    const store = await openMemoryStore();
    await takeShare(store, sent(shareOf(document, catalogue, weather, prices)));
    const changed = { ...crew, job: { ...job, notes: 'door stuck' } };
    const taken = await takeShare(store, sent(changed));
    const found = (await bodyOf(store, 'job', taken.job)) as JobDocument;
    expect(taken).toMatchObject({ before: true, same: false });
    expect(found.job.notes).toBe('door stuck');
    expect(found.priceBook).toBe(prices.id);
  });

  test('the same file twice adds nothing', async () => {
    const store = await openMemoryStore();
    const share = sent(shareOf(document, catalogue, weather, null));
    await takeShare(store, share);
    const before = await store.exportAll();
    expect(await takeShare(store, share)).toMatchObject({ same: true });
    expect(await store.exportAll()).toEqual(before);
  });

  test('another catalogue of the same name changes none that other jobs here are planned with', async () => {
    const store = await openMemoryStore();
    const own = { ...catalogue, notes: 'ours' } as unknown as CatalogueFile;
    const draft = {
      kind: 'catalogue',
      id: catalogue.id,
      title: catalogue.id,
      searchText: '',
      updatedAt: '2026-01-01T00:00:00.000Z',
    };
    await store.put({ ...draft, body: own as unknown as Json }, 0);
    const taken = await takeShare(store, sent(shareOf(document, catalogue, null, null)));
    const found = (await bodyOf(store, 'job', taken.job)) as JobDocument;
    expect(found.catalogue).not.toBe(catalogue.id);
    expect(await bodyOf(store, 'catalogue', catalogue.id)).toEqual(own);
    expect(await bodyOf(store, 'catalogue', found.catalogue)).toEqual(catalogue);
  });

  test('a removed job that comes again is there again', async () => {
    const store = await openMemoryStore();
    const share = sent(shareOf(document, catalogue, null, null));
    const { job: id } = await takeShare(store, share);
    await store.remove('job', id, 1, '2026-06-01T00:00:00.000Z');
    await takeShare(store, share);
    expect((await store.get('job', id))?.removed).toBe(false);
  });
});

test('files are the same whatever the order of their fields', () => {
  expect(sameFile({ a: 1, b: [1, { c: null }] }, { b: [1, { c: null }], a: 1 })).toBe(true);
  expect(sameFile({ a: 1 }, { a: 1, b: undefined })).toBe(false);
  expect(sameFile([1, 2], [2, 1])).toBe(false);
  expect(sameFile({ 0: 1 }, [1])).toBe(false);
});
