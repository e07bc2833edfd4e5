import { ALL_FORMULAS, SOURCES } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { judge } from './judge.ts';
import { nistRows } from './nist.ts';
import type { Row } from './rows.ts';
import { tally } from './table.ts';

const book = { formulas: ALL_FORMULAS, sources: SOURCES };
const row: Row = {
  place: 'a.csv:3',
  source: 'price-from-margin',
  formula: 'price/markup-from-margin',
  locator: '20 %',
  mark: 'READ',
  inputs: 'margin=20 %',
  published: [25],
  unit: '%',
  digits: 2,
  tolerance: 0,
  why: 'exact',
};

describe('a row', () => {
  test('agrees within its tolerance, and fails beyond it', () => {
    expect(judge(row, book).verdict).toBe('agrees');
    expect(judge({ ...row, published: [25.001] }, book).verdict).toBe('FAILS');
    expect(judge({ ...row, published: [25.001], tolerance: 0.001 }, book)).toMatchObject({ verdict: 'agrees' });
  });

  test('of a source known to be wrong is kept; if it agrees after all, the mark must go', () => {
    expect(judge({ ...row, published: [24], why: 'known: a misprint' }, book).verdict).toBe('known');
    expect(judge({ ...row, why: 'known: a misprint' }, book)).toMatchObject({ verdict: 'FAILS' });
  });

  test('that cannot be run fails with its place and the reason', () => {
    const failing: readonly [Partial<Row>, RegExp][] = [
      [{ formula: 'price/nothing' }, /a\.csv:3: no such formula/],
      [{ source: 'nobody' }, /no source nobody/],
      [{ source: 'own-arithmetic' }, /own-arithmetic itself was not read/],
      [{ inputs: 'share=20 %' }, /takes no share/],
      [{ inputs: 'margin=20 ft' }, /margin: 20 ft/],
      [{ inputs: 'margin=2' }, /refused/],
      [{ published: [1, 2] }, /gives 1 values/],
      [{ formula: 'shape/triangle', inputs: 'sideA=1 m;sideB=1 m' }, /needs sideC/],
      [{ formula: 'shape/triangle', inputs: 'sideA=1,2 m;sideB=1 m;sideC=1 m' }, /takes one value/],
    ];
    for (const [part, message] of failing) {
      const outcome = judge({ ...row, ...part }, book);
      expect(outcome.verdict).toBe('FAILS');
      expect(outcome.note).toMatch(message);
    }
  });

  test('of lists is judged by its worst value, in the unit of the row', () => {
    const walls: Row = {
      ...row,
      formula: 'shape/walls',
      source: 'plane-geometry',
      mark: 'CALC',
      inputs: 'cornersX=0,3,0 ft;cornersY=0,0,4 ft',
      published: [3, 5, 4.5],
      unit: 'ft',
    };
    expect(judge(walls, book).difference).toBeCloseTo(0.5, 9);
    expect(judge({ ...walls, published: [3, 5, 4] }, book).verdict).toBe('agrees');
  });
});

test('the tally keeps marks apart and counts a failing row', () => {
  const outcomes = [
    row,
    { ...row, mark: 'MEM' } as const,
    { ...row, published: [1] },
    ...nistRows(new URL('../nist/', import.meta.url)).slice(0, 2),
  ].map((one) => judge(one, book));
  expect(tally(outcomes)).toMatchObject({
    agreed: { READ: 3, MEM: 1, CALC: 0 },
    sources: 2,
    statistics: 2,
    failed: 1,
    known: 0,
  });
});
