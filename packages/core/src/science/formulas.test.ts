import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SOURCES } from '../data/sources.ts';
import { isUnit } from '../kernel/unit.ts';
import { byId, FORMULAS, findFormulas } from './formulas.ts';
import { shapeFormulas } from './shape/index.ts';

const root = new URL('../../../../', import.meta.url);
const nomenclature = readFileSync(new URL('docs/nomenclature.md', root), 'utf8');
/** Names stand in the first column of the tables, between backquotes. */
const named = new Set([...nomenclature.matchAll(/^\| `([^`]+)` \|/gm)].map((match) => match[1]));
const rows = readdirSync(new URL('reference/rows/', root), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.csv'))
  .map((name) => readFileSync(new URL(`reference/rows/${name}`, root), 'utf8'))
  .join('\n');
const hasRow = (id: string): boolean => rows.includes(`\n${id},`);

describe.each([...FORMULAS.values()].map((f) => [f.id, f] as const))('%s', (_, f) => {
  test('has an id of its family, a source that exists, known units and ranges for known inputs', () => {
    expect(f.id).toMatch(/^[a-z]+(\/[a-z0-9.-]+)+$/);
    expect(SOURCES.has(f.source), `source ${f.source}`).toBe(true);
    for (const unit of [...Object.values(f.takes), f.gives]) {
      const one = unit.replace('[]', '');
      expect(one === '*' || isUnit(one), unit).toBe(true);
    }
    for (const part of [f.holds, f.refuses ?? {}, f.defaults ?? {}, f.inputShows ?? {}]) {
      for (const name of Object.keys(part)) expect(Object.keys(f.takes)).toContain(name);
    }
  });

  test('has every input name in the nomenclature', () => {
    for (const name of Object.keys(f.takes)) expect(named, name).toContain(name);
  });

  test('has an outside row or says why there is none', () => {
    // The statistical reference sets are data files of their own, not rows.
    const inDataSet = f.source.startsWith('nist-strd-');
    expect(inDataSet || hasRow(f.id) || (f.noOutsideRow ?? '').length >= 10).toBe(true);
  });
});

describe('the registry', () => {
  test('two formulas under one id are a mistake', () => {
    expect(() => byId([...shapeFormulas, ...shapeFormulas.slice(0, 1)])).toThrow(/two formulas/);
  });

  test('finds by every word of the question, ids first', () => {
    expect(
      findFormulas('cove')
        .map((f) => f.id)
        .slice(0, 2),
    ).toEqual(['shape/cove', 'shape/cove-face']);
    expect(findFormulas('Dew Point')[0]?.id).toMatch(/^air\/dew/);
    expect(findFormulas('slabLength').map((f) => f.id)).toContain('movement/joint-opening');
    expect(findFormulas('no such thing')).toEqual([]);
    expect(findFormulas('').length).toBe(FORMULAS.size);
  });
});
