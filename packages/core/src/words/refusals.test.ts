import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MESSAGES } from './messages.ts';

const core = new URL('../', import.meta.url);
const sources = readdirSync(core, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !/\.(test|prop|test-d)\.ts$/.test(name))
  .map((name) => readFileSync(new URL(name, core), 'utf8'));

/** Codes that a formula or the kernel refuses with, and those a taped room can be in trouble for. */
const codes = new Set(
  sources.flatMap((text) => [
    ...[...text.matchAll(/new Refuse\(\s*'([a-z0-9-]+)'/g)].map((match) => match[1] as string),
    ...[...text.matchAll(/'((?:formula-(?:input|lists|gives)|tape-(?:room|sketch|measure))-[a-z-]+)'/g)].map(
      (match) => match[1] as string,
    ),
  ]),
);

test('every refusal has words', () => {
  expect(codes.size).toBeGreaterThan(40);
  expect([...codes].filter((code) => !MESSAGES.en.has(code)).sort()).toEqual([]);
});
