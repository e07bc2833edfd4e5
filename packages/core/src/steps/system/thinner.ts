import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { coatingVoc } from '../../science/voc/index.ts';
import { givenFact } from '../context.ts';
import { thinnedVolume, volatileOfThinned } from '../formulas/system-voc.ts';
import { type Coat, type Found, NOTHING, sheetSilent } from './coat.ts';
import { above } from './limits.ts';

/** Thinner the option chose against what the sheet allows, and what it does to gauge and volatiles. */
export function thinnerFit(coat: Coat): Found {
  const ratio = coat.thinnerRatio;
  if (!ratio) return NOTHING;
  const { thinner } = coat.product;
  if (!thinner || thinner.allowed === 'not known') return sheetSilent(coat, 'system-thinner-unstated', 'thinner');
  const figures = { ratio: ratio.id };
  const names = { layer: coat.name, thinner: thinner.name ?? '' };
  if (thinner.allowed === 'no') {
    const lift = { code: 'system-thinner-forbidden-lift', names };
    return { reasons: [{ code: 'system-thinner-forbidden', verdict: 'stop', figures, names, lift }] };
  }
  const notes = [
    { code: 'system-thinner-gauge', figures: { ratio: ratio.id, wet: coat.wet.id, dry: coat.dry.id }, names },
    ...vocNote(coat),
  ];
  if (!thinner.most) {
    return { ...sheetSilent(coat, 'system-thinner-most-unstated', 'thinner.most'), notes };
  }
  const most = givenFact(coat.trace, 'limit.thinner', thinner.most, { where: coat.sheet });
  const reasons: Reason[] = above(ratio.value, most.value)
    ? [
        {
          code: 'system-thinner-too-much',
          verdict: 'stop',
          figures: { ...figures, limit: most.id },
          names,
          source: most.id,
          lift: { code: 'system-thinner-too-much-lift', figures: { limit: most.id }, names },
        },
      ]
    : [];
  return { reasons, notes };
}

/** Volatiles of the thinned coating where the sheet states its own and the thinner's density is known. */
function vocNote(coat: Coat): NonNullable<Found['notes']> {
  const { voc, thinner } = coat.product;
  const thinnerRatio = coat.thinnerRatio;
  if (!voc || !thinner?.density || !thinnerRatio) return [];
  const t = coat.trace.within('voc');
  const stated = givenFact(t, 'sheet', voc, { where: coat.sheet });
  const thinnerDensity = givenFact(t, 'thinner-density', thinner.density, { where: coat.sheet });
  const coating = t.given('coating', { value: 0.001, unit: 'm³', origin: 'chosen', shows: 'volume' });
  const thinned = t.figure('thinned', coatingVoc, {
    volatileMass: t.figure('volatile', volatileOfThinned, { coating, voc: stated, thinnerRatio, thinnerDensity }),
    coatingVolume: t.figure('volume', thinnedVolume, { coating, thinnerRatio }),
    ...nothingExempt(t),
  });
  return [
    { code: 'system-voc-thinned', figures: { sheet: stated.id, thinned: thinned.id }, names: { layer: coat.name } },
  ];
}

/** No sheet in the catalogue states water or exempt solvent, so none is deducted: the figure errs to the high side. */
function nothingExempt(t: Trace) {
  const none = <U extends 'kg' | 'm³'>(name: string, unit: U) =>
    t.given(name, {
      value: 0,
      unit,
      origin: 'assumed',
      says: 'system-voc-nothing-exempt',
      shows: unit === 'kg' ? 'mass' : 'volume',
    });
  return {
    waterMass: none('water-mass', 'kg'),
    exemptMass: none('exempt-mass', 'kg'),
    waterVolume: none('water-volume', 'm³'),
    exemptVolume: none('exempt-volume', 'm³'),
  } as const;
}
