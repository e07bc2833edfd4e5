import type { Product } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { asMixed } from '../as-mixed.ts';
import { type OptionContext, soldAs } from '../context.ts';
import { componentLeft, componentVolume } from '../formulas/quantities-components.ts';
import { countBeside } from '../formulas/quantities-packs.ts';
import { totalVolume, volumeLeft } from '../formulas/quantities-volumes.ts';
import type { BuyingLine } from '../results.ts';
import { additionNotes, type Bought, choiceNotes, noPacks } from './buying-notes.ts';
import { buyJointly } from './joint-buying.ts';
import type { LayerMeasured } from './layer.ts';
import { mixShares } from './mix-shares.ts';
import { type Chosen, choosePacks, type Offer, offerOf } from './packs.ts';
import { pitfallsOf } from './pitfalls.ts';
import { type Side, turnsOf } from './turns.ts';

/** A hair beyond a capacity, m³: the next whole millilitre. */
const NEXT = 1e-6;

/** What to buy of one product for all coats that use it. */
export function buyProduct(
  ctx: OptionContext,
  product: Product,
  layers: readonly LayerMeasured[],
  floor: Known<'m²'>,
  trace: Trace,
): Bought {
  const mixes = [...new Set(layers.filter(({ toBuy }) => toBuy.value > 0).map(({ mix }) => mix))];
  if (mixes.length > 1) return buyJointly(ctx, product, layers, mixes, floor, trace);
  const t = trace.within(product.id);
  const mixed = asMixed(product, mixes[0] ?? layers[0]?.mix);
  const shares = mixShares(t, mixed);
  const offer = offerOf(t, product, shares, ctx.priceBook);
  const needed = t.figure('needed', totalVolume, { volumes: layers.map((layer) => layer.toBuy) });
  const chosen = choosePacks(t, offer, needed);
  const notes: Said[] = additionNotes(
    product,
    shares.map((s) => s.component),
  );
  if (!chosen) return noPacks(product, needed, notes);
  const left = t.figure('left', volumeLeft, { held: chosen.makes, needed });
  const turns = t.bands
    ? turnsOf(t, { layers, total: needed, floor }, countOf(t, chosen), sidesOf(t, offer, chosen))
    : undefined;
  const leftByComponent = shares.map(({ component, share }) => ({
    component,
    volume: leftOf(t, chosen, component, t.figure(`${component}.used`, componentVolume, { mixed: needed, share })),
  }));
  const line: BuyingLine = {
    kind: 'product',
    item: product.id,
    name: product.name,
    layers: layers.map((layer) => layer.quantity.layer),
    needed,
    packs: chosen.packs.map(({ pack, count }) => ({ pack: pack.id, count })),
    bought: chosen.makes,
    left,
    leftByComponent,
    ...(turns ? { turns } : {}),
  };
  return {
    line,
    notes: [
      ...notes,
      ...choiceNotes(product, offer, chosen.proven),
      ...pitfallsOf(t, product, layers, (n, _, naive) => choosePacks(n, offer, naive), chosen, needed, left),
    ],
    missing: [],
    reasons: [],
  };
}

/** How many packs in all. */
function countOf(trace: Trace, chosen: Chosen): Known<'1'> {
  const [only] = chosen.packs;
  if (only && chosen.packs.length === 1) return only.count;
  const value = chosen.packs.reduce((sum, one) => sum + one.count.value, 0);
  return trace.given('packs', { value, unit: '1', origin: 'chosen', shows: 'count' });
}

/** Up at what the packs make; down only where one kind of kit is on sale, else another kind could make it up. */
function sidesOf(trace: Trace, offer: Offer, chosen: Chosen): readonly Side[] {
  const beside = (value: 1 | -1) => (t: Trace) => {
    const change = t.given('change', { value, unit: '1', origin: 'chosen', shows: 'count' });
    return t.figure('other', countBeside, { count: (chosen.packs[0] as Chosen['packs'][number]).count, change });
  };
  if (!offer.single) {
    return [
      {
        way: 'up',
        capacity: chosen.makes,
        other: (t) => {
          const volume = t.given('beyond', {
            value: chosen.makes.value + NEXT,
            unit: 'm³',
            origin: 'assumed',
            shows: 'volume',
          });
          const more = choosePacks(t, offer, volume);
          if (!more) throw new Error('packs that cover a volume cover a millilitre more');
          return countOf(t, more);
        },
      },
    ];
  }
  const [only] = chosen.packs;
  if (!only || only.count.value < 1) return [];
  const up: Side = { way: 'up', capacity: chosen.makes, other: beside(1) };
  if (only.count.value < 2) return [up];
  const fewer = trace.figure('one-fewer-makes', volumeLeft, {
    held: chosen.makes,
    needed: only.pack.makes[0] as Known<'m³'>,
  });
  return [up, { way: 'down', capacity: fewer, other: beside(-1) }];
}

function leftOf(trace: Trace, chosen: Chosen, component: string, used: Figure<'m³'>): Figure<'m³'> {
  const holding = chosen.packs.filter(({ pack }) => pack.holds.has(component));
  return trace.figure(`${component}.left`, componentLeft, {
    counts: holding.map(({ count }) => count),
    volumes: holding.map(({ pack }) => pack.holds.get(component) as Known<'m³'>),
    used,
  });
}

/** Products in the order in which their first coat is laid. */
export function byProduct(
  ctx: OptionContext,
  layers: readonly LayerMeasured[],
): readonly { readonly product: Product; readonly layers: readonly LayerMeasured[] }[] {
  const groups = new Map<string, LayerMeasured[]>();
  for (const layer of layers) {
    const group = groups.get(layer.quantity.product);
    if (group) group.push(layer);
    else groups.set(layer.quantity.product, [layer]);
  }
  return [...groups.values()].map((group) => {
    const first = group[0] as LayerMeasured;
    const layer = ctx.system.layers.find((one) => one.id === first.quantity.layer);
    if (!layer) throw new Error(`a coat lost its layer ${first.quantity.layer}`);
    return { product: soldAs(ctx, layer), layers: group };
  });
}
