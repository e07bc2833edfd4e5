import { readFileSync } from 'node:fs';
import { ALL_FORMULAS } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { compareAll } from './compare.ts';
import { dataOf, nistRows } from './nist.ts';
import { rowsOf } from './rows.ts';
import { tally, withoutOutsideRow } from './table.ts';

const outcomes = compareAll();
const found = tally(outcomes);
const nist = new URL('../nist/', import.meta.url);

describe('published values', () => {
  test('every row agrees, or its source is known to be wrong', () => {
    const failing = outcomes.filter((o) => o.verdict === 'FAILS');
    expect(failing.map((o) => `${o.row.place} ${o.row.formula} ${o.row.published} ours ${o.ours} ${o.note}`)).toEqual(
      [],
    );
  });

  test('at least 90 were read, from at least 20 sources, and at most 32 of them are statistics', () => {
    expect(found.agreed.READ).toBeGreaterThanOrEqual(90);
    expect(found.sources).toBeGreaterThanOrEqual(20);
    expect(found.statistics).toBeLessThanOrEqual(32);
  });

  test('a formula without one says why', () => {
    expect(withoutOutsideRow(outcomes, ALL_FORMULAS).filter(({ reason }) => reason.length < 10)).toEqual([]);
  });
});

describe('the checks can fail', () => {
  test('a one-pass sum of squares does not reach the certified deviations', () => {
    const onePass = (values: readonly number[]): number => {
      const sum = values.reduce((a, b) => a + b, 0);
      const squares = values.reduce((a, b) => a + b * b, 0);
      return Math.sqrt((squares - (sum * sum) / values.length) / (values.length - 1));
    };
    const missed = nistRows(nist)
      .filter((row) => row.formula === 'statistics/standard-deviation')
      .filter((row) => {
        const values = dataOf(readFileSync(new URL(row.place, nist), 'utf8')).map(([y]) => y as number);
        return !(Math.abs(onePass(values) - (row.published[0] as number)) <= row.tolerance);
      })
      .map((row) => row.place);
    expect(missed).toEqual(expect.arrayContaining(['NumAcc3.dat', 'NumAcc4.dat', 'Michelso.dat']));
  });

  test('rows out of form are named by file and line', () => {
    const head = '# source: x\nformula,locator,mark,inputs,published,unit,digits,tolerance,why\n';
    expect(() => rowsOf('a.csv', 'formula\n')).toThrow(/a\.csv/);
    expect(() => rowsOf('a.csv', `${head}f,l,SEEN,x=1,2,,1,0,w\n`)).toThrow(/a\.csv:3: mark/);
    expect(() => rowsOf('a.csv', `${head}f,l,READ,x=1,two,,1,0,w\n`)).toThrow(/published is no number/);
    expect(() => rowsOf('a.csv', `${head}f,l,READ,x=1,2,,1,0,\n`)).toThrow(/why is empty/);
    expect(rowsOf('a.csv', `${head}f,l,READ,"x=1,2 m","1,2",m,1,0,w\n`)[0]?.published).toEqual([1, 2]);
  });
});
