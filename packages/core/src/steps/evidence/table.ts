import type { Product } from '../../catalogue.ts';
import type { Figure } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Ask, askAll, asksOf } from './ask.ts';
import { type Claim, claimsOf, settingOf } from './claim.ts';
import { doubtsOf } from './doubts.ts';
import { type Comparable, judge } from './judge.ts';
import { type Better, FAMILIES, type Family } from './methods.ts';
import { compared, type Outcome } from './outcome.ts';

/** Two products in one property. */
export interface EvidencePair {
  readonly first: string;
  readonly second: string;
  readonly verdict: Comparable;
  readonly reasons: readonly Said[];
  readonly notes: readonly Said[];
  readonly outcome?: Outcome;
  readonly difference?: Figure;
  /** The outcome in words, where there is one. */
  readonly says?: Said;
}

export interface EvidenceRow {
  readonly family: Family;
  readonly better: Better;
  /** What the row is about besides its property: a reagent. */
  readonly setting?: string;
  /** One claim a product at most; a product without one is silent here. */
  readonly claims: readonly Claim[];
  readonly pairs: readonly EvidencePair[];
}

export interface EvidenceTable {
  readonly products: readonly { readonly id: string; readonly name: string; readonly sheet: string }[];
  readonly rows: readonly EvidenceRow[];
  readonly doubts: readonly Said[];
  readonly ask: readonly Ask[];
}

/**
 * Sets data sheets side by side, property by property. There is no winner and no total: only what may be compared, how
 * far apart it lies, and what is missing.
 */
export function compareProducts(products: readonly Product[], trace: Trace): EvidenceTable {
  const claims = new Map(products.map((product) => [product.id, claimsOf(product, trace)]));
  const rows = FAMILIES.flatMap((family) => rowsOf(family, products, claims, trace));
  return {
    products: products.map(({ id, name, sheet }) => ({
      id,
      name,
      sheet: [sheet.name, sheet.date].filter(Boolean).join(', '),
    })),
    rows,
    doubts: products.flatMap((product) => doubtsOf(product, claims.get(product.id) ?? [], trace)),
    ask: products.flatMap((product) => asksFor(product, rows)),
  };
}

/** Rows of one property: several where a sheet states it several times, the first statements first. */
function rowsOf(
  family: Family,
  products: readonly Product[],
  claims: ReadonlyMap<string, readonly Claim[]>,
  trace: Trace,
): readonly EvidenceRow[] {
  const of = (product: Product): readonly Claim[] =>
    (claims.get(product.id) ?? []).filter((claim) => claim.family.id === family.id);
  const settings = [...new Set(products.flatMap((product) => of(product).map(settingOf)))];
  return settings.flatMap((setting) => {
    const matching = products.map((product) => of(product).filter((claim) => settingOf(claim) === setting));
    const depth = Math.max(0, ...matching.map(({ length }) => length));
    return Array.from({ length: depth }, (_, at): EvidenceRow => {
      const row = matching.flatMap((found) => found[at] ?? []);
      const name = `compared.${family.id}${setting === '' ? '' : `-${setting}`}${at === 0 ? '' : `-${at + 1}`}`;
      const shown = family.setting ? row[0]?.conditions[family.setting] : undefined;
      return {
        family,
        better: family.better,
        ...(shown === undefined ? {} : { setting: typeof shown === 'object' ? shown.typed : `${shown}` }),
        claims: row,
        pairs: pairsOf(row, products, family, trace.within(name)),
      };
    });
  });
}

function pairsOf(
  row: readonly Claim[],
  products: readonly Product[],
  family: Family,
  trace: Trace,
): readonly EvidencePair[] {
  return products.flatMap((first, i) =>
    products.slice(i + 1).map((second): EvidencePair => {
      const [a, b] = [first, second].map(({ id }) => row.find(({ product }) => product === id));
      if (!a || !b) {
        const silent = [...(a ? [] : [first]), ...(b ? [] : [second])];
        const reasons = silent.map(
          ({ name }): Said => ({
            code: 'evidence-not-on-sheet',
            names: { product: name, property: `@evidence-property-${family.id}` },
          }),
        );
        return { first: first.id, second: second.id, verdict: 'unknown', reasons, notes: [] };
      }
      return pairOf(a, b, trace.within(`${first.id}-${second.id}`));
    }),
  );
}

/** Judges two claims and, where they may be compared, says how they stand. */
export function pairOf(a: Claim, b: Claim, trace: Trace): EvidencePair {
  const judged = judge(a, b);
  const pair = { first: a.product, second: b.product, ...judged };
  return judged.verdict === 'comparable' ? { ...pair, ...compared(a, b, trace) } : pair;
}

function asksFor(product: Product, rows: readonly EvidenceRow[]): readonly Ask[] {
  return rows.flatMap((row): readonly Ask[] => {
    const head = { product: product.id, name: product.name, property: row.family.id };
    const claim = row.claims.find((one) => one.product === product.id);
    if (!claim) return [{ ...head, wanted: askAll(row.family) }];
    const wanted = asksOf(claim);
    return wanted.length === 0 ? [] : [{ ...head, claim: claim.property.value, wanted }];
  });
}
