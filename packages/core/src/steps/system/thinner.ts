import type { Reason } from '../../kernel/verdict.ts';
import { givenFact } from '../context.ts';
import { type Coat, type Found, NOTHING, sheetSilent } from './coat.ts';
import { above } from './limits.ts';

/** Thinner the option chose against what the sheet allows, and what it does to the gauge. */
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
