import type { Product } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { asMixed } from '../as-mixed.ts';
import type { OptionContext } from '../context.ts';
import { totalVolume, volumeLeft } from '../formulas/quantities-volumes.ts';
import { additionNotes, type Bought, choiceNotes, noPacks } from './buying-notes.ts';
import { chooseJointly, type JointChosen, type JointOffer, jointCount, jointOfferOf } from './joint.ts';
import type { LayerMeasured } from './layer.ts';
import { mixShares } from './mix-shares.ts';
import { pitfallsOf } from './pitfalls.ts';
import { type Side, turnsOf } from './turns.ts';

/** A hair beyond what the packs make, m³: the next whole millilitre. */
const NEXT = 1e-6;

/** The first mix of a product has no id in the catalogue. */
const FIRST = 'first';

/** What to buy of one product whose coats take several of its mixes: the parts they share are bought once for all. */
export function buyJointly(
  ctx: OptionContext,
  product: Product,
  layers: readonly LayerMeasured[],
  used: readonly (string | undefined)[],
  floor: Known<'m²'>,
  trace: Trace,
): Bought {
  const t = trace.within(product.id);
  const mixes = used.map((id) => ({
    id: id ?? FIRST,
    shares: mixShares(t.within(id ?? FIRST), asMixed(product, id)),
  }));
  const mixOf = (layer: LayerMeasured): number => used.indexOf(layer.mix);
  const offer = jointOfferOf(t, product, mixes, ctx.priceBook);
  /** Volumes of coats summed by mix. */
  const placeOf = layers.map(mixOf);
  const byMix = (at: Trace, volumes: readonly Known<'m³'>[]): readonly Known<'m³'>[] =>
    mixes.map(({ id }, m) =>
      at.figure(`${id}.needed`, totalVolume, { volumes: volumes.filter((_, i) => placeOf[i] === m) }),
    );
  const needs = byMix(
    t,
    layers.map((layer) => layer.toBuy),
  );
  const needed = t.figure('needed', totalVolume, { volumes: needs });
  const counted = [...new Set(mixes.flatMap(({ shares }) => shares.map((s) => s.component)))];
  const notes = additionNotes(product, counted);
  const chosen = chooseJointly(t, offer, needs, needed);
  if (!chosen) return noPacks(product, needed, notes);
  const left = t.figure('left', volumeLeft, { held: chosen.makes, needed });
  const count = countOf(t, chosen);
  const side = sideOf(offer, chosen, needs, needed, mixOf);
  const turns = t.bands ? turnsOf(t, { layers, total: needed, floor }, count, [side]) : undefined;
  return {
    line: {
      kind: 'product',
      item: product.id,
      name: product.name,
      layers: layers.map((layer) => layer.quantity.layer),
      needed,
      packs: chosen.packs.map(({ pack, count: packs }) => ({ pack: pack.id, count: packs })),
      bought: chosen.makes,
      left,
      leftByComponent: chosen.leftByComponent,
      ...(turns ? { turns } : {}),
    },
    notes: [
      ...notes,
      jointNote(product, used),
      ...choiceNotes(product, offer, chosen.proven),
      ...pitfallsOf(
        t,
        product,
        layers,
        (at, volumes, total) => chooseJointly(at, offer, byMix(at, volumes), total),
        chosen,
        needed,
        left,
      ),
    ],
    missing: [],
    reasons: [],
  };
}

/** Which mixes were bought together. */
const jointNote = (product: Product, used: readonly (string | undefined)[]) => ({
  code: 'quantities-bought-jointly',
  names: {
    product: product.name,
    mixes: used.map((id) => (id === undefined ? (product.mixName ?? product.name) : nameOf(product, id))).join(', '),
  },
});

const nameOf = (product: Product, mix: string): string => product.mixes?.find(({ id }) => id === mix)?.name ?? mix;

function countOf(trace: Trace, { packs }: JointChosen): Known<'1'> {
  const value = packs.reduce((sum, { count }) => sum + count.value, 0);
  return trace.given('packs', { value, unit: '1', origin: 'chosen', shows: 'count' });
}

/** Upward only: fewer packs of one part could be made up by more of another. */
function sideOf(
  offer: JointOffer,
  chosen: JointChosen,
  needs: readonly Known<'m³'>[],
  needed: Known<'m³'>,
  mixOf: (layer: LayerMeasured) => number,
): Side {
  return {
    way: 'up',
    words: 'packs',
    capacity: chosen.makes,
    ofLayer: (layer) => ({
      total: needs[mixOf(layer)] as Known<'m³'>,
      capacity: chosen.reaches[mixOf(layer)] as Known<'m³'>,
    }),
    other: (trace, layer) => {
      const grown = needs.map(({ value }, m) =>
        layer
          ? m === mixOf(layer)
            ? (chosen.reaches[m] as Known<'m³'>).value + NEXT
            : value
          : (value * (chosen.makes.value + NEXT)) / needed.value,
      );
      const value = jointCount(offer, grown);
      if (value === undefined) throw new Error('packs that cover a volume cover a millilitre more');
      return trace.given('other', { value, unit: '1', origin: 'chosen', shows: 'count' });
    },
  };
}
