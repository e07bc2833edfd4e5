import type { Thinner } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import { rateFromText } from '../../kernel/money.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField, type OptionContext, productOf } from '../context.ts';
import { packsMake } from '../formulas/quantities-components.ts';
import { VOLUME_GUARD, wholeKits } from '../formulas/quantities-packs.ts';
import { totalVolume, volumeLeft } from '../formulas/quantities-volumes.ts';
import type { BuyingLine } from '../results.ts';
import { certain } from './certain.ts';
import { leastCover } from './covering.ts';
import type { LayerMeasured } from './layer.ts';
import { MONEY_STEPS, STEPS } from './packs.ts';

export interface ThinnersBought {
  readonly lines: readonly BuyingLine[];
  readonly notes: readonly Said[];
}

/** Thinner for all coats that take the same one, in whole tins: least cost where all have a price, else least volume. */
export function buyThinners(ctx: OptionContext, layers: readonly LayerMeasured[], trace: Trace): ThinnersBought {
  const wanted = new Map<string, LayerMeasured[]>();
  const notes: Said[] = [];
  for (const layer of layers) {
    if (!layer.thinnerToBuy) continue;
    const id = thinnerOf(ctx, layer);
    if (id === undefined) {
      const figures = { thinner: layer.thinnerToBuy.id };
      notes.push({ code: 'quantities-thinner-not-sold', figures, names: { layer: layer.quantity.name } });
      continue;
    }
    wanted.set(id, [...(wanted.get(id) ?? []), layer]);
  }
  const lines = [...wanted].map(([id, of]) => {
    const thinner = ctx.catalogue.thinners?.find((one) => one.id === id);
    if (!thinner) throw new Error(`a product names a thinner that the check let through: ${id}`);
    return lineOf(ctx, thinner, of, trace.within(id));
  });
  return { lines, notes };
}

function thinnerOf(ctx: OptionContext, layer: LayerMeasured): string | undefined {
  const found = ctx.system.layers.find((one) => one.id === layer.quantity.layer);
  return found && productOf(ctx, found).thinner?.thinner;
}

function lineOf(ctx: OptionContext, thinner: Thinner, layers: readonly LayerMeasured[], t: Trace): BuyingLine {
  const needed = t.figure('needed', totalVolume, {
    volumes: layers.flatMap(({ thinnerToBuy }) => thinnerToBuy ?? []),
  });
  const packs = thinner.packs.map((pack) => ({
    id: pack.id,
    each: givenField(t, `${pack.id}.volume`, pack.volume, 'data sheet'),
  }));
  const counted = countsOf(ctx, thinner, packs, needed, t).filter(({ count }) => count.value > 0);
  const bought = t.figure('bought', packsMake, {
    counts: counted.map(({ count }) => count),
    makes: counted.map(({ each }) => each),
  });
  return {
    kind: 'thinner',
    item: thinner.id,
    name: thinner.name,
    layers: layers.map(({ quantity }) => quantity.layer),
    needed,
    packs: counted.map(({ id, count }) => ({ pack: id, count })),
    bought,
    left: t.figure('left', volumeLeft, { held: bought, needed }),
  };
}

interface Tin {
  readonly id: string;
  readonly each: Known<'m³'>;
}

function countsOf(
  ctx: OptionContext,
  thinner: Thinner,
  packs: readonly Tin[],
  needed: Known<'m³'>,
  t: Trace,
): readonly (Tin & { readonly count: Known<'1'> })[] {
  const [only] = packs;
  if (only && packs.length === 1) {
    const count = t.figure('count', wholeKits, { needed: certain(needed), each: only.each });
    return [{ ...only, count }];
  }
  const book = ctx.priceBook;
  const prices = packs.map(({ id }) => {
    const line = book?.packs.find((one) => one.product === thinner.id && one.pack === id);
    return line && book ? Math.round(rateFromText(line.price, book.currency) * MONEY_STEPS) : undefined;
  });
  const byPrice = book !== undefined && prices.every((price) => price !== undefined);
  const offered = packs.map(({ each }, i) => {
    const volume = Math.round(each.value * STEPS);
    return { gives: [volume], cost: byPrice ? (prices[i] ?? volume) : volume, volume };
  });
  const cover = leastCover(offered, Math.round(needed.value * STEPS), Math.round(VOLUME_GUARD * STEPS));
  if (!cover) throw new Error(`tins of ${thinner.id} hold nothing that the check let through`);
  const says = byPrice ? 'quantities-packs-by-price' : 'quantities-packs-by-volume';
  return packs.map((pack, i) => ({
    ...pack,
    count: t.given(`${pack.id}.count`, {
      value: cover.counts[i] as number,
      unit: '1',
      origin: 'chosen',
      says,
      shows: 'count',
    }),
  }));
}
