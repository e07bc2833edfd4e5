import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { catalogueFromText } from './catalogue.ts';
import { jobFromText } from './job.ts';
import { priceBookFromText } from './price-book.ts';

const golden = (name: string, file: string): string =>
  readFileSync(new URL(`../../../jobs/${name}/${file}`, import.meta.url), 'utf8');

test.each(['garage', 'workshop', 'basement', 'patio'])('the golden files of %s read without an issue', (name) => {
  for (const result of [
    jobFromText(golden(name, 'job.json')),
    catalogueFromText(golden(name, 'catalogue.json')),
    priceBookFromText(golden(name, 'price-book.json')),
  ]) {
    expect(result.ok ? [] : result.issues).toEqual([]);
  }
});
