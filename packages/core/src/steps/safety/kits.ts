import type { Trace } from '../../kernel/trace.ts';
import { givenFact, givenField, type OptionContext, sheetOf } from '../context.ts';
import { totalMass } from '../formulas/quantities-broadcast.ts';
import { componentMass } from '../formulas/quantities-components.ts';
import type { QuantitiesPlan, SafetyPlan } from '../results.ts';

/** What one bought pack weighs, where the sheet states the density of each part in it; its tins are not counted. */
export function kitMasses(ctx: OptionContext, quantified: QuantitiesPlan, trace: Trace): SafetyPlan['kits'] {
  return quantified.buying.flatMap((line) => {
    const product = line.kind === 'product' ? ctx.products.get(line.item) : undefined;
    if (!product) return [];
    const where = sheetOf(product);
    return line.packs.flatMap(({ pack: id }) => {
      const pack = product.packs.find((one) => one.id === id);
      const parts = (pack?.parts ?? []).map((part) => ({
        part,
        density: product.components.find((one) => one.id === part.component)?.density,
      }));
      if (!pack || parts.some(({ density }) => !density)) return [];
      const t = trace.within('kit').within(product.id).within(id);
      const masses = parts.flatMap(({ part, density }, i) =>
        density
          ? [
              t.figure(`${i}.mass`, componentMass, {
                volume: givenField(t, `${i}.volume`, part.volume, 'data sheet', { where }),
                density: givenFact(t, `${i}.density`, density, { where }),
              }),
            ]
          : [],
      );
      return [
        {
          product: product.id,
          name: product.name,
          pack: pack.name ?? id,
          mass: t.figure('mass', totalMass, { masses }),
        },
      ];
    });
  });
}
