import type { JobFile } from '@slabwright/core';
import type { Json } from '@slabwright/store';
import { openMemoryStore } from '@slabwright/store/memory';
import { expect, test } from 'vitest';
import { catalogueHeading, type JobDocument, jobHeading } from '../keep/documents.ts';
import { firstPriceBook, keepPriceBook, newCatalogue } from '../keep/goods.ts';
import { LiveDocument } from '../keep/live-document.ts';
import { followGoods, type OpenGoods } from './follow-goods.ts';

const quiet = (): Promise<void> => new Promise((later) => setTimeout(later, 20));

async function openedJob() {
  const store = await openMemoryStore();
  await newCatalogue(store, 'one', null);
  await newCatalogue(store, 'two', null);
  await keepPriceBook(
    store,
    'p',
    firstPriceBook('p', { currency: 'USD', wage: '38.00', overhead: '25', profit: '20' }),
  );
  const job = { id: 'j', title: 'j', areas: [] } as unknown as JobFile;
  const body: JobDocument = { job, catalogue: 'one' };
  const stored = await store.put(
    {
      kind: 'job',
      id: 'j',
      title: 'j',
      searchText: '',
      updatedAt: '2026-01-01T00:00:00.000Z',
      body: body as unknown as Json,
    },
    0,
  );
  const live = new LiveDocument<JobDocument>(store, stored, jobHeading);
  const catalogue = await store.get('catalogue', 'one');
  if (!catalogue) throw new Error('no catalogue');
  const heard: OpenGoods[] = [];
  const opened: OpenGoods = { catalogue: new LiveDocument(store, catalogue, catalogueHeading), priceBook: null };
  followGoods(store, live, opened, (next) => heard.push(next));
  const set = (edit: Partial<JobDocument>): void =>
    live.change((draft) => {
      Object.assign(draft, edit);
    });
  return { live, heard, set };
}

test('another catalogue is opened, and undo brings the one before back', async () => {
  const { live, heard, set } = await openedJob();
  set({ catalogue: 'two' });
  await quiet();
  live.undo();
  await quiet();
  expect(heard.map(({ catalogue }) => catalogue.id)).toEqual(['two', 'one']);
});

test('a price book is opened and put away again', async () => {
  const { live, heard, set } = await openedJob();
  set({ priceBook: 'p' });
  await quiet();
  live.undo();
  await quiet();
  expect(heard.map(({ priceBook }) => priceBook?.id ?? null)).toEqual(['p', null]);
});

test('files that are not here change nothing', async () => {
  const { heard, set } = await openedJob();
  set({ catalogue: 'gone' });
  await quiet();
  set({ catalogue: 'one', priceBook: 'gone' });
  await quiet();
  expect(heard).toEqual([]);
});
