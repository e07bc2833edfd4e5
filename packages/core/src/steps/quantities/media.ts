import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext } from '../context.ts';
import { totalMass } from '../formulas/quantities-broadcast.ts';
import { bagsHold, wholeBags } from '../formulas/quantities-packs.ts';
import { massLeft } from '../formulas/quantities-volumes.ts';
import type { BroadcastQuantity, BuyingLine } from '../results.ts';
import { certain } from './certain.ts';

/** Bags of flake or quartz for all coats it is thrown on. What is swept up is not counted on again. */
export function buyMedia(
  ctx: OptionContext,
  broadcast: readonly BroadcastQuantity[],
  trace: Trace,
): readonly BuyingLine[] {
  const ids = [...new Set(broadcast.map((one) => one.media))];
  return ids.map((id): BuyingLine => {
    const media = ctx.catalogue.media?.find((one) => one.id === id);
    if (!media) throw new Error(`a broadcast names a material that the check let through: ${id}`);
    const t = trace.within(id);
    const thrown = broadcast.filter((one) => one.media === id);
    const needed = t.figure('needed', totalMass, { masses: thrown.map((one) => one.thrown) });
    const each = givenFact(t, 'bag', media.bag);
    const count: Known<'1'> = t.figure('count', wholeBags, { needed: certain(needed), each });
    const bought = t.figure('bought', bagsHold, { count, each });
    return {
      kind: 'media',
      item: id,
      name: media.name,
      layers: thrown.map((one) => one.layer),
      needed,
      packs: [{ pack: 'bag', count }],
      bought,
      left: t.figure('left', massLeft, { held: bought, needed }),
    };
  });
}
