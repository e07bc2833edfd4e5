import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CATALOGUE_SECTIONS } from './catalogue-sections.ts';
import { csvOf, fromCsv } from './csv.ts';
import { PRICE_SECTIONS } from './price-sections.ts';

const example = (name: string, job = 'garage'): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../jobs/${job}/${name}.json`, import.meta.url), 'utf8'));

describe('a catalogue as a table', () => {
  test('goes out and comes back whole', () => {
    const catalogue = example('catalogue');
    const empty = { schema: 'slabwright.catalogue/1', id: 'x', products: [], systems: [] };
    const back = fromCsv(csvOf(catalogue), empty, CATALOGUE_SECTIONS);
    expect(back.ok && back.file).toEqual(catalogue);
  });

  test('mixes, the mix of a coat and thinners come back too, numbers as numbers', () => {
    const catalogue = example('catalogue', 'workshop');
    const empty = { schema: 'slabwright.catalogue/1', id: 'x', products: [], systems: [] };
    const text = csvOf(catalogue);
    expect(text).toContain('products,ew,mixes.1.mix.1.parts,4');
    expect(text).toContain('systems,quartz-one-epoxy,layers.3.mix,fast');
    expect(text).toContain('thinners,ut-thinner,packs.1.volume,1 L');
    const back = fromCsv(text, empty, CATALOGUE_SECTIONS);
    expect(back.ok && back.file).toEqual(catalogue);
  });

  test('a price book keeps its amounts as they were typed', () => {
    const prices = example('price-book');
    const back = fromCsv(csvOf(prices), {}, PRICE_SECTIONS);
    expect(back.ok && back.file).toEqual(prices);
  });

  test('a cell that would run in a spreadsheet is guarded, and comes back as it was', () => {
    const hostile = {
      id: 'x',
      products: [
        { id: 'p', name: '=HYPERLINK("http://x")' },
        { id: 'q', name: '-40 °F' },
      ],
      systems: [],
    };
    const text = csvOf(hostile);
    expect(text).not.toMatch(/(^|,|")=/m);
    const back = fromCsv(text, { products: [], systems: [] }, CATALOGUE_SECTIONS);
    expect(back.ok && (back.file as { products: unknown }).products).toEqual(hostile.products);
  });

  test('an item of the same name is replaced, the rest stays', () => {
    const file = {
      media: [
        { id: 'a', name: 'old', bag: '40 lb' },
        { id: 'b', name: 'stays' },
      ],
    };
    const back = fromCsv('list,item,field,value\nmedia,a,id,a\nmedia,a,name,new\n', file, CATALOGUE_SECTIONS);
    expect(back.ok && back.file).toEqual({
      media: [
        { id: 'a', name: 'new' },
        { id: 'b', name: 'stays' },
      ],
    });
  });

  test('another table is refused with its missing columns', () => {
    expect(fromCsv('name,price\nx,1\n', {}, CATALOGUE_SECTIONS)).toMatchObject({ ok: false, why: 'no columns' });
  });
});
