import { z } from 'zod';
import { date, idText, quantity, text, trouble } from './fields.ts';

/** Figures of the place as the firm read them. None ships with the tool: a legal figure needs its document and date. */

export const VOC_BASES = ['less water and exempt', 'as used'] as const;

/** Most VOC a coating of one category may hold there, from a date on. */
export const vocLimit = () =>
  z.strictObject({
    category: text(80),
    limit: quantity('kg/m³', { least: '1 g/L', most: '1200 g/L', shows: 'voc' }),
    /** What the limit is stated per: litres without water and exempt solvent, or litres as they are used. */
    basis: z.enum(VOC_BASES).optional(),
    source: text(200),
    /** In force from this day. */
    date: date(),
    /** Products sold in this category; left out, it holds for all. */
    products: z.array(idText()).max(200).optional(),
  });

/** A solvent that does not count as VOC there, from a date on. */
export const exemptSolvent = () => z.strictObject({ solvent: text(80), source: text(200), date: date() });

/** Coldest and hottest the slab gets in a year, where somebody knows. */
export const season = () => {
  const temperature = () => quantity('°C', { least: '-60 °C', most: '80 °C', shows: 'temperature' });
  return z
    .strictObject({ coldest: temperature(), hottest: temperature(), source: text(120).optional() })
    .superRefine(({ coldest, hottest }, ctx) => {
      if (coldest.value > hottest.value)
        trouble(ctx, { code: 'range-upside-down', value: coldest.typed, limits: [coldest.typed, hottest.typed] });
    });
};

export type VocLimit = z.output<ReturnType<typeof vocLimit>>;
export type ExemptSolvent = z.output<ReturnType<typeof exemptSolvent>>;
