import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type OptionContext, productOf } from '../context.ts';
import type { BuyingLine } from '../results.ts';
import type { LayerMeasured } from './layer.ts';
import { buyTins } from './tins.ts';

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
    return buyTins(
      ctx,
      {
        kind: 'thinner',
        sold: thinner,
        volumes: of.flatMap(({ thinnerToBuy }) => thinnerToBuy ?? []),
        layers: of.map(({ quantity }) => quantity.layer),
      },
      trace.within(id),
    );
  });
  return { lines, notes };
}

function thinnerOf(ctx: OptionContext, layer: LayerMeasured): string | undefined {
  const found = ctx.system.layers.find((one) => one.id === layer.quantity.layer);
  return found && productOf(ctx, found).thinner?.thinner;
}
