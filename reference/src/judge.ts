import { type AnyFormula, convert, evaluateAny, type Source, type Unit } from '@slabwright/core';
import { inputsFrom } from './inputs.ts';
import type { Row } from './rows.ts';

export type Judgement = 'agrees' | 'known' | 'FAILS';

export interface Outcome {
  readonly row: Row;
  readonly ours: readonly number[];
  /** The largest difference of a list, in the unit of the row. */
  readonly difference: number;
  readonly digitsAgreed: number;
  readonly verdict: Judgement;
  /** Why there is no number of ours, or why a verdict is what it is. */
  readonly note?: string;
}

export interface Book {
  readonly formulas: ReadonlyMap<string, AnyFormula>;
  readonly sources: ReadonlyMap<string, Source>;
}

/** Conversion of units may cost this much of the published value; no more is given away where a row allows nothing. */
const CONVERSION = 1e-9;

function digitsAgreed(published: number, difference: number): number {
  if (difference === 0) return 15;
  if (published === 0) return 0;
  return Math.max(0, Math.min(15, Math.floor(-Math.log10(difference / Math.abs(published)))));
}

function oursOf(row: Row, f: AnyFormula): readonly number[] {
  const { values, anyUnit } =
    typeof row.inputs === 'string' ? inputsFrom(row.inputs, f) : { values: row.inputs, anyUnit: '1' as Unit };
  const { value } = evaluateAny(f, values);
  const gives = f.gives.replace('[]', '');
  const unit = gives === '*' ? anyUnit : (gives as Unit);
  const list = typeof value === 'number' ? [value] : value;
  return unit === 'money' || row.unit === '' ? list : list.map((one) => convert(one, unit, row.unit));
}

/** Runs one row. A row that cannot be run fails with the reason; nothing is skipped. */
export function judge(row: Row, { formulas, sources }: Book): Outcome {
  const fails = (note: string): Outcome => ({
    row,
    ours: [],
    difference: Number.POSITIVE_INFINITY,
    digitsAgreed: 0,
    verdict: 'FAILS',
    note: `${row.place}: ${note}`,
  });
  const f = formulas.get(row.formula);
  if (!f) return fails('no such formula');
  const source = sources.get(row.source);
  if (!source) return fails(`no source ${row.source}`);
  if (row.mark === 'READ' && source.mark !== 'READ') return fails(`${row.source} itself was not read`);
  let ours: readonly number[];
  try {
    ours = oursOf(row, f);
  } catch (trouble) {
    return fails(trouble instanceof Error ? trouble.message : String(trouble));
  }
  if (ours.length !== row.published.length) return fails(`gives ${ours.length} values`);
  const differences = ours.map((one, i) => Math.abs(one - (row.published[i] as number)));
  const worst = differences.indexOf(Math.max(...differences));
  const [difference, published] = [differences[worst] as number, row.published[worst] as number];
  const within = difference <= row.tolerance + CONVERSION * Math.abs(published);
  const expected = row.why.startsWith('known:');
  const outcome = { row, ours, difference, digitsAgreed: digitsAgreed(published, difference) };
  if (within && expected)
    return { ...outcome, verdict: 'FAILS', note: `${row.place}: agrees; take the known mark off` };
  return {
    ...outcome,
    verdict: within ? 'agrees' : expected ? 'known' : 'FAILS',
    ...(within ? {} : { note: row.why }),
  };
}
