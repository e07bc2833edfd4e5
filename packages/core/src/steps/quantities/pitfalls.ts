import type { Product } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { neededVolume, totalVolume, volumeLeft } from '../formulas/quantities-volumes.ts';
import type { LayerMeasured } from './layer.ts';
import type { Chosen } from './packs.ts';

type Counted = Pick<Chosen, 'packs' | 'makes'>;

/** Packs for what the film of each coat alone would take, their sum beside it. */
export type ChooseByFilm = (trace: Trace, byLayer: readonly Known<'m³'>[], total: Known<'m³'>) => Counted | undefined;

/** Share of what is needed from which left-over packs are worth a word: common practice, no source. */
const MUCH_LEFT = 0.1;

/**
 * Known traps of counting litres, with their figures: texture or profile forgotten until the pail runs empty, and the
 * part of a whole kit nobody needs.
 */
export function pitfallsOf(
  trace: Trace,
  product: Product,
  layers: readonly LayerMeasured[],
  choose: ChooseByFilm,
  chosen: Counted,
  needed: Known<'m³'>,
  left: Figure<'m³'>,
): readonly Said[] {
  const found: Said[] = [];
  const forgotten = forgottenTakeUp(trace.within('naive'), layers, choose, chosen, needed);
  if (forgotten) found.push(forgotten);
  if (left.value >= MUCH_LEFT * needed.value) {
    found.push({
      code: 'quantities-pitfall-whole-kits',
      figures: { needed: needed.id, bought: chosen.makes.id, left: left.id },
      names: { product: product.name },
    });
  }
  return found;
}

/** What a count by film alone would have bought, where that runs out. */
function forgottenTakeUp(
  trace: Trace,
  layers: readonly LayerMeasured[],
  choose: ChooseByFilm,
  chosen: Counted,
  needed: Known<'m³'>,
): Said | undefined {
  const parts = (of: 'texture' | 'profile'): readonly Figure<'m³'>[] =>
    layers.flatMap((layer) => layer.quantity.areas.flatMap((area) => area[of] ?? []));
  const sum = (volumes: readonly Figure<'m³'>[]): number => volumes.reduce((total, v) => total + v.value, 0);
  const [texture, profile] = [parts('texture'), parts('profile')];
  if (texture.length + profile.length === 0) return undefined;

  const volumes = layers.map((layer) =>
    trace.within(layer.quantity.layer).figure('needed', neededVolume, {
      net: layer.film,
      ...(layer.surplus ? { surplus: layer.surplus } : {}),
      ...(layer.loss ? { loss: layer.loss } : {}),
    }),
  );
  const film = trace.figure('film', totalVolume, { volumes: layers.map((layer) => layer.film) });
  const naive = trace.figure('needed', totalVolume, { volumes });
  const bought = choose(trace, volumes, naive);
  if (!bought || bought.makes.value >= needed.value) return undefined;
  const count = (choice: Counted): Known<'1'> => {
    const [only] = choice.packs;
    if (only && choice.packs.length === 1) return only.count;
    const value = choice.packs.reduce((total, one) => total + one.count.value, 0);
    const name = choice === bought ? 'packs' : 'packs-bought';
    return trace.given(name, { value, unit: '1', origin: 'chosen', shows: 'count' });
  };
  const takes = sum(texture) >= sum(profile) ? texture : profile;
  const layer = layers.find((one) =>
    one.quantity.areas.some((area) => takes.some((t) => t === area.texture || t === area.profile)),
  );
  return {
    code: takes === texture ? 'quantities-pitfall-texture' : 'quantities-pitfall-profile',
    figures: {
      film: film.id,
      naive: naive.id,
      naiveCount: count(bought).id,
      count: count(chosen).id,
      short: trace.figure('short', volumeLeft, { held: needed, needed: bought.makes }).id,
      takes: trace.figure('forgotten', totalVolume, { volumes: takes }).id,
    },
    names: { layer: layer?.quantity.name ?? '' },
  };
}
