import { expect, test } from 'vitest';
import priceJson from '../../../jobs/garage/price-book.json' with { type: 'json' };
import { pathText } from './kernel/issue.ts';
import { type PriceBookFile, priceBookFrom } from './price-book.ts';
import { voice } from './words/say.ts';

/** What is said of the invented price book after one change. */
function said(change: (book: PriceBookFile) => void): readonly string[] {
  const book = structuredClone(priceJson) as PriceBookFile;
  change(book);
  const read = priceBookFrom(book);
  const speaker = voice('en', { locale: 'en-US', units: 'imperial' }, {});
  return read.ok ? [] : read.issues.map((issue) => `${pathText(issue.path)}: ${speaker.sayIssue(issue)}`);
}

test('a price book says every price once', () => {
  expect(said(() => undefined)).toEqual([]);
  const twice = said((book) => void book.packs.push({ product: 'base-b', pack: 'kit-2gal', price: '999.00' }));
  expect(twice).toHaveLength(1);
  expect(twice[0]).toMatch(/^packs\[\d+\]: packs\[\d+\] is "base-b, kit-2gal": packs\[0\] of this price book says/);
});

test.each(['media', 'lines', 'changes', 'places'] as const)('%s too, each by what it is looked up by', (list) => {
  const twice = said((book) => {
    const entries = book[list] as unknown[];
    entries.push(structuredClone(entries[0]));
  });
  expect(twice).toHaveLength(1);
  expect(twice[0]).toMatch(new RegExp(`^${list}\\[\\d+\\]: .*${list}\\[0\\] of this price book says that already`));
});
