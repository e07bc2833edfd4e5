import type { Pack, Product } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import { rateFromText } from '../../kernel/money.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { PriceBook } from '../../price-book.ts';
import { givenField, sheetOf } from '../context.ts';
import { packMakes, packsMake, usablePart } from '../formulas/quantities-components.ts';
import { VOLUME_GUARD, wholeKits } from '../formulas/quantities-packs.ts';
import { certain } from './certain.ts';
import { type CoverPack, leastCover } from './covering.ts';
import type { ComponentShare } from './mix-shares.ts';

/** Steps in which volumes are compared, per m³: a ten-thousandth of a millilitre, so that gallons stay multiples. */
export const STEPS = 1e10;
/** Steps in which prices are compared, per minor unit: prices hold at most six decimals of a major unit. */
export const MONEY_STEPS = 1e4;

export interface PackOnSale {
  readonly id: string;
  /** Mixed volume the pack makes by each part of the ratio, in their order; nothing of a part it does not hold. */
  readonly makes: readonly Known<'m³'>[];
  /** Volume of every component in it. */
  readonly holds: ReadonlyMap<string, Known<'m³'>>;
  readonly volume: number;
  /** Minor units, only for the choice; a plan keeps prices under `price` alone. */
  readonly price?: number;
}

export interface Offer {
  readonly packs: readonly PackOnSale[];
  readonly shares: readonly ComponentShare[];
  /** Whether one kit makes everything, so that counting kits is enough. */
  readonly single: boolean;
  readonly byPrice: boolean;
  /** Packs of the sheet the price book has no price for. */
  readonly unpriced: readonly string[];
}

/** Packs of a product as the choice sees them. Unless the sheet allows part kits, a kit counts by what it makes whole. */
export function offerOf(
  trace: Trace,
  product: Product,
  shares: readonly ComponentShare[],
  prices: PriceBook | undefined,
): Offer {
  const packs = usefulPacks(product, shares).map((pack) =>
    onSale(trace, product, pack, shares, priceOf(product, pack, prices)),
  );
  const unpriced = prices ? packs.filter((pack) => pack.price === undefined).map((pack) => pack.id) : [];
  return {
    packs,
    shares,
    single: packs.length === 1 && (packs[0] as PackOnSale).makes.every((m) => m === packs[0]?.makes[0]),
    byPrice: prices !== undefined && unpriced.length === 0,
    unpriced,
  };
}

/** Minor units of one pack, where the price book has it. */
export function priceOf(product: Product, pack: Pack, prices: PriceBook | undefined): number | undefined {
  const line = prices?.packs.find((one) => one.product === product.id && one.pack === pack.id);
  return line && prices ? rateFromText(line.price, prices.currency) : undefined;
}

/** Components that stand in the ratio of some mix of a product, as against tints. */
export const ratioParts = (product: Product): ReadonlySet<string> =>
  new Set([product.mix, ...(product.mixes ?? []).map(({ mix }) => mix)].flat().map(({ component }) => component));

/**
 * Packs that serve one mix. A kit that also holds the part of another mix would have to be split, and packs that each
 * lack a part serve only where together they have all: what a whole kit makes leaves nothing for them to complete.
 */
function usefulPacks(product: Product, shares: readonly ComponentShare[]): readonly Pack[] {
  const ratio = shares.flatMap((s) => (s.ofRatio ? [s.component] : []));
  const holding = product.packs.filter((pack) => ratio.some((component) => holds(pack, component)));
  if (product.partKits) return holding;
  const other = [...ratioParts(product)].filter((component) => !ratio.includes(component));
  const own = holding.filter((pack) => !other.some((component) => holds(pack, component)));
  const whole = (pack: Pack): boolean => ratio.every((component) => holds(pack, component));
  const parted = own.filter((pack) => !whole(pack));
  return ratio.every((component) => parted.some((pack) => holds(pack, component))) ? own : own.filter(whole);
}

const holds = (pack: Pack, component: string): boolean => pack.parts.some((part) => part.component === component);

