import { ALL_FORMULAS, SOURCES } from '@slabwright/core';
import { judge, type Outcome } from './judge.ts';
import { nistRows } from './nist.ts';
import { readRows } from './rows.ts';

const here = (folder: string): URL => new URL(`../${folder}/`, import.meta.url);

/** Every published value against ours: the rows first, then the statistical reference sets. */
export function compareAll(): readonly Outcome[] {
  const book = { formulas: ALL_FORMULAS, sources: SOURCES };
  return [...readRows(here('rows')), ...nistRows(here('nist'))].map((row) => judge(row, book));
}
