import type { Layer } from '../../catalogue.ts';
import type { Figure, FigureList, Given, Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { batchSplit } from '../../science/mix/index.ts';
import { givenFact, givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import { componentMass, componentVolume } from '../formulas/quantities-components.ts';
import {
  filmBeforeThinning,
  neededVolume,
  thinnerVolume,
  totalVolume,
  withReserve,
} from '../formulas/quantities-volumes.ts';
import type { LayerFit, LayerQuantity, PreparationPlan } from '../results.ts';
import { type CoatedArea, coveLayer, sumOfAreas } from './coated-areas.ts';
import { consumptionOf } from './consumption.ts';
import { type LayerAreaMeasured, layerOnArea } from './layer-area.ts';
import { mixShares } from './mix-shares.ts';

/** One coat with what later sums need beside the published quantities. */
export interface LayerMeasured {
  readonly quantity: LayerQuantity;
  /** The further mix it takes; absent for the first mix of its product. */
  readonly mix?: string;
  readonly areas: readonly LayerAreaMeasured[];
  /** Film on floor and verticals alone: what a count that forgets profile and texture sees. */
  readonly film: Figure<'m³'>;
  /** Needed and reserve. */
  readonly toBuy: Figure<'m³'>;
  readonly reserve?: Given<'1'>;
  readonly surplus?: Given<'1'>;
  readonly loss?: Given<'1'>;
  readonly texture?: { readonly depth: Given<'m'>; readonly area: Known<'m²'> };
  /** The profile that takes most, where several areas differ. */
  readonly profile?: { readonly depth: Known<'m'>; readonly area: Known<'m²'> };
  /** Thinner for all that is bought, the reserve included. */
  readonly thinnerToBuy?: Figure<'m³'>;
  readonly notes: readonly Said[];
  readonly missing: readonly Missing[];
  readonly reasons: readonly Reason[];
}

export function layerQuantity(
  ctx: OptionContext,
  layer: Layer,
  fit: LayerFit,
  areas: readonly CoatedArea[],
  prepared: PreparationPlan,
  trace: Trace,
): LayerMeasured {
  const t = trace.within(layer.id);
  const product = productOf(ctx, layer);
  const name = layer.name ?? product.name;
  const ratio = fit.thinnerRatio;
  const outOfPail = (wet: Known<'m'>, called: string): Known<'m'> =>
    ratio ? t.figure(called, filmBeforeThinning, { wetFilm: wet, thinnerRatio: ratio }) : wet;
  const film = outOfPail(fit.wet, 'film');
  const said = consumptionOf(t, product, name, film);
  const texture = layer.textureDepth ? givenFact(t, 'texture-depth', layer.textureDepth) : undefined;
  const porosity = layer.porosity ? givenFact(t, 'porosity-depth', layer.porosity) : undefined;
  const facts = {
    layer,
    film,
    filmVertical: fit.wetVertical ? outOfPail(fit.wetVertical, 'film-vertical') : film,
    ...(texture ? { texture } : {}),
    ...(porosity ? { porosity } : {}),
    ...(said.consumption ? { consumption: said.consumption } : {}),
    fillsCoves: coveLayer(ctx.system.layers)?.id === layer.id,
  };

  const measured = areas.map((area) => layerOnArea(t, facts, area, prepared.profileDepth[area.measure.id]));
  const net = t.figure('net', totalVolume, { volumes: measured.flatMap((one) => one.parts) });
  const floor = sumOfAreas(
    t,
    'floor',
    areas.map((area) => area.measure.net),
  );
  const profile = deepest(measured, areas, prepared);
  const flat = t.figure('film-alone', totalVolume, {
    volumes: measured.flatMap(({ quantity }) => [quantity.film, ...(quantity.verticals ? [quantity.verticals] : [])]),
  });
  const surplus = layer.surplus ? givenFact(t, 'surplus', layer.surplus) : undefined;
  const lossCounted = said.consumption?.includes.includes('loss') ?? false;
  const loss = layer.loss && !lossCounted ? givenFact(t, 'loss', layer.loss) : undefined;
  const needed = t.figure('needed', neededVolume, {
    net,
    ...(surplus ? { surplus } : {}),
    ...(loss ? { loss } : {}),
  });
  const reserve = layer.reserve ? givenFact(t, 'reserve', layer.reserve) : undefined;
  const toBuy = reserve ? t.figure('to-buy', withReserve, { needed, reserve }) : needed;
  const batches = batchesOf(t, layer, ctx, needed);
  const components = mixShares(t, product).map(({ component, share }) => {
    const volume = t.figure(`${component}.volume`, componentVolume, { mixed: needed, share });
    const density = product.components.find((c) => c.id === component)?.density;
    if (!density) return { component, volume };
    const given = givenFact(t, `${component}.density`, density, { where: sheetOf(product) });
    return { component, volume, mass: t.figure(`${component}.mass`, componentMass, { volume, density: given }) };
  });
  const thinner = ratio ? t.figure('thinner', thinnerVolume, { coating: needed, thinnerRatio: ratio }) : undefined;
  const thinnerToBuy =
    ratio && reserve
      ? t.figure('thinner-to-buy', thinnerVolume, { coating: toBuy as Figure<'m³'>, thinnerRatio: ratio })
      : thinner;

  return {
    quantity: {
      layer: layer.id,
      product: product.id,
      name,
      areas: measured.map((one) => one.quantity),
      net,
      needed,
      ...(thinner ? { thinner } : {}),
      components,
      ...(batches.list ? { batches: batches.list } : {}),
    },
    ...(layer.mix === undefined ? {} : { mix: layer.mix }),
    areas: measured,
    film: flat,
    toBuy,
    ...(reserve ? { reserve } : {}),
    ...(surplus ? { surplus } : {}),
    ...(loss ? { loss } : {}),
    ...(texture && floor && measured.some((one) => one.quantity.texture)
      ? { texture: { depth: texture, area: floor } }
      : {}),
    ...(profile ? { profile } : {}),
    ...(thinnerToBuy ? { thinnerToBuy } : {}),
    notes: [
      ...said.notes,
      ...batches.notes,
      ...coveNote(facts.fillsCoves, areas, name),
      ...(reserve ? [{ code: 'quantities-reserve', figures: { reserve: reserve.id }, names: { layer: name } }] : []),
      ...(thinner ? [{ code: 'quantities-thinner', figures: { thinner: thinner.id }, names: { layer: name } }] : []),
    ],
    missing: missingOf(ctx, layer, name, areas, prepared, lossCounted),
    reasons: said.reasons,
  };
}

/** The area whose profile takes the most coating of this coat. */
function deepest(
  measured: readonly LayerAreaMeasured[],
  areas: readonly CoatedArea[],
  prepared: PreparationPlan,
): { readonly depth: Known<'m'>; readonly area: Known<'m²'> } | undefined {
  let found: { readonly depth: Known<'m'>; readonly area: Known<'m²'> } | undefined;
  let most = 0;
  measured.forEach(({ quantity, coated }, i) => {
    const depth = prepared.profileDepth[areas[i]?.measure.id ?? ''];
    const volume = quantity.profile?.value ?? 0;
    if (!depth || volume <= most) return;
    most = volume;
    found = { depth, area: coated };
  });
  return found;
}

function coveNote(fills: boolean, areas: readonly CoatedArea[], layer: string): readonly Said[] {
  const coved = areas.some((area) => area.verticals.some((v) => v.fill));
  return fills && coved ? [{ code: 'quantities-cove-fill', names: { layer } }] : [];
}

interface Batches {
  readonly list?: FigureList<'m³'>;
  readonly notes: readonly Said[];
}

function batchesOf(trace: Trace, layer: Layer, ctx: OptionContext, needed: Figure<'m³'>): Batches {
  const product = productOf(ctx, layer);
  if (!product.largestBatch || needed.value === 0) return { notes: [] };
  const where = sheetOf(product);
  const largestBatch = givenField(trace, 'largest-batch', product.largestBatch, 'data sheet', { where });
  const smallestBatch = product.smallestBatch
    ? givenField(trace, 'smallest-batch', product.smallestBatch, 'data sheet', { where })
    : trace.given('smallest-batch', { value: 0, unit: 'm³', origin: 'assumed', shows: 'volume' });
  try {
    const list = trace.list('batches', batchSplit, { totalVolume: needed, largestBatch, smallestBatch });
    return { list, notes: [] };
  } catch (trouble) {
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    return {
      notes: [
        {
          code: 'quantities-no-batches',
          figures: { needed: needed.id, largest: largestBatch.id, smallest: smallestBatch.id },
          names: { layer: layer.name ?? product.name },
        },
      ],
    };
  }
}

function missingOf(
  ctx: OptionContext,
  layer: Layer,
  name: string,
  areas: readonly CoatedArea[],
  prepared: PreparationPlan,
  lossCounted: boolean,
): readonly Missing[] {
  const at = `catalogue.systems.${ctx.system.id}.layers.${layer.id}`;
  const found: Missing[] = [];
  if (!layer.surplus && !layer.loss && !lossCounted) {
    found.push({
      path: `${at}.surplus`,
      fact: { code: 'quantities-surplus-missing', names: { layer: name } },
      changes: { code: 'quantities-surplus-changes', names: { layer: name } },
      meanwhile: 'assumed',
    });
  }
  if (layer.onConcrete) {
    for (const { measure } of areas) {
      if (prepared.profileDepth[measure.id]) continue;
      found.push({
        path: `areas.${measure.id}.profileDepth`,
        fact: { code: 'quantities-profile-missing', names: { area: measure.name } },
        changes: { code: 'quantities-profile-changes', names: { layer: name } },
        meanwhile: 'assumed',
      });
    }
  }
  return found;
}
