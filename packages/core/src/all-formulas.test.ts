import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ALL_FORMULAS } from './all-formulas.ts';
import { SOURCES } from './data/sources.ts';

const nomenclature = readFileSync(new URL('../../../docs/nomenclature.md', import.meta.url), 'utf8');
const named = new Set([...nomenclature.matchAll(/^\| `([^`]+)` \|/gm)].map((match) => match[1]));

describe('every formula of the laws and the steps', () => {
  test('cites a source of the bibliography', () => {
    const without = [...ALL_FORMULAS.values()].filter((f) => !SOURCES.has(f.source)).map((f) => `${f.id}: ${f.source}`);
    expect(without).toEqual([]);
  });

  test('has its input names in docs/nomenclature.md', () => {
    const missing = [...ALL_FORMULAS.values()].flatMap((f) =>
      Object.keys(f.takes)
        .filter((name) => !named.has(name))
        .map((name) => `${f.id}: ${name}`),
    );
    expect(missing).toEqual([]);
  });
});
