import type { Figure, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext } from '../context.ts';
import { rateAtBreak } from '../formulas/quantities-breaks.ts';
import { totalMass } from '../formulas/quantities-broadcast.ts';
import { bagsHold, countBeside, wholeBags } from '../formulas/quantities-packs.ts';
import { massLeft } from '../formulas/quantities-volumes.ts';
import type { BuyingLine } from '../results.ts';
import type { BroadcastMeasured } from './broadcast.ts';
import { certain } from './certain.ts';

/** Share of a broadcast to refusal that is kept in hand, else bare spots stay: common practice, no source. */
const IN_HAND = 0.15;
/** A rate of throwing is believed to within its own size (common practice, no source). */
const RATE_FACTOR = 2;

export interface MediaBought {
  readonly line: BuyingLine;
  readonly notes: readonly Said[];
}

/** Bags of flake or quartz for all coats it is thrown on. What is swept up is not counted on again. */
export function buyMedia(
  ctx: OptionContext,
  broadcast: readonly BroadcastMeasured[],
  trace: Trace,
): readonly MediaBought[] {
  const ids = [...new Set(broadcast.map((one) => one.quantity.media))];
  return ids.map((id): MediaBought => {
    const media = ctx.catalogue.media?.find((one) => one.id === id);
    if (!media) throw new Error(`a broadcast names a material that the check let through: ${id}`);
    const t = trace.within(id);
    const thrown = broadcast.filter((one) => one.quantity.media === id);
    const needed = t.figure('needed', totalMass, { masses: thrown.map((one) => one.quantity.thrown) });
    const each = givenFact(t, 'bag', media.bag);
    const count: Known<'1'> = t.figure('count', wholeBags, { needed: certain(needed), each });
    const bought = t.figure('bought', bagsHold, { count, each });
    const left = t.figure('left', massLeft, { held: bought, needed });
    const [only] = thrown;
    const turns = only && thrown.length === 1 ? turnsOf(t, only.rate, needed, bought, count) : undefined;
    const tight = thrown.some((one) => one.toRefusal) && left.value < IN_HAND * needed.value;
    return {
      line: {
        kind: 'media',
        item: id,
        name: media.name,
        layers: thrown.map((one) => one.quantity.layer),
        needed,
        packs: [{ pack: 'bag', count }],
        bought,
        left,
        ...(turns ? { turns } : {}),
      },
      notes: tight
        ? [
            {
              code: 'quantities-broadcast-tight',
              figures: { bought: bought.id, left: left.id },
              names: { media: media.name },
            },
          ]
        : [],
    };
  });
}

/** The rate of throwing at which another bag is opened, where such a rate is believable. */
function turnsOf(
  trace: Trace,
  rate: Known<'kg/m²'>,
  needed: Figure<'kg'>,
  held: Figure<'kg'>,
  count: Known<'1'>,
): Said | undefined {
  const most = Math.max(rate.value * RATE_FACTOR, rate.band?.[1] ?? 0);
  if (needed.value <= 0 || (rate.value * held.value) / needed.value > most) return undefined;
  const t = trace.within('turns');
  const at = t.figure('turn', rateAtBreak, { rate, held, needed });
  const change = t.given('change', { value: 1, unit: '1', origin: 'chosen', shows: 'count' });
  const other = t.figure('other', countBeside, { count, change });
  const figures = { count: count.id, other: other.id, at: at.id, value: rate.id };
  return { code: 'quantities-turns-thrown-up', figures };
}
