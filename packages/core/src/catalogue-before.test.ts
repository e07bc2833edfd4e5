import { expect, test } from 'vitest';
import garage from '../../../jobs/garage/catalogue.json' with { type: 'json' };
import { catalogueFrom } from './catalogue.ts';
import { broughtUp } from './catalogue-before.ts';

type File = { products: Record<string, unknown>[] };

function fileWith(crackBridging: unknown, properties?: unknown): File {
  const file = structuredClone(garage) as unknown as File;
  const [first] = file.products;
  Object.assign(first ?? {}, { crackBridging }, properties === undefined ? {} : { properties });
  return file;
}

const firstOf = (file: unknown): Record<string, unknown> => (file as File).products[0] ?? {};

test('a class and a width become two claims with their method and temperature, after those that stand there', () => {
  const slip = { what: 'slip', value: '48' };
  const up = firstOf(broughtUp(fileWith({ class: 'B2', width: '0.4 mm', at: '-10 °C' }, [slip])));
  expect(up).not.toHaveProperty('crackBridging');
  expect(up.properties).toEqual([
    slip,
    { what: 'crack bridging', method: 'EN 1062-7 B', value: 'B2', conditions: { temperature: '-10 °C' } },
    { what: 'crack bridging', method: 'crack width shown', value: '0.4 mm', conditions: { temperature: '-10 °C' } },
  ]);
});

test('an older file and the same brought up are read as one catalogue', () => {
  const old = fileWith({ class: 'A3', width: '0.4 mm', at: '14 °F' });
  const [before, after] = [catalogueFrom(old), catalogueFrom(broughtUp(old))];
  expect(before.ok).toBe(true);
  expect(after).toEqual(before);
  expect(broughtUp(broughtUp(old))).toEqual(broughtUp(old));
});

test('what is not understood stays and is named where it stands; a file without any is the same file', () => {
  const wrong = fileWith({ at: '-10 °C' });
  expect(broughtUp(wrong)).toBe(wrong);
  const read = catalogueFrom(broughtUp(wrong));
  expect(read.ok ? [] : read.issues.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual([
    'catalogue-bridging-states-nothing products.0.crackBridging',
  ]);
  const beside = fileWith({ class: 'B2', at: '-10 °C' }, 'none');
  expect(broughtUp(beside)).toBe(beside);
  for (const other of [garage, null, [], 'text', { products: 3 }, { products: [null, 7] }])
    expect(broughtUp(other)).toBe(other);
});
