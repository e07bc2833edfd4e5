import type { Filler, Thinner } from '../catalogue.ts';
import type { Published } from '../plan.ts';
import type { BuyingLine } from '../steps/results.ts';
import { type PaperContext, productOf, say } from './context.ts';
import type { Content } from './paper.ts';

/** What one bag holds, as the entry the bags bought were counted with. */
function bagOf(ctx: PaperContext, line: Published<BuyingLine>): string | undefined {
  const bought = ctx.plan.entries[line.bought];
  const each = bought?.kind === 'figure' ? bought.inputs.each : undefined;
  return typeof each === 'string' ? each : undefined;
}

function thinnerOf(ctx: PaperContext, id: string): Thinner {
  const found = ctx.catalogue.thinners?.find((one) => one.id === id);
  if (!found) throw new Error(`the plan names a thinner that the catalogue does not hold: ${id}`);
  return found;
}

function fillerOf(ctx: PaperContext, id: string): Filler {
  const found = ctx.catalogue.fillers?.find((one) => one.id === id);
  if (!found) throw new Error(`the plan names a filler that the catalogue does not hold: ${id}`);
  return found;
}

function soldIn(ctx: PaperContext, { kind, item }: Published<BuyingLine>) {
  if (kind === 'thinner') return thinnerOf(ctx, item).packs;
  return kind === 'filler' ? fillerOf(ctx, item).packs : productOf(ctx, item).packs;
}

/** `3 × 2 gal kit`, `2 × bag of 40 lb`: what is carried to the till, one content for each size of pack. */
export function packsSaid(ctx: PaperContext, line: Published<BuyingLine>): readonly Content[] {
  if (line.kind === 'media') {
    const bag = bagOf(ctx, line);
    return line.packs.map(({ count }) =>
      bag ? say('buying-bags-of', {}, { count, bag }) : say('buying-bags', {}, { count }),
    );
  }
  const packs: readonly { readonly id: string; readonly name?: string | undefined }[] = soldIn(ctx, line);
  return line.packs.map(({ pack, count }) =>
    say('buying-packs', { pack: packs.find(({ id }) => id === pack)?.name ?? pack }, { count }),
  );
}
