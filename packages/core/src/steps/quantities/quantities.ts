import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { verdictOf } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import type { Handled } from '../cracks/handled.ts';
import type { PreparationPlan, QuantitiesPlan, SurveyPlan, SystemPlan } from '../results.ts';
import { broadcastOf } from './broadcast.ts';
import { buyProduct, byProduct } from './buying.ts';
import { coatedAreas, sumOfAreas } from './coated-areas.ts';
import { buyFillers } from './filler-buying.ts';
import { layerQuantity } from './layer.ts';
import { buyMedia } from './media.ts';
import { buyThinners } from './thinner-buying.ts';

/** How much of everything: per coat and area, mixed and bought, thrown and kept, with what turns each count. */
export function quantities(
  ctx: Handled,
  surveyed: SurveyPlan,
  prepared: PreparationPlan,
  fitted: SystemPlan,
  trace: Trace,
): QuantitiesPlan {
  const areas = coatedAreas(ctx, surveyed);
  const floors = areas.map((area) => area.measure.net);
  const buying = trace.within('buying');
  const floor = sumOfAreas(trace, 'floor', floors);
  if (!floor) throw new Error(`option ${ctx.option.id} coats an area that the check let through`);

  const layers = ctx.system.layers.map((layer) => {
    const fit = fitted.layers.find((one) => one.layer === layer.id);
    if (!fit) throw new Error(`the system step left out the layer ${layer.id}`);
    return layerQuantity(ctx, layer, fit, areas, prepared, trace);
  });
  const broadcast = ctx.system.layers.flatMap(
    (layer, i) => broadcastOf(ctx, layer, layers[i]?.areas ?? [], floors, trace) ?? [],
  );
  const products = byProduct(ctx, layers).map(({ product, layers: of }) =>
    buyProduct(ctx, product, of, floor as Known<'m²'>, buying),
  );
  const media = buyMedia(ctx, broadcast, buying.within('media'));
  const thinners = buyThinners(ctx, layers, buying.within('thinner'));
  const fillers = buyFillers(ctx, buying.within('filler'));
  const lines = [
    ...products.flatMap((one) => one.line ?? []),
    ...thinners.lines,
    ...media.map((one) => one.line),
    ...fillers.lines,
  ];

  const reasons = [...layers, ...products].flatMap((one) => one.reasons);
  return {
    verdict: verdictOf(reasons, ctx.job.overrides),
    missing: [...layers, ...products].flatMap((one) => one.missing),
    notes: [
      ...[...layers, ...products, ...media].flatMap((one) => one.notes),
      ...thinners.notes,
      ...fillers.notes,
      ...nowhereOnConcrete(ctx),
      ...lotNote(lines.filter(({ kind }) => kind !== 'filler')),
    ],
    layers: layers.map((one) => one.quantity),
    broadcast: broadcast.map((one) => one.quantity),
    buying: lines,
  };
}

/** Shades differ from lot to lot: wherever more than one pack is opened, the lot is worth a word. */
function lotNote(lines: QuantitiesPlan['buying']): readonly Said[] {
  const several = lines.some((line) => line.packs.reduce((sum, pack) => sum + pack.count.value, 0) > 1);
  return several ? [{ code: 'quantities-one-lot' }] : [];
}

/** A system in which no coat lies on concrete counts no profile; on an old coating that is right, else it is forgotten. */
function nowhereOnConcrete(ctx: OptionContext): readonly Said[] {
  const { layers, name } = ctx.system;
  return layers.some((layer) => layer.onConcrete)
    ? []
    : [{ code: 'quantities-no-coat-on-concrete', names: { system: name } }];
}
