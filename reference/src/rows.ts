import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** How the published value was seen: read in its source, remembered, or worked out by ourselves. */
export const MARKS = ['READ', 'MEM', 'CALC'] as const;
export type Mark = (typeof MARKS)[number];

/** One published value and the inputs it belongs to. */
export interface Row {
  /** File and line, for messages. */
  readonly place: string;
  readonly source: string;
  readonly formula: string;
  readonly locator: string;
  readonly mark: Mark;
  /** Values in SI by input name, or the text `name=value unit;name=a,b,c unit`. */
  readonly inputs: string | Readonly<Record<string, number | readonly number[]>>;
  readonly published: readonly number[];
  /** Unit of the published value; empty for a plain number. */
  readonly unit: string;
  readonly digits: number;
  /** Absolute, in `unit`: from the rounding or claim of the source. */
  readonly tolerance: number;
  /** Why this tolerance. `known: ...` marks a source that is wrong, and says how. */
  readonly why: string;
}

const COLUMNS = ['formula', 'locator', 'mark', 'inputs', 'published', 'unit', 'digits', 'tolerance', 'why'] as const;
const FIRST_LINE = /^# source: ([a-z0-9.-]+)\s*$/;

function numberFrom(text: string, column: string, place: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new Error(`${place}: ${column} is no number: "${text}"`);
  return value;
}

/** Reads one file of rows. Throws with file and line for anything out of form. */
export function rowsOf(name: string, text: string): readonly Row[] {
  const end = text.indexOf('\n');
  const source = FIRST_LINE.exec(text.slice(0, end))?.[1];
  if (!source) throw new Error(`${name}: the first line must read "# source: key"`);
  const records = parse(text.slice(end + 1), {
    columns: (header: string[]) => {
      if (header.join() !== COLUMNS.join()) throw new Error(`${name}: the columns must be ${COLUMNS.join()}`);
      return header;
    },
    skip_empty_lines: true,
    trim: true,
    info: true,
  }) as unknown as { readonly record: Record<(typeof COLUMNS)[number], string>; readonly info: { lines: number } }[];
  return records.map(({ record, info }): Row => {
    const place = `${name}:${info.lines + 1}`;
    const mark = MARKS.find((m) => m === record.mark);
    if (!mark) throw new Error(`${place}: mark must be one of ${MARKS.join(', ')}`);
    if (record.why === '') throw new Error(`${place}: why is empty`);
    return {
      place,
      source,
      formula: record.formula,
      locator: record.locator,
      mark,
      inputs: record.inputs,
      published: record.published.split(',').map((one) => numberFrom(one, 'published', place)),
      unit: record.unit,
      digits: numberFrom(record.digits, 'digits', place),
      tolerance: numberFrom(record.tolerance, 'tolerance', place),
      why: record.why,
    };
  });
}

/** Every row under a folder, in order of file name, so that the table never changes by itself. */
export function readRows(folder: URL): readonly Row[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.csv'))
    .sort()
    .flatMap((name) => rowsOf(name, readFileSync(new URL(name, folder), 'utf8')));
}
