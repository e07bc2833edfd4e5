import type { Product } from '../../catalogue.ts';
import table from '../../data/needs.json' with { type: 'json' };
import { type Conditions, conditions } from '../../evidence.ts';
import type { OptionContext } from '../context.ts';
import { soldAs } from '../context.ts';

/** Which coats a must-have is asked of. */
export type On = 'concrete' | 'top' | 'all';

/** One test that would show it; without a limit it is enough that the sheet states the test with its conditions. */
export interface NeededTest {
  readonly method: string;
  readonly least?: string;
  readonly most?: string;
  readonly conditions: Conditions;
  readonly source?: string;
}

export interface NeedRow {
  readonly id: string;
  readonly what: string;
  readonly on: On;
  readonly why: string;
  readonly when: { readonly [K in 'traffic' | 'hotTyres' | 'slip' | 'water']?: readonly string[] };
  readonly tests: readonly NeededTest[];
}

interface RawTest {
  readonly method: string;
  readonly least?: string;
  readonly most?: string;
  readonly conditions?: unknown;
  readonly source: string;
}

const CONDITIONS = conditions();

/** Rows of the table, their conditions read as those of a sheet are. A row that does not read is a mistake of ours. */
export const ROWS: readonly NeedRow[] = table.rows.map((row) => ({
  ...row,
  on: row.on as On,
  tests: (row.tests as readonly RawTest[]).map((test) => ({
    ...test,
    conditions: CONDITIONS.parse(test.conditions ?? {}),
  })),
}));

/** Rows that the use of this job calls for. A use nobody stated asks for nothing; it is named as missing instead. */
export function rowsFor(use: NonNullable<OptionContext['job']['use']>): readonly NeedRow[] {
  return ROWS.filter(({ when }) =>
    (Object.entries(when) as [keyof NeedRow['when'], readonly string[]][]).every(([key, values]) =>
      values.includes(use[key] ?? ''),
    ),
  );
}

/** Products a must-have is asked of, each once. */
export function productsOn(ctx: OptionContext, on: On): readonly Product[] {
  const { layers } = ctx.system;
  const first = layers.find(({ onConcrete }) => onConcrete) ?? layers[0];
  const last = layers[layers.length - 1];
  const asked = on === 'all' ? layers : on === 'top' ? [last] : [first];
  // A sheet states properties of the product, whichever of its mixes a coat takes.
  return [...new Set(asked.flatMap((layer) => (layer ? [soldAs(ctx, layer)] : [])))];
}
