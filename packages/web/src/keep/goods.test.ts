import { catalogueFrom, priceBookFrom } from '@slabwright/core';
import { openMemoryStore } from '@slabwright/store/memory';
import { expect, test } from 'vitest';
import { firstPriceBook, freeId, goodsHere, keepPriceBook, newCatalogue } from './goods.ts';

test('a catalogue made from nothing is one, and a copy of it is another', async () => {
  const store = await openMemoryStore();
  const id = await newCatalogue(store, 'Winter stock', null);
  expect(id).toBe('winter-stock');
  const body = (await store.get('catalogue', id))?.body;
  const read = catalogueFrom(body);
  expect(read.ok).toBe(true);
  expect(await newCatalogue(store, 'Winter stock', body as never)).toBe('winter-stock-2');
  expect((await goodsHere(store)).catalogues.map((one) => one.id).sort()).toEqual(['winter-stock', 'winter-stock-2']);
});

test('a price book made from four answers is one; a bare number is read as a share', async () => {
  const store = await openMemoryStore();
  const id = await freeId(store, 'price-book', 'Ours, 2026');
  const body = firstPriceBook(id, { currency: 'usd', wage: '38.00', overhead: '25', profit: '20 %' });
  const read = priceBookFrom(body);
  expect(read.ok && [read.value.id, read.value.currency]).toEqual(['ours-2026', 'USD']);
  expect(body).toMatchObject({ overhead: '25 %', profit: '20 %' });
  await keepPriceBook(store, id, body);
  expect((await goodsHere(store)).priceBooks).toHaveLength(1);
});

test('a wage that is none is refused by the reader of price books', () => {
  const read = priceBookFrom(firstPriceBook('p', { currency: 'USD', wage: 'much', overhead: '25', profit: '20' }));
  expect(read.ok).toBe(false);
});
