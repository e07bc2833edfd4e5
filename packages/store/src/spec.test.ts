import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { acceptanceCases } from './acceptance/index.ts';

const source = dirname(fileURLToPath(import.meta.url));

function rulesOfSpec(): string[] {
  const text = readFileSync(join(source, '..', 'SPEC.md'), 'utf8');
  return [...text.matchAll(/^- \*\*([A-Z]\d+)\*\*/gm)].map(([, rule = '']) => rule);
}

/** Rules quoted at the beginning of a test's name, and those of the acceptance suite. */
function rulesOfTests(): Set<string> {
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' });
  const texts = files
    .filter((name) => /\.(test|prop)\.ts$/.test(name))
    .map((name) => readFileSync(join(source, name), 'utf8'));
  const quoted = texts.flatMap((text) => [...text.matchAll(/['"]([A-Z]\d+): /g)].map(([, rule = '']) => rule));
  return new Set([...quoted, ...acceptanceCases.map(({ rule }) => rule)]);
}

test('every rule of SPEC.md is put to the test, and every rule a test quotes is in SPEC.md', () => {
  expect([...rulesOfTests()].sort()).toEqual(rulesOfSpec().sort());
});

test('no rule number is used twice', () => {
  const rules = rulesOfSpec();
  expect(new Set(rules).size).toBe(rules.length);
});
