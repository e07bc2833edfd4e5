import type { Layer, Product } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { dryFilmFromWet, solidsAfterThinning, wetFilmFromDry } from '../../science/film/index.ts';
import { givenFact, givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import type { Coat } from './coat.ts';

/**
 * Films of one coat. A layer names its film wet or dry; the other follows from the solids. Thinner leaves with the
 * solvent, so the same dry film needs a higher wet gauge: the target the crew reads is the thinned one.
 */
export function coatOf(ctx: OptionContext, layer: Layer, climbs: boolean, trace: Trace): Coat {
  const t = trace.within(layer.id);
  const product = productOf(ctx, layer);
  const sheet = sheetOf(product);
  const pure = givenFact(t, 'volume-solids', product.volumeSolids, { where: sheet });
  const ratio = thinnerOf(ctx, layer, product, t);
  const solids = ratio ? t.figure('solids', solidsAfterThinning, { volumeSolids: pure, thinnerRatio: ratio }) : pure;

  const { wet, dry } = films(t, layer, pure, solids, ratio);
  const vertical =
    layer.wetFilmVertical && climbs ? verticalFilm(t, layer.wetFilmVertical, pure, solids, ratio) : undefined;
  return {
    layer,
    product,
    name: layer.name ?? product.name,
    sheet,
    trace: t,
    wet,
    dry,
    ...(vertical ? { wetVertical: vertical } : {}),
    solids,
    ...(ratio ? { thinnerRatio: ratio } : {}),
    climbs,
  };
}

/** Wet and dry film of the floor, the one that is stated as a Given and the other computed from it. */
function films(
  t: Trace,
  layer: Layer,
  pure: Known<'1'>,
  solids: Known<'1'>,
  ratio: Known<'1'> | undefined,
): { readonly wet: Known<'m'>; readonly dry: Known<'m'> } {
  if (layer.dryFilm) {
    const dry = givenFact(t, 'dry', layer.dryFilm);
    return { dry, wet: t.figure('wet', wetFilmFromDry, { dryFilm: dry, volumeSolids: solids }) };
  }
  if (!layer.wetFilm) throw new Error(`layer ${layer.id} has no film, which the check let through`);
  const stated = givenFact(t, ratio ? 'wet-unthinned' : 'wet', layer.wetFilm);
  const dry = t.figure('dry', dryFilmFromWet, { wetFilm: stated, volumeSolids: pure });
  return { dry, wet: ratio ? t.figure('wet', wetFilmFromDry, { dryFilm: dry, volumeSolids: solids }) : stated };
}

function verticalFilm(
  t: Trace,
  stated: NonNullable<Layer['wetFilmVertical']>,
  pure: Known<'1'>,
  solids: Known<'1'>,
  ratio: Known<'1'> | undefined,
): Known<'m'> {
  if (!ratio) return givenFact(t, 'wet-vertical', stated);
  const unthinned = givenFact(t, 'wet-vertical-unthinned', stated);
  const dry = t.figure('dry-vertical', dryFilmFromWet, { wetFilm: unthinned, volumeSolids: pure });
  return t.figure('wet-vertical', wetFilmFromDry, { dryFilm: dry, volumeSolids: solids });
}

/** Thinner chosen for this layer in this option; none of it is the same as no entry. */
function thinnerOf(ctx: OptionContext, layer: Layer, product: Product, t: Trace): Known<'1'> | undefined {
  const chosen = ctx.option.thinner?.find((one) => one.layer === layer.id);
  if (!chosen || chosen.ratio.value === 0) return undefined;
  const where = product.thinner?.name;
  return givenField(t, 'thinner-ratio', chosen.ratio, 'chosen', where ? { where } : {});
}
