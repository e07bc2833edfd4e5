import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { load } from './load.ts';
import { BadInput } from './terminal.ts';

const garage = new URL('../../../jobs/garage/', import.meta.url).pathname;
const NOW = '2026-05-12T18:00:00-06:00';
const part = (name: string): unknown => JSON.parse(readFileSync(join(garage, `${name}.json`), 'utf8'));

function shareFile(more: object): string {
  const file = join(mkdtempSync(join(tmpdir(), 'slabwright-share-')), 'garage.share.json');
  const share = {
    schema: 'slabwright.share/1',
    job: part('job'),
    catalogue: part('catalogue'),
    weather: part('weather'),
    ...more,
  };
  writeFileSync(file, JSON.stringify(share));
  return file;
}

test('a job shared by the app is read like the folder it came from', () => {
  const shared = load(shareFile({ priceBook: part('price-book') }), {}, NOW);
  expect(shared).toEqual(load(garage, {}, NOW));
});

test('a crew copy has no prices; a price book named beside it is taken', () => {
  const file = shareFile({});
  expect(load(file, {}, NOW).priceBook).toBeUndefined();
  expect(load(file, { prices: join(garage, 'price-book.json') }, NOW).priceBook?.currency).toBe('USD');
});

test('a part that is wrong is named', () => {
  expect(() => load(shareFile({ weather: { schema: 'slabwright.weather/1' } }), {}, NOW)).toThrow(BadInput);
  expect(() => load(shareFile({ weather: { schema: 'slabwright.weather/1' } }), {}, NOW)).toThrow(/weather\.rows/);
});
