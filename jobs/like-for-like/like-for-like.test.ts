import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  catalogueFrom,
  type Figure,
  Ledger,
  type Product,
  parseQuantity,
  SOURCES,
  Trace,
  voice,
} from '@slabwright/core';
import { expect, test } from 'vitest';
import { claimsOf, type EvidencePair, pairOf } from '../../packages/core/src/steps/evidence/index.ts';
import golden from './pairs.json' with { type: 'json' };

/** REGEN=1 rewrites docs/like-for-like.md; the verdicts themselves stand in pairs.json and are never rewritten. */
const REGEN = process.env.REGEN === '1';
const PAGE = fileURLToPath(new URL('../../docs/like-for-like.md', import.meta.url));

type Row = (typeof golden.pairs)[number] & { readonly outcome?: string; readonly difference?: string };
const ROWS = golden.pairs as readonly Row[];

function product(id: string, name: string, property: unknown): Product {
  const read = catalogueFrom({
    schema: 'slabwright.catalogue/1',
    id: 'pair',
    systems: [],
    products: [
      {
        id,
        name,
        sheet: { name: 'invented', date: '2026-01-01' },
        chemistry: 'epoxy',
        components: [{ id: 'a', name: 'part A' }],
        mix: [{ component: 'a', parts: 1 }],
        packs: [{ id: 'pail', parts: [{ component: 'a', volume: '1 L' }] }],
        volumeSolids: '100 %',
        properties: [property],
      },
    ],
  });
  const [only] = read.ok ? read.value.products : [];
  if (!only) throw new Error(JSON.stringify(read));
  return only;
}

function judged(row: Row): { readonly pair: EvidencePair; readonly says: readonly string[] } {
  const ledger = new Ledger();
  const trace = new Trace(ledger);
  const [a] = claimsOf(product('first', 'First', row.first), trace);
  const [b] = claimsOf(product('second', 'Second', row.second), trace);
  if (!a || !b) throw new Error(`a claim of this pair cannot be read: ${row.why}`);
  const pair = pairOf(a, b, trace.within('pair'));
  const speaker = voice('en', { locale: 'en-US', units: 'metric' }, Object.fromEntries(ledger.entries));
  const said = [...pair.reasons, ...(pair.says ? [pair.says] : []), ...pair.notes];
  return { pair, says: said.map((one) => speaker.say(one).replaceAll('\u00a0', ' ')) };
}

test('at least thirty pairs, all three verdicts, each with a source of the bibliography under its mark', () => {
  expect(ROWS.length).toBeGreaterThanOrEqual(30);
  expect(new Set(ROWS.map(({ verdict }) => verdict)).size).toBe(3);
  for (const { source, mark, why } of ROWS) expect(SOURCES.get(source)?.mark, why).toBe(mark);
});

test.each(ROWS.map((row) => [row.why, row] as const))('%s', (_, row) => {
  const { pair } = judged(row);
  expect(pair.verdict).toBe(row.verdict);
  expect(pair.reasons.map(({ code }) => code)).toEqual(row.reasons);
  expect(pair.outcome).toBe(row.outcome);
  expect(pair.difference === undefined).toBe(row.difference === undefined);
  if (row.difference) expectWritten(pair.difference, row.difference);
});

/** Agrees with the digits written beside it. */
function expectWritten(figure: Figure | undefined, written: string): void {
  if (!figure) throw new Error('no difference');
  const wanted = parseQuantity(written, figure.unit);
  if (!wanted.ok) throw new Error(`${written} is no ${figure.unit}`);
  const places = /\.(\d+)/.exec(written)?.[1]?.length ?? 0;
  const number = Number.parseFloat(written);
  const step = (wanted.quantity.value / number) * 10 ** -places;
  expect(Math.abs(figure.value - wanted.quantity.value)).toBeLessThanOrEqual(step / 2 + 1e-12);
}

const text = (claim: Row['first']): string => {
  const {
    method,
    value,
    conditions = {},
    failureMode,
  } = claim as {
    readonly method?: string;
    readonly value: string;
    readonly conditions?: Readonly<Record<string, string | number>>;
    readonly failureMode?: string;
  };
  const settings = Object.values(conditions).map(String).join(', ');
  return [value, method ?? 'no method', settings, failureMode ? `failed ${failureMode}` : '']
    .filter(Boolean)
    .join('; ');
};

test('docs/like-for-like.md shows the same table (REGEN=1 rewrites it)', () => {
  const lines = [
    '# Like for like',
    '',
    'Two claims stand side by side only where the test method and every condition agree. A condition that one sheet',
    'leaves out is unknown, never equal. The table of methods is `packages/core/src/data/comparable-methods.json`; the',
    'pairs below are checked on every run. All claims are invented.',
    '',
    '| # | property | first | second | verdict | in words | why, source, mark |',
    '|---|---|---|---|---|---|---|',
    ...ROWS.map((row, i) => {
      const { pair, says } = judged(row);
      const cells = [
        `${i + 1}`,
        row.first.what,
        text(row.first),
        text(row.second as Row['first']),
        pair.verdict,
        says.join(' '),
        `${row.why}; \`${row.source}\`, ${row.mark}`,
      ];
      return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
    }),
    '',
  ].join('\n');
  if (REGEN) writeFileSync(PAGE, lines);
  expect(readFileSync(PAGE, 'utf8')).toBe(lines);
});