/** What comes out of a pack, by component: the sheet's volume, less where a yield is stated. */
export function heldIn(t: Trace, product: Product, pack: Pack): ReadonlyMap<string, Known<'m³'>> {
  const where = sheetOf(product);
  const stated = new Map(
    pack.parts.map((part) => [
      part.component,
      givenField(t, `${part.component}.volume`, part.volume, 'data sheet', { where }),
    ]),
  );
  const yields = pack.yields ? givenField(t, 'yields', pack.yields, 'data sheet', { where }) : undefined;
  const parts = [...stated.values()];
  return new Map<string, Known<'m³'>>(
    [...stated].map(([component, part]) => [
      component,
      yields ? t.figure(`${component}.usable`, usablePart, { volume: part, yields, volumes: parts }) : part,
    ]),
  );
}

function onSale(
  trace: Trace,
  product: Product,
  pack: Pack,
  shares: readonly ComponentShare[],
  price: number | undefined,
): PackOnSale {
  const t = trace.within(pack.id);
  const where = sheetOf(product);
  const volumes = heldIn(t, product, pack);
  const ratio = shares.filter((s) => s.ofRatio);
  const held = ratio.filter((s) => volumes.has(s.component));
  const makesOf = (name: string, of: readonly ComponentShare[]): Figure<'m³'> =>
    t.figure(name, packMakes, {
      volumes: of.map((s) => volumes.get(s.component) as Known<'m³'>),
      shares: of.map((s) => s.share),
    });
  // Parts of several kits go together only where the sheet says so and another pack could complete them.
  const split = product.partKits === true && held.length > 1 && product.packs.length > 1;
  const whole = split ? undefined : makesOf('makes', held);
  const nothing =
    held.length < ratio.length
      ? t.given('nothing', { value: 0, unit: 'm³', origin: 'data sheet', where, shows: 'volume' })
      : undefined;
  const makes = ratio.map((s): Known<'m³'> => {
    if (!volumes.has(s.component)) return nothing as Known<'m³'>;
    return whole ?? makesOf(`${s.component}.makes`, [s]);
  });
  return {
    id: pack.id,
    makes,
    holds: volumes,
    volume: pack.parts.reduce((sum, part) => sum + part.volume.value, 0),
    ...(price !== undefined ? { price } : {}),
  };
}

export interface Chosen {
  /** Only the packs that are bought. */
  readonly packs: readonly { readonly pack: PackOnSale; readonly count: Known<'1'> }[];
  readonly proven: boolean;
  /** Mixed volume all of them make. */
  readonly makes: Figure<'m³'>;
}

/**
 * Packs for a volume. One kit is counted; several are chosen exactly: least money where all have a price, else least
 * volume bought, then least volume, fewest packs, and the pack the sheet lists first.
 */
export function choosePacks(trace: Trace, offer: Offer, needed: Known<'m³'>): Chosen | undefined {
  const first = offer.packs[0];
  if (!first) return undefined;
  if (offer.single) {
    const each = certain(first.makes[0] as Known<'m³'>);
    const count = trace.figure('count', wholeKits, { needed: certain(needed), each });
    return {
      packs: [{ pack: first, count }],
      proven: true,
      makes: trace.figure('bought', packsMake, { counts: [count], makes: [each] }),
    };
  }
  const cover = leastCover(
    offer.packs.map((pack) => coverPack(pack, offer.byPrice)),
    Math.round(needed.value * STEPS),
    Math.round(VOLUME_GUARD * STEPS),
  );
  if (!cover) return undefined;
  const packs = offer.packs.flatMap((pack, i) => {
    const value = cover.counts[i] as number;
    if (value === 0) return [];
    const says = offer.byPrice ? 'quantities-packs-by-price' : 'quantities-packs-by-volume';
    return [
      { pack, count: trace.given(`${pack.id}.count`, { value, unit: '1', origin: 'chosen', says, shows: 'count' }) },
    ];
  });
  if (packs.length === 0) return undefined;
  return {
    packs,
    proven: cover.proven,
    makes: trace.figure('bought', packsMake, {
      counts: packs.map((one) => one.count),
      makes: packs.flatMap((one) => one.pack.makes),
    }),
  };
}

const coverPack = (pack: PackOnSale, byPrice: boolean): CoverPack => {
  const volume = Math.round(pack.volume * STEPS);
  return {
    gives: pack.makes.map((m) => Math.round(m.value * STEPS)),
    cost: byPrice && pack.price !== undefined ? Math.round(pack.price * MONEY_STEPS) : volume,
    volume,
  };
};
