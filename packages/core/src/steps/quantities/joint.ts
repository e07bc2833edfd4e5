import type { Product } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { PriceBook } from '../../price-book.ts';
import { componentLeft, componentVolume, packMakes } from '../formulas/quantities-components.ts';
import { componentLasts, jointPacksMake, mixReaches } from '../formulas/quantities-joint.ts';
import { VOLUME_GUARD } from '../formulas/quantities-packs.ts';
import { totalVolume } from '../formulas/quantities-volumes.ts';
import { type JointCover, type JointNeed, type JointPack, leastJointCover } from './joint-cover.ts';
import type { ComponentShare } from './mix-shares.ts';
import { heldIn, MONEY_STEPS, type PackOnSale, priceOf, ratioParts, STEPS } from './packs.ts';

/** One mix of a product that some coat of the option takes. */
export interface MixOnSale {
  readonly id: string;
  readonly shares: readonly ComponentShare[];
}

/** A pack for several mixes. One that is opened whole says what it makes of each; nothing where it does not serve it. */
interface JointOnSale extends PackOnSale {
  readonly whole: boolean;
  readonly makesOf: readonly (Known<'m³'> | undefined)[];
}

export interface JointOffer {
  readonly packs: readonly JointOnSale[];
  readonly mixes: readonly MixOnSale[];
  /** Components in the ratio of one of the mixes, in the order of the sheet. */
  readonly components: readonly string[];
  readonly byPrice: boolean;
  readonly unpriced: readonly string[];
}

/** Packs of a product as coats of several of its mixes see them. */
export function jointOfferOf(
  trace: Trace,
  product: Product,
  mixes: readonly MixOnSale[],
  prices: PriceBook | undefined,
): JointOffer {
  const ratioOf = (mix: MixOnSale): readonly ComponentShare[] => mix.shares.filter((s) => s.ofRatio);
  const wanted = new Set(mixes.flatMap((mix) => ratioOf(mix).map((s) => s.component)));
  const everyRatio = ratioParts(product);
  const packs = product.packs.flatMap((pack): JointOnSale[] => {
    const parts = pack.parts.map((part) => part.component).filter((component) => everyRatio.has(component));
    if (!parts.some((component) => wanted.has(component))) return [];
    const whole = parts.length > 1 && product.partKits !== true;
    const serves = (mix: MixOnSale): boolean =>
      parts.every((component) => ratioOf(mix).some((s) => s.component === component));
    if (whole && !mixes.some(serves)) return [];
    const t = trace.within(pack.id);
    const holds = heldIn(t, product, pack);
    const makesOf = mixes.map((mix) =>
      whole && serves(mix)
        ? t.figure(`${mix.id}.makes`, packMakes, {
            volumes: ratioOf(mix).flatMap((s) => holds.get(s.component) ?? []),
            shares: ratioOf(mix).flatMap((s) => (holds.has(s.component) ? [s.share] : [])),
          })
        : undefined,
    );
    const price = priceOf(product, pack, prices);
    return [
      {
        id: pack.id,
        whole,
        makesOf,
        makes: [],
        holds,
        volume: pack.parts.reduce((sum, part) => sum + part.volume.value, 0),
        ...(price !== undefined ? { price } : {}),
      },
    ];
  });
  const unpriced = prices ? packs.filter((pack) => pack.price === undefined).map((pack) => pack.id) : [];
  return {
    packs,
    mixes,
    components: product.components.flatMap(({ id }) => (wanted.has(id) ? [id] : [])),
    byPrice: prices !== undefined && unpriced.length === 0,
    unpriced,
  };
}

export interface JointChosen {
  readonly packs: readonly { readonly pack: PackOnSale; readonly count: Known<'1'> }[];
  readonly proven: boolean;
  /** Mixed volume the packs make, the mixes in the proportion they are needed in. */
  readonly makes: Figure<'m³'>;
  /** How far each mix could grow alone. */
  readonly reaches: readonly Figure<'m³'>[];
  readonly leftByComponent: readonly { readonly component: string; readonly volume: Figure<'m³'> }[];
}

