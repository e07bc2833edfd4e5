import {
  type Catalogue,
  compareProducts,
  type EvidenceRow,
  type EvidenceTable,
  evidenceCells,
  evidenceName,
  Ledger,
  type Reader,
  Trace,
  type Voice,
  voice,
} from '@slabwright/core';
import type { CompareView, SheetCell, SheetRow } from './api.ts';
import { scaled } from './scale.ts';

/** So many sheets stand beside each other until somebody chooses. */
const AT_FIRST = 3;
export const MOST_SHEETS = 4;

type Sheets = Pick<CompareView, 'offered' | 'products' | 'rows' | 'doubts' | 'asks'>;

/** Data sheets of a few products, property by property; only what may be compared gets a common scale. */
export function sheetsOf(catalogue: Catalogue, wanted: readonly string[], reader: Reader): Sheets {
  const offered = catalogue.products
    .map(({ id, name, properties }) => ({ id, name, states: properties?.length ?? 0 }))
    .sort((a, b) => b.states - a.states);
  const chosen = wanted.length > 0 ? wanted : offered.filter(({ states }) => states > 0).map(({ id }) => id);
  const products = chosen
    .slice(0, wanted.length > 0 ? MOST_SHEETS : AT_FIRST)
    .flatMap((id) => catalogue.products.find((one) => one.id === id) ?? []);
  if (products.length < 2) return { offered, products: [], rows: [], doubts: [], asks: [] };
  const ledger = new Ledger();
  const table = compareProducts(products, new Trace(ledger));
  const speaks = voice('en', reader, Object.fromEntries(ledger.entries));
  return {
    offered,
    products: table.products,
    rows: table.rows.map((row, i) => rowOf(row, i, table, speaks)),
    doubts: table.doubts.map(speaks.say),
    asks: asksOf(table, speaks),
  };
}

function rowOf(row: EvidenceRow, index: number, table: EvidenceTable, speaks: Voice): SheetRow {
  const found = evidenceCells(row, table, speaks);
  const ends = found.map(({ claim, comparable }): readonly [number, number] | null =>
    comparable && claim?.low && claim.high ? [claim.low.value, claim.high.value] : null,
  );
  const bars = scaled(ends);
  return {
    key: `${row.family.id} ${row.setting ?? ''} ${index}`,
    name: evidenceName(row, speaks),
    better: row.better === 'neither' ? '' : speaks.word(`evidence-better-${row.better}`),
    cells: found.map(({ claim: _, ...cell }, i): SheetCell => {
      const bar = bars[i];
      return bar ? { ...cell, bar } : cell;
    }),
    says: row.pairs.flatMap(({ verdict, says, notes }) =>
      verdict === 'comparable' ? [...(says ? [speaks.say(says)] : []), ...notes.map(speaks.say)] : [],
    ),
  };
}

function asksOf({ products, ask }: EvidenceTable, speaks: Voice): Sheets['asks'] {
  const property = (id: string): string => speaks.word(`evidence-property-${id}`);
  return products.flatMap(({ id, name }) => {
    const wanted = ask
      .filter(({ product }) => product === id)
      .map(
        (one) =>
          `${property(one.property)}${one.claim === undefined ? '' : ` (${one.claim})`}: ${one.wanted.map(speaks.say).join('; ')}`,
      );
    return wanted.length > 0 ? [{ name, wanted }] : [];
  });
}
