import type { AnyFormula } from '@slabwright/core';
import type { Outcome } from './judge.ts';
import { MARKS, type Mark } from './rows.ts';

const HEAD = ['formula', 'source, locator', 'published', 'ours', 'difference', 'digits agreed', 'allowed', 'verdict'];

const short = (value: number): string =>
  value === 0
    ? '0'
    : Math.abs(value) < 1e-3 || Math.abs(value) >= 1e9
      ? value.toExponential(2)
      : String(Number(value.toPrecision(3)));
const long = (values: readonly number[], digits: number): string =>
  values.length === 0 ? '-' : values.map((v) => String(Number(v.toPrecision(Math.min(15, digits + 3))))).join(', ');

const cells = ({ row, ours, difference, digitsAgreed, verdict }: Outcome): readonly string[] => [
  row.formula,
  `${row.source}, ${row.locator}`,
  `${row.published.join(', ')}${row.unit === '' ? '' : ` ${row.unit}`}`,
  long(ours, row.digits),
  Number.isFinite(difference) ? short(difference) : '-',
  String(digitsAgreed),
  short(row.tolerance),
  verdict,
];

/** The comparison as a table of plain text that is also Markdown. */
export function tableOf(outcomes: readonly Outcome[]): string {
  const lines = [HEAD, ...outcomes.map(cells)];
  const widths = HEAD.map((_, i) => Math.max(...lines.map((line) => (line[i] as string).length)));
  const printed = lines.map((line) => `| ${line.map((cell, i) => cell.padEnd(widths[i] as number)).join(' | ')} |`);
  const rule = `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`;
  return [printed[0], rule, ...printed.slice(1)].join('\n');
}

export interface Tally {
  readonly rows: Readonly<Record<Mark, number>>;
  /** Sources with at least one agreeing READ row. */
  readonly sources: number;
  /** Agreeing READ rows of statistics, which say little about the trade. */
  readonly statistics: number;
  readonly agreed: Readonly<Record<Mark, number>>;
  readonly known: number;
  readonly failed: number;
}

export function tally(outcomes: readonly Outcome[]): Tally {
  const count = (keep: (outcome: Outcome) => boolean): number => outcomes.filter(keep).length;
  const byMark = (keep: (outcome: Outcome) => boolean): Record<Mark, number> =>
    Object.fromEntries(MARKS.map((mark) => [mark, count((o) => o.row.mark === mark && keep(o))])) as Record<
      Mark,
      number
    >;
  const read = outcomes.filter((o) => o.row.mark === 'READ' && o.verdict === 'agrees');
  return {
    rows: byMark(() => true),
    agreed: byMark((o) => o.verdict === 'agrees'),
    sources: new Set(read.map((o) => o.row.source)).size,
    statistics: read.filter((o) => o.row.formula.startsWith('statistics/')).length,
    known: count((o) => o.verdict === 'known'),
    failed: count((o) => o.verdict === 'FAILS'),
  };
}

/** Why no value read in a source checks a formula: as written in the formula, else what it is compared with instead. */
function reasonFor(f: AnyFormula, outcomes: readonly Outcome[]): string {
  if (f.noOutsideRow) return f.noOutsideRow;
  const own = outcomes.filter((o) => o.row.formula === f.id && o.row.mark !== 'READ');
  const memory = own.filter((o) => o.row.mark === 'MEM').length;
  const parts = [
    ...(memory > 0 ? [`${memory} from memory`] : []),
    ...(own.length > memory ? [`${own.length - memory} of own arithmetic`] : []),
  ];
  return parts.length > 0 ? `compared only with ${parts.join(' and ')}` : '';
}

/** Formulas without an agreeing READ row, each with the reason. An empty reason is a gap. */
export function withoutOutsideRow(
  outcomes: readonly Outcome[],
  formulas: ReadonlyMap<string, AnyFormula>,
): readonly { readonly id: string; readonly reason: string }[] {
  const read = new Set(
    outcomes.filter((o) => o.row.mark === 'READ' && o.verdict === 'agrees').map((o) => o.row.formula),
  );
  return [...formulas.values()]
    .filter((f) => !read.has(f.id))
    .map((f) => ({ id: f.id, reason: reasonFor(f, outcomes) }));
}

export function summaryOf(outcomes: readonly Outcome[], formulas: ReadonlyMap<string, AnyFormula>): string {
  const t = tally(outcomes);
  const lines = [
    `Read in a source: ${t.agreed.READ} of ${t.rows.READ} agree, from ${t.sources} sources; ${t.statistics} of them are statistics.`,
    `From memory: ${t.agreed.MEM} of ${t.rows.MEM} agree. Own arithmetic: ${t.agreed.CALC} of ${t.rows.CALC} agree; neither counts as validation.`,
    `Sources known to be wrong: ${t.known}. Failing: ${t.failed}.`,
  ];
  for (const o of outcomes) {
    if (o.verdict !== 'agrees')
      lines.push(
        `${o.verdict}: ${o.row.formula}, ${o.row.source}, ${o.row.locator}: ${(o.note ?? '').replace(/^known: /, '')}`,
      );
  }
  lines.push('', 'No value read in a source:');
  for (const { id, reason } of withoutOutsideRow(outcomes, formulas))
    lines.push(`  ${id}: ${reason || 'NO REASON WRITTEN'}`);
  return lines.join('\n');
}
