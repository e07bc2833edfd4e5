import { formula } from '../../kernel/formula.ts';

const NO_ROW = 'Arithmetic around voc/coating, whose rows check the rule.';

/** Volume of a coating with its thinner, m³; volumes are taken as additive. */
export const thinnedVolume = formula({
  id: 'system/thinned-volume',
  says: 'Volume of a coating with its thinner',
  equation: 'coating × (1 + thinnerRatio)',
  takes: { coating: 'm³', thinnerRatio: '1' },
  gives: 'm³',
  holds: { coating: [0, 100], thinnerRatio: [0, 0.5] },
  refuses: { coating: [0, 1e6], thinnerRatio: [0, 100] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  inputShows: { coating: 'volume', thinnerRatio: 'share' },
  compute: ({ coating, thinnerRatio }) => coating * (1 + thinnerRatio),
});

/**
 * Volatile mass in a thinned coating, kg: the sheet's figure in kg/m³ for the coating, and the whole thinner. The
 * thinner is counted as volatile in full, because a sheet rarely says that it is exempt.
 */
export const volatileOfThinned = formula({
  id: 'system/volatile-of-thinned',
  says: 'Volatile mass in a thinned coating',
  equation: 'coating × (voc + thinnerRatio × thinnerDensity)',
  takes: { coating: 'm³', voc: 'kg/m³', thinnerRatio: '1', thinnerDensity: 'kg/m³' },
  gives: 'kg',
  holds: { coating: [0, 100], voc: [0, 1200], thinnerRatio: [0, 0.5], thinnerDensity: [500, 2000] },
  refuses: { coating: [0, 1e6], voc: [0, 5000], thinnerRatio: [0, 100], thinnerDensity: [1, 25000] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'mass',
  inputShows: { coating: 'volume', voc: 'voc', thinnerRatio: 'share', thinnerDensity: 'density' },
  compute: ({ coating, voc, thinnerRatio, thinnerDensity }) => coating * (voc + thinnerRatio * thinnerDensity),
});
