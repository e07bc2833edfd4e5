import table from '../../data/fire-code.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { totalVolume } from '../formulas/quantities-volumes.ts';
import type { QuantitiesPlan } from '../results.ts';

const names = { document: table.document, edition: table.edition, section: table.section };

/**
 * What a fire code may ask of this work, as questions. Amounts stand beside those the code names, with its edition;
 * whether the place has adopted it only the fire official can say.
 */
export function permitSaid(
  ctx: OptionContext,
  quantified: QuantitiesPlan,
  floor: Known<'m²'>,
  trace: Trace,
): readonly Said[] {
  const t = trace.within('permit');
  const said: Said[] = [];
  const twoPart = ctx.system.layers.filter((layer) => productOf(ctx, layer).mix.length > 1).map(({ id }) => id);
  const volumes = quantified.layers.filter(({ layer }) => twoPart.includes(layer)).map(({ needed }) => needed);
  if (volumes.length > 0) {
    const mixed = t.figure('two-part', totalVolume, { volumes });
    const from = t.given('two-part-from', {
      value: tabled(table.twoPart.above, 'm³'),
      unit: 'm³',
      origin: 'table',
      source: table.source,
      typed: table.twoPart.above,
      shows: 'volume',
    });
    const code = mixed.value > from.value ? 'safety-permit-two-part-above' : 'safety-permit-two-part-at-or-below';
    said.push({ code, figures: { mixed: mixed.id, from: from.id }, names });
  }
  const flashes = ctx.system.layers.flatMap((layer) => {
    const product = productOf(ctx, layer);
    return product.flash ? [{ layer, product, flash: product.flash }] : [];
  });
  const seen = new Set<string>();
  for (const { layer, product, flash } of flashes) {
    if (seen.has(product.id)) continue;
    seen.add(product.id);
    const given = givenFact(t, `${product.id}.flash`, flash, { where: sheetOf(product) });
    const layerName = layer.name ?? product.name;
    said.push({ code: 'safety-flash', figures: { flash: given.id }, names: { layer: layerName } });
  }
  if (flashes.length > 0) {
    const from = t.given('area-from', {
      value: tabled(table.flammableArea.above, 'm²'),
      unit: 'm²',
      origin: 'table',
      source: table.source,
      typed: table.flammableArea.above,
      shows: 'area',
    });
    const code = floor.value > from.value ? 'safety-permit-area-above' : 'safety-permit-area-at-or-below';
    said.push({ code, figures: { area: floor.id, from: from.id }, names });
  }
  if (flashes.length < ctx.system.layers.length) said.push({ code: 'safety-flash-not-known' });
  return said;
}
