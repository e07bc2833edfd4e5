import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';

/** VOC in a volume of coating as the sheet states it, kg. */
export const vocMass = formula({
  id: 'thinner/voc-mass',
  says: 'VOC in a volume of coating',
  equation: 'coating × voc',
  takes: { coating: 'm³', voc: 'kg/m³' },
  gives: 'kg',
  holds: { coating: [0, 100], voc: [0, 1200] },
  refuses: { coating: [0, 1e6], voc: [0, 5000] },
  source: 'own-arithmetic',
  noOutsideRow: 'A product; voc/most-thinner, which takes it, has its rows.',
  shows: 'mass',
  inputShows: { coating: 'volume', voc: 'voc' },
  compute: ({ coating, voc }) => coating * voc,
});

/** Thinner as a share of the mixed, unthinned coating, by volume. */
export const thinnerShare = formula({
  id: 'thinner/share',
  says: 'Thinner as a share of the mixed, unthinned coating',
  equation: 'thinner / coating',
  takes: { thinner: 'm³', coating: 'm³' },
  gives: '1',
  holds: { thinner: [0, 50], coating: [1e-6, 100] },
  refuses: { thinner: [0, 1e6], coating: [1e-9, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: 'A quotient of two volumes.',
  shows: 'share',
  inputShows: { thinner: 'volume', coating: 'volume' },
  compute: ({ thinner, coating }) => thinner / coating,
});

/** The lower of two bounds on the thinner. */
export const leastThinner = formula({
  id: 'thinner/most',
  says: 'The most thinner that the sheet and the limit of the place both bear',
  equation: 'min(bySheet, byLimit)',
  takes: { bySheet: '1', byLimit: '1' },
  gives: '1',
  holds: { bySheet: [0, 0.5], byLimit: [0, 100] },
  refuses: { bySheet: [0, 100], byLimit: [0, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: 'The lower of two numbers.',
  shows: 'share',
  inputShows: { bySheet: 'share', byLimit: 'share' },
  compute: ({ bySheet, byLimit }) => Math.min(bySheet, byLimit),
});

/** Dry film left when the thinned coat is laid to the gauge of the unthinned one, m. */
export const dryAtOldGauge = formula({
  id: 'thinner/dry-at-old-gauge',
  says: 'Dry film when the wet gauge is not raised for the thinner',
  equation: 'dry / (1 + thinnerRatio)',
  takes: { dry: 'm', thinnerRatio: '1' },
  gives: 'm',
  holds: { dry: [0, 0.01], thinnerRatio: [0, 0.5] },
  refuses: { dry: [0, 1], thinnerRatio: [0, 100] },
  source: 'conservation-of-solids',
  notes: 'Falls by thinnerRatio / (1 + thinnerRatio).',
  noOutsideRow: 'The quotient of two published relations (film/dry-from-wet and film/solids-after-thinning).',
  shows: 'film',
  inputShows: { dry: 'film', thinnerRatio: 'share' },
  compute: ({ dry, thinnerRatio }) => dry / (1 + thinnerRatio),
});

/** Small sums of the thinner step. */
export const thinnerFormulas: readonly AnyFormula[] = [vocMass, thinnerShare, leastThinner, dryAtOldGauge];
