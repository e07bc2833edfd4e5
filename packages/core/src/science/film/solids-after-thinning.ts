import { formula } from '../../kernel/formula.ts';

/**
 * Volume solids after thinning (fraction); thinner as a volume per volume of mixed, unthinned coating.
 *
 * The thinner leaves the film, so the litres of coating stay as they were and only the wet gauge target rises.
 */
export const solidsAfterThinning = formula({
  id: 'film/solids-after-thinning',
  says: 'Volume solids of a coating after thinning',
  equation: 'volumeSolids / (1 + thinnerRatio)',
  takes: { volumeSolids: '1', thinnerRatio: '1' },
  gives: '1',
  holds: { volumeSolids: [0.05, 1], thinnerRatio: [0, 0.5] },
  refuses: { volumeSolids: [1e-9, 1], thinnerRatio: [0, 100] },
  source: 'conservation-of-solids',
  notes:
    'Volumes are taken as additive. The ratio is thinner per coating, not thinner per total: 10 % thinner means 1.1 volumes.',
  shows: 'share',
  inputShows: { volumeSolids: 'share', thinnerRatio: 'share' },
  compute: ({ volumeSolids, thinnerRatio }) => volumeSolids / (1 + thinnerRatio),
});
