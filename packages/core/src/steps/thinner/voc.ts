import type { Product } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { ExemptSolvent, VocLimit } from '../../place.ts';
import { coatingVoc, mostThinner } from '../../science/voc/index.ts';
import { givenFact, givenField } from '../context.ts';
import { thinnedVolume, volatileOfThinned } from '../formulas/system-voc.ts';
import { thinnerShare, vocMass } from '../formulas/thinner.ts';

/** VOC of a coat against the limit of the place, and the most thinner up to it. */
export interface VocOf {
  readonly limit?: Known<'kg/m³'>;
  readonly voc?: Known<'kg/m³'>;
  readonly most?: Figure<'1'>;
  /** No amount of this thinner reaches the limit: it is exempt, or lighter than the limit itself. */
  readonly unbounded: boolean;
  /** What the sheet does not state and the sum needs. */
  readonly lacks?: 'voc' | 'thinner.density';
}

/** An exemption takes a solvent out of the figure less water and exempt solvent, and out of no other. */
export const countsAsExempt = (exempt: ExemptSolvent | undefined, limit: VocLimit | undefined): boolean =>
  exempt !== undefined && limit?.basis !== 'as used';

export function vocOf(
  trace: Trace,
  product: Product,
  sheet: string,
  ratio: Known<'1'> | undefined,
  limit: VocLimit | undefined,
  exempt: ExemptSolvent | undefined,
): VocOf {
  const t = trace.within('voc');
  const known = limit
    ? givenField(t, 'limit', limit.limit, 'chosen', { where: `${limit.category}: ${limit.source}`, when: limit.date })
    : undefined;
  const bounds = known ? { limit: known } : {};
  const leftOut = countsAsExempt(exempt, limit);
  if (!product.voc) return { ...bounds, unbounded: leftOut, lacks: 'voc' };
  const stated = givenFact(t, 'sheet', product.voc, { where: sheet });
  // An exempt thinner adds neither mass nor volume to the figure, so the sheet's own stands.
  if (leftOut) return { ...bounds, voc: stated, unbounded: true };
  const { density } = product.thinner ?? {};
  if (!density) {
    return { ...bounds, ...(ratio ? {} : { voc: stated }), unbounded: false, lacks: 'thinner.density' };
  }
  const thinnerDensity = givenFact(t, 'thinner-density', density, { where: sheet });
  const coating = t.given('coating', { value: 0.001, unit: 'm³', origin: 'chosen', shows: 'volume' });
  const voc = ratio
    ? t.figure('thinned', coatingVoc, {
        volatileMass: t.figure('volatile', volatileOfThinned, {
          coating,
          voc: stated,
          thinnerRatio: ratio,
          thinnerDensity,
        }),
        coatingVolume: t.figure('volume', thinnedVolume, { coating, thinnerRatio: ratio }),
        ...nothingLeftOut(t),
      })
    : stated;
  if (!known) return { voc, unbounded: false };
  if (known.value >= thinnerDensity.value) return { ...bounds, voc, unbounded: true };
  const thinner = t.figure('most-volume', mostThinner, {
    vocMass: t.figure('mass', vocMass, { coating, voc: stated }),
    netVolume: coating,
    thinnerDensity,
    limit: known,
  });
  return { ...bounds, voc, most: t.figure('most', thinnerShare, { thinner, coating }), unbounded: false };
}

/** No sheet in the catalogue states water or exempt solvent of its own, so none is deducted: the figure errs high. */
function nothingLeftOut(t: Trace) {
  const none = <U extends 'kg' | 'm³'>(name: string, unit: U) =>
    t.given(name, {
      value: 0,
      unit,
      origin: 'assumed',
      says: 'thinner-nothing-deducted',
      shows: unit === 'kg' ? 'mass' : 'volume',
    });
  return {
    waterMass: none('water-mass', 'kg'),
    exemptMass: none('exempt-mass', 'kg'),
    waterVolume: none('water-volume', 'm³'),
    exemptVolume: none('exempt-volume', 'm³'),
  } as const;
}
