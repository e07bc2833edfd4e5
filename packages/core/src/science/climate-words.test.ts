import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MESSAGES } from '../words/messages.ts';

/** Codes that weather, slab, cure and windows may say, as they stand in the sources. */
const codes = ['weather', 'heat', 'cure', 'sun', 'windows'].flatMap((family) => {
  const folder = new URL(`./${family}/`, import.meta.url);
  return readdirSync(folder)
    .filter((name) => name.endsWith('.ts') && !/\.(test|prop)\.ts$/.test(name))
    .flatMap((name) => [
      ...readFileSync(new URL(name, folder), 'utf8').matchAll(/'((?:weather|slab|cure|window|lift)-[a-z-]+)'/g),
    ])
    .map((match) => match[1] as string);
});

test('every code has words', () => {
  expect(codes.length).toBeGreaterThan(60);
  expect([...new Set(codes)].filter((code) => !MESSAGES.en.has(code)).sort()).toEqual([]);
});
