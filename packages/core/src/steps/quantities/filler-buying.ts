import type { Filler } from '../../catalogue.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { fillerFor } from '../cracks/filler.ts';
import type { Handled } from '../cracks/handled.ts';
import { totalVolume } from '../formulas/quantities-volumes.ts';
import type { BuyingLine, CrackPlan } from '../results.ts';
import { buyTins } from './tins.ts';

export interface FillersBought {
  readonly lines: readonly BuyingLine[];
  readonly notes: readonly Said[];
}

/** Filler of all cracks and joints that take the same one, in whole packs; what the catalogue does not sell is said. */
export function buyFillers(ctx: Handled, trace: Trace): FillersBought {
  const wanted = new Map<Filler, CrackPlan[]>();
  const unsold = new Map<string, CrackPlan[]>();
  for (const line of ctx.lines ?? []) {
    if (!line.filler || !line.fillerKind) continue;
    const filler = fillerFor(ctx, line);
    if (filler) wanted.set(filler, [...(wanted.get(filler) ?? []), line]);
    else unsold.set(line.fillerKind, [...(unsold.get(line.fillerKind) ?? []), line]);
  }
  const volumesOf = (lines: readonly CrackPlan[]) => lines.flatMap(({ filler }) => filler ?? []);
  return {
    lines: [...wanted].map(([sold, lines]) =>
      buyTins(ctx, { kind: 'filler', sold, volumes: volumesOf(lines), layers: [] }, trace.within(sold.id)),
    ),
    notes: [...unsold].map(([kind, lines]) => ({
      code: 'quantities-filler-not-sold',
      figures: { filler: trace.figure(`${kind}.not-sold`, totalVolume, { volumes: volumesOf(lines) }).id },
      names: { kind: `@quantities-filler-${kind}` },
    })),
  };
}
