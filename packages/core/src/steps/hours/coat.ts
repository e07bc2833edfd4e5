import type { Layer } from '../../catalogue.ts';
import { tabled } from '../../data/tabled.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type OptionContext, productOf } from '../context.ts';
import type { CoatedArea } from '../quantities/coated-areas.ts';
import type { LayerFit, LayerQuantity } from '../results.ts';
import { batchesOf } from './batches.ts';
import type { TaskList } from './task-list.ts';

/** Works a layer may ask for in the catalogue, beside what follows from its film and its broadcast. */
export const LAYER_WORKS = ['screen-first', 'roll-only'] as const;

/** Up to here a coat is rolled only; thicker ones are drawn out with a squeegee and rolled back. */
const THIN = tabled('0.15 mm', 'm');
/** Films are compared in tenths of a micrometre. */
const isThin = (wet: number): boolean => Math.round(wet * 1e7) <= Math.round(THIN * 1e7);

/** From here on what is thrown is grain, not flake: about 0.6 kg/m² is flake to refusal, 2 kg/m² quartz. An assumption. */
const GRAIN_FROM = tabled('1.2 kg/m²', 'kg/m²');
export const broadcastWork = (thrown: number): 'broadcast-flake' | 'broadcast-quartz' =>
  thrown < GRAIN_FROM ? 'broadcast-flake' : 'broadcast-quartz';

export interface CoatFacts {
  readonly layer: Layer;
  /** The layer before, where there is one. */
  readonly below: Layer | undefined;
  readonly fit: LayerFit | undefined;
  readonly quantity: LayerQuantity | undefined;
  readonly areas: readonly CoatedArea[];
  /** How many times longer over a broadcast. */
  readonly slower: Known<'1'> | undefined;
}

/** Stem walls, coves and steps that a layer goes up, each along its length. */
function verticals(list: TaskList, facts: CoatFacts, area: CoatedArea, after: readonly string[]): readonly string[] {
  const { layer, slower } = facts;
  if (!layer.verticals) return [];
  const grain = layer.broadcast?.verticals === true;
  const rough = slower && facts.below?.broadcast?.verticals === true ? { slower } : {};
  return area.verticals.map(({ id, length }) => {
    const place = { on: [layer.id, area.measure.id, id], area: area.measure.id, layer: layer.id, after };
    return grain ? list.length('stem-coat', place, length) : list.length('stem-roll', { ...place, ...rough }, length);
  });
}

/** One area of one coat: edges cut in, the coat drawn out and rolled, walls, grain. Gives the ids it ends with. */
function onArea(list: TaskList, facts: CoatFacts, area: CoatedArea, after: readonly string[]): readonly string[] {
  const { layer, below, fit, slower } = facts;
  const { id, net, edge } = area.measure;
  const rough = slower && below?.broadcast ? { slower } : {};
  const place = (waits: readonly string[]) => ({
    on: [layer.id, id],
    area: id,
    layer: layer.id,
    after: waits,
    ...rough,
  });
  const done = [list.length('cut-in', place(after), edge)];
  const thin = layer.work === 'roll-only' || (fit !== undefined && isThin(fit.wet.value));
  let rolled: string;
  if (thin) rolled = list.area('roll-thin', place(after), net);
  else rolled = list.area('back-roll', place([list.area('squeegee', place(after), net)]), net);
  done.push(rolled, ...verticals(list, facts, area, after));
  if (!layer.broadcast) return done;
  const work = broadcastWork(layer.broadcast.thrown.value);
  // Grain is thrown into wet resin: it starts behind the roller, not after the coat.
  done.push(list.area(work, { on: [layer.id, id], area: id, layer: layer.id, after: [rolled] }, net));
  return done;
}

/** Tasks of one coat over all areas, with what must come before it and what clears it up. Gives the ids it ends with. */
export function coatTasks(
  ctx: OptionContext,
  trace: Trace,
  list: TaskList,
  facts: CoatFacts,
  before: readonly string[],
): readonly string[] {
  const { layer, areas, quantity } = facts;
  let ready = before;
  const each = (work: 'screen' | 'scrape', after: readonly string[]): readonly string[] =>
    areas.map(({ measure: { id, net } }) =>
      list.area(work, { on: [layer.id, id], area: id, layer: layer.id, after }, net),
    );
  if (layer.work === 'screen-first' && areas.length > 0) ready = each('screen', ready);
  const mixed: string[] = [];
  if (quantity) {
    const { count, row } = batchesOf(trace.within('coat').within(layer.id), productOf(ctx, layer), quantity);
    mixed.push(list.count('mix', { on: [layer.id], layer: layer.id, after: ready }, count, row));
  }
  const waits = mixed.length > 0 ? mixed : ready;
  const laid = areas.flatMap((area) => onArea(list, facts, area, waits));
  const ends = laid.length > 0 ? laid : waits;
  return layer.broadcast?.toRefusal ? each('scrape', ends) : ends;
}
