import {
  type Catalogue,
  type Claim,
  compareProducts,
  type EvidencePair,
  type EvidenceRow,
  type EvidenceTable,
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

const nameOf = ({ family, setting }: EvidenceRow, speaks: Voice): string =>
  speaks.word(`evidence-property-${family.id}`) + (setting === undefined ? '' : `, ${setting}`);

const pairOf = ({ pairs }: EvidenceRow, a: string, b: string): EvidencePair | undefined =>
  pairs.find(({ first, second }) => (first === a && second === b) || (first === b && second === a));

/** The product the others are held against: the one with most that may be compared with it. */
function referenceOf({ claims, pairs }: EvidenceRow): string | undefined {
  const count = (id: string): number =>
    pairs.filter(({ verdict, first, second }) => verdict === 'comparable' && (first === id || second === id)).length;
  const [best] = claims.map(({ product }) => product).sort((a, b) => count(b) - count(a));
  return best;
}

function textOf({ low, high, property }: Claim, speaks: Voice): string {
  if (low && high)
    return low.id === high.id ? speaks.show(low.id) : `${speaks.show(low.id)} to ${speaks.show(high.id)}`;
  if (low) return `≥ ${speaks.show(low.id)}`;
  return high ? `≤ ${speaks.show(high.id)}` : property.value;
}

function rowOf(row: EvidenceRow, index: number, table: EvidenceTable, speaks: Voice): SheetRow {
  const reference = referenceOf(row);
  const alone = !row.pairs.some(({ verdict }) => verdict === 'comparable');
  const name = nameOf(row, speaks);
  const found = table.products.map(({ id }): SheetCell & { ends?: readonly [number, number] } => {
    const claim = row.claims.find(({ product }) => product === id);
    if (!claim) return { product: id, text: '—', note: speaks.word('evidence-short-none'), comparable: false };
    const pair = reference === undefined || id === reference ? undefined : pairOf(row, reference, id);
    const comparable = !alone && (id === reference || pair?.verdict === 'comparable');
    const method = claim.method?.id ?? claim.typedMethod ?? '';
    const ends: readonly [number, number] | undefined =
      claim.low && claim.high ? [claim.low.value, claim.high.value] : undefined;
    return {
      product: id,
      text: textOf(claim, speaks),
      note: comparable || !pair ? method : shortReason(pair, claim, name, table, speaks),
      comparable,
      ...(comparable && ends ? { ends } : {}),
    };
  });
  const bars = scaled(found.map(({ ends }) => ends ?? null));
  return {
    key: `${row.family.id} ${row.setting ?? ''} ${index}`,
    name,
    better: row.better === 'neither' ? '' : speaks.word(`evidence-better-${row.better}`),
    cells: found.map(({ ends: _, ...cell }, i) => {
      const bar = bars[i];
      return bar ? { ...cell, bar } : cell;
    }),
    says: row.pairs.flatMap(({ verdict, says, notes }) =>
      verdict === 'comparable' ? [...(says ? [speaks.say(says)] : []), ...notes.map(speaks.say)] : [],
    ),
  };
}

/** Why a claim may not be held against the reference, in two or three words. */
function shortReason(pair: EvidencePair, claim: Claim, property: string, table: EvidenceTable, speaks: Voice): string {
  const own = pair.reasons.find(({ names }) => names?.product === undefined || names.product === claim.name);
  const reason = own ?? pair.reasons[0];
  if (!reason) return '';
  const names = reason.names ?? {};
  if (!own) return speaks.say({ code: 'evidence-short-gap-elsewhere', names: { product: names.product ?? '' } });
  const first = table.products.find(({ id }) => id === pair.first)?.name === claim.name;
  const mine =
    reason.code === 'evidence-method-differs' || reason.code === 'evidence-method-unlisted'
      ? (claim.method?.id ?? claim.typedMethod)
      : reason.code === 'evidence-mode-differs'
        ? claim.property.failureMode
        : first
          ? names.firstValue
          : names.secondValue;
  const code = reason.code.replace('evidence-', 'evidence-short-');
  return speaks.say({ code, names: { ...names, mine: mine ?? '', property } });
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
