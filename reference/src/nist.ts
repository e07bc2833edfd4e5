import { readFileSync } from 'node:fs';
import type { Row } from './rows.ts';

/** The data of a set from line 61 on: a row of numbers a line. */
export function dataOf(text: string): readonly (readonly number[])[] {
  return text
    .split(/\r?\n/)
    .slice(60)
    .filter((line) => line.trim() !== '')
    .map((line) => line.trim().split(/\s+/).map(Number));
}

function certified(text: string, label: RegExp, name: string): number {
  const found = label.exec(text)?.[1];
  if (found === undefined) throw new Error(`${name}: no certified value after ${label}`);
  return Number(found);
}

const NUMBER = '(-?[\\d.]+(?:E[-+]\\d+)?)';
const MEAN = new RegExp(`Sample Mean\\s+ybar:\\s+${NUMBER}`);
const DEVIATION = new RegExp(`Sample Standard Deviation.*s:\\s+${NUMBER}`);
const FOLLOWS = new RegExp(`Autocorrelation Coefficient.*r\\(1\\):\\s+${NUMBER}`);

/**
 * Digits that can be asked for. The data of NumAcc3 and NumAcc4 are not numbers of a 64-bit float; exact arithmetic
 * on their nearest floats already leaves 9 and 8 digits of the deviation.
 */
const DIGITS_OF_DEVIATION: Readonly<Record<string, number>> = { NumAcc3: 9, NumAcc4: 8 };
const UNIVARIATE = ['NumAcc1', 'NumAcc2', 'NumAcc3', 'NumAcc4', 'Lottery', 'Lew', 'Mavro', 'Michelso'] as const;
/** Measured series; those made for the purpose add nothing to the autocorrelation check. */
const MEASURED = new Set(['Lottery', 'Lew', 'Mavro', 'Michelso']);

function row(
  set: string,
  source: string,
  part: Pick<Row, 'formula' | 'locator' | 'inputs'>,
  value: number,
  digits: number,
): Row {
  return {
    ...part,
    place: `${set}.dat`,
    source,
    locator: `${set}, ${part.locator}`,
    mark: 'READ',
    published: [value],
    unit: '',
    digits,
    tolerance: Math.abs(value) * 10 ** -digits,
    why: `${digits} digits: what 64-bit floats can keep of the certified 15`,
  };
}

/** Rows out of the reference data sets: mean, deviation, autocorrelation and a straight line. */
export function nistRows(folder: URL): readonly Row[] {
  const read = (set: string): string => readFileSync(new URL(`${set}.dat`, folder), 'utf8');
  const univariate = UNIVARIATE.flatMap((set) => {
    const text = read(set);
    const inputs = { values: dataOf(text).map(([y]) => y as number) };
    const of = (formula: string, locator: string, label: RegExp, digits: number): Row =>
      row(set, 'nist-strd-univariate', { formula, locator, inputs }, certified(text, label, set), digits);
    return [
      of('statistics/mean', 'sample mean', MEAN, 14),
      of('statistics/standard-deviation', 'sample deviation', DEVIATION, DIGITS_OF_DEVIATION[set] ?? 12),
      ...(MEASURED.has(set) ? [of('statistics/autocorrelation', 'r(1)', FOLLOWS, 12)] : []),
    ];
  });
  const text = read('Norris');
  const points = dataOf(text);
  const inputs = { x: points.map((p) => p[1] as number), y: points.map((p) => p[0] as number) };
  const of = (formula: string, locator: string, label: string): Row =>
    row(
      'Norris',
      'nist-strd-norris',
      { formula, locator, inputs },
      certified(text, new RegExp(label.replaceAll('#', NUMBER), 's'), 'Norris'),
      10,
    );
  return [
    ...univariate,
    of('statistics/line-intercept', 'B0', 'B0\\s+#\\s'),
    of('statistics/line-intercept-error', 'deviation of B0', 'B0\\s+-?[\\d.]+\\s+#'),
    of('statistics/line-slope', 'B1', 'B1\\s+(?=-?[\\d.]+\\s+[\\d.]+E)#\\s'),
    of('statistics/line-slope-error', 'deviation of B1', 'B1\\s+-?[\\d.]+\\s+([\\d.]+E-\\d+)'),
    of('statistics/line-residual-deviation', 'residual deviation', 'Residual\\s+Standard Deviation\\s+#'),
  ];
}