/** How many packs in all, for a need of every mix in m³; undefined where no packs make them. */
export function jointCount(offer: JointOffer, needed: readonly number[]): number | undefined {
  return coverOf(offer, needed)?.counts.reduce((sum, count) => sum + count, 0);
}

function coverOf({ packs, mixes, components, byPrice }: JointOffer, needed: readonly number[]): JointCover | undefined {
  const steps = (volume: number): number => Math.round(volume * STEPS);
  const needs: readonly JointNeed[] = mixes.map(({ shares }, m) => ({
    mixed: steps(needed[m] as number),
    shares: components.map((id) => shares.find((s) => s.ofRatio && s.component === id)?.share.value ?? 0),
  }));
  const offered: readonly JointPack[] = packs.map(({ holds, whole, makesOf, volume, price }) => ({
    gives: components.map((id) => steps(holds.get(id)?.value ?? 0)),
    cost: byPrice && price !== undefined ? Math.round(price * MONEY_STEPS) : steps(volume),
    volume: steps(volume),
    ...(whole ? { makes: makesOf.map((made) => steps(made?.value ?? 0)) } : {}),
  }));
  return leastJointCover(offered, needs, steps(VOLUME_GUARD));
}

/** Least-cost packs for all mixes at once, with what is left of each component and how far each mix reaches. */
export function chooseJointly(
  trace: Trace,
  offer: JointOffer,
  needed: readonly Known<'m³'>[],
  total: Known<'m³'>,
): JointChosen | undefined {
  const cover = coverOf(
    offer,
    needed.map(({ value }) => value),
  );
  if (!cover) return undefined;
  const says = offer.byPrice ? 'quantities-packs-by-price' : 'quantities-packs-by-volume';
  const counted = (name: string, value: number): Known<'1'> =>
    trace.given(name, { value, unit: '1', origin: 'chosen', says, shows: 'count' });
  const packs = offer.packs.flatMap((pack, i) => {
    const value = cover.counts[i] as number;
    return value > 0 ? [{ pack, count: counted(`${pack.id}.count`, value) }] : [];
  });
  const kits = offer.mixes.map((mix, m) =>
    offer.packs.flatMap((pack, i) => {
      const value = cover.kits[i]?.[m] ?? 0;
      const made = pack.makesOf[m];
      if (value === 0 || !made) return [];
      const t = trace.within(mix.id);
      return [
        {
          pack,
          makes: t.figure(`${pack.id}.made`, componentLeft, {
            counts: [counted(`${mix.id}.${pack.id}.count`, value)],
            volumes: [made],
            used: nothing(t, `${pack.id}.nothing`),
          }),
        },
      ];
    }),
  );
  const parts = offer.components.map((component) => partOf(trace, offer, packs, kits, needed, total, component));
  return {
    packs,
    proven: cover.proven,
    makes: trace.figure('bought', jointPacksMake, { lasts: parts.map(({ lasts }) => lasts) }),
    reaches: offer.mixes.map((mix, m) => {
      const own = parts.flatMap(({ left, covered, shares }) => {
        const share = shares[m];
        return share ? [{ left, covered: covered[m] as Known<'m³'>, share }] : [];
      });
      return trace.figure(`${mix.id}.reaches`, mixReaches, {
        covered: own.map(({ covered }) => covered),
        left: own.map(({ left }) => left),
        shares: own.map(({ share }) => share),
      });
    }),
    leftByComponent: offer.components.map((component) => ({
      component,
      volume: leftOf(trace, offer, packs, needed, component),
    })),
  };
}

const nothing = (trace: Trace, name: string): Known<'m³'> =>
  trace.given(name, { value: 0, unit: 'm³', origin: 'data sheet', shows: 'volume' });

type Packs = JointChosen['packs'];
type Kits = readonly (readonly { readonly pack: JointOnSale; readonly makes: Figure<'m³'> }[])[];

interface PartWorked {
  readonly lasts: Figure<'m³'>;
  /** Loose volume that no mix needs. */
  readonly left: Figure<'m³'>;
  /** By mix: the volume from which it would draw on what is left. */
  readonly covered: readonly Known<'m³'>[];
  readonly shares: readonly (Known<'1'> | undefined)[];
}

