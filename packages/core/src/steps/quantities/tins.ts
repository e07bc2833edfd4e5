import type { Filler, Thinner } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import { rateFromText } from '../../kernel/money.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField, type OptionContext } from '../context.ts';
import { packsMake } from '../formulas/quantities-components.ts';
import { VOLUME_GUARD, wholeKits } from '../formulas/quantities-packs.ts';
import { totalVolume, volumeLeft } from '../formulas/quantities-volumes.ts';
import type { BuyingLine } from '../results.ts';
import { certain } from './certain.ts';
import { leastCover } from './covering.ts';
import { MONEY_STEPS, STEPS } from './packs.ts';

type Sold = Pick<Thinner | Filler, 'id' | 'name' | 'packs'>;

/** One thing sold by volume, and all volumes it is needed in. */
export interface Wanted {
  readonly kind: 'thinner' | 'filler';
  readonly sold: Sold;
  readonly volumes: readonly Known<'m³'>[];
  readonly layers: readonly string[];
}

/** Whole tins of what needs no mixing by us: least cost where all have a price, else least volume. */
export function buyTins(ctx: OptionContext, { kind, sold, volumes, layers }: Wanted, t: Trace): BuyingLine {
  const needed = t.figure('needed', totalVolume, { volumes });
  const packs = sold.packs.map((pack) => ({
    id: pack.id,
    each: givenField(t, `${pack.id}.volume`, pack.volume, 'data sheet'),
  }));
  const counted = countsOf(ctx, sold, packs, needed, t).filter(({ count }) => count.value > 0);
  const bought = t.figure('bought', packsMake, {
    counts: counted.map(({ count }) => count),
    makes: counted.map(({ each }) => each),
  });
  return {
    kind,
    item: sold.id,
    name: sold.name,
    layers,
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
  sold: Sold,
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
    const line = book?.packs.find((one) => one.product === sold.id && one.pack === id);
    return line && book ? Math.round(rateFromText(line.price, book.currency) * MONEY_STEPS) : undefined;
  });
  const byPrice = book !== undefined && prices.every((price) => price !== undefined);
  const offered = packs.map(({ each }, i) => {
    const volume = Math.round(each.value * STEPS);
    return { gives: [volume], cost: byPrice ? (prices[i] ?? volume) : volume, volume };
  });
  const cover = leastCover(offered, Math.round(needed.value * STEPS), Math.round(VOLUME_GUARD * STEPS));
  if (!cover) throw new Error(`tins of ${sold.id} hold nothing that the check let through`);
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