/** One component over all mixes: for how much it lasts, and what of its loose packs nobody needs. */
function partOf(
  trace: Trace,
  { mixes, packs: offered }: JointOffer,
  packs: Packs,
  kits: Kits,
  needed: readonly Known<'m³'>[],
  total: Known<'m³'>,
  component: string,
): PartWorked {
  const t = trace.within(component);
  const shares = mixes.map((mix) => mix.shares.find((s) => s.ofRatio && s.component === component)?.share);
  const byKits = mixes.map((mix, m): Known<'m³'> => {
    const holding = (kits[m] ?? []).filter(({ pack }) => pack.holds.has(component));
    const [only] = holding;
    if (!only) return nothing(t, `${mix.id}.by-kits`);
    const volumes = holding.map(({ makes }) => makes);
    return holding.length === 1 ? only.makes : t.figure(`${mix.id}.by-kits`, totalVolume, { volumes });
  });
  const loosePacks = packs.filter(({ pack }) => !isWhole(offered, pack) && pack.holds.has(component));
  const zero = nothing(t, 'nothing');
  const counts = loosePacks.map(({ count }) => count);
  const volumes = loosePacks.map(({ pack }) => pack.holds.get(component) as Known<'m³'>);
  const loose: Known<'m³'> =
    loosePacks.length > 0 ? t.figure('loose', componentLeft, { counts, volumes, used: zero }) : zero;
  const own = mixes.flatMap((_, m) => (shares[m] ? [m] : []));
  const lasts = t.figure('lasts', componentLasts, {
    needed: own.map((m) => needed[m] as Known<'m³'>),
    shares: own.map((m) => shares[m] as Known<'1'>),
    kits: own.map((m) => byKits[m] as Known<'m³'>),
    loose,
    total,
  });
  const drawn = own.flatMap((m) => {
    const volume = needed[m] as Known<'m³'>;
    const made = byKits[m] as Known<'m³'>;
    if (volume.value <= made.value) return [];
    const mix = mixes[m] as MixOnSale;
    const beyond =
      made.value === 0
        ? volume
        : t.figure(`${mix.id}.beyond-kits`, componentLeft, {
            counts: [one(t, `${mix.id}.one`)],
            volumes: [volume],
            used: made,
          });
    return [
      t.figure(`${mix.id}.loose`, componentVolume, {
        mixed: beyond,
        share: shares[m] as Known<'1'>,
      }),
    ];
  });
  const used = drawn.length > 0 ? t.figure('drawn', totalVolume, { volumes: drawn }) : zero;
  return {
    lasts,
    left: t.figure('loose-left', componentLeft, { counts: [one(t, 'one')], volumes: [loose], used }),
    covered: mixes.map((_, m) => {
      const [volume, made] = [needed[m] as Known<'m³'>, byKits[m] as Known<'m³'>];
      return volume.value >= made.value ? volume : made;
    }),
    shares,
  };
}

const one = (trace: Trace, name: string): Known<'1'> =>
  trace.given(name, { value: 1, unit: '1', origin: 'chosen', shows: 'count' });

const isWhole = (offered: JointOffer['packs'], pack: PackOnSale): boolean =>
  offered.find(({ id }) => id === pack.id)?.whole ?? false;

/** What is left of a component in all packs, kits and loose together. */
function leftOf(
  trace: Trace,
  { mixes }: JointOffer,
  packs: Packs,
  needed: readonly Known<'m³'>[],
  component: string,
): Figure<'m³'> {
  const volumes = mixes.flatMap(({ id, shares }, m) => {
    const share = shares.find((s) => s.component === component)?.share;
    return share
      ? [trace.figure(`${component}.${id}.used`, componentVolume, { mixed: needed[m] as Known<'m³'>, share })]
      : [];
  });
  const used = trace.figure(`${component}.used`, totalVolume, { volumes });
  const holding = packs.filter(({ pack }) => pack.holds.has(component));
  return trace.figure(`${component}.left`, componentLeft, {
    counts: holding.map(({ count }) => count),
    volumes: holding.map(({ pack }) => pack.holds.get(component) as Known<'m³'>),
    used,
  });
}
