import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/**
 * The most non-exempt thinner that a coating takes before it reaches a limit, m³.
 *
 * VOC mass in kg, net volume (less water and exempt) in m³, thinner density and limit in kg/m³. Gives 0 and flags the
 * VOC mass when the coating is over the limit already. Refused where thinner no denser than the limit would never
 * reach it.
 */
export const mostThinner = formula({
  id: 'voc/most-thinner',
  says: 'The most thinner a coating takes before it reaches a VOC limit',
  equation: 'max(0, (limit × netVolume − vocMass) / (thinnerDensity − limit))',
  takes: { vocMass: 'kg', netVolume: 'm³', thinnerDensity: 'kg/m³', limit: 'kg/m³' },
  gives: 'm³',
  holds: { vocMass: [0, 1000], netVolume: [1e-6, 10], thinnerDensity: [600, 1400], limit: [1, 800] },
  refuses: { vocMass: [0, 1e5], netVolume: [1e-9, 100], thinnerDensity: [1, 3000], limit: [0, 3000] },
  source: 'organic-finishing-guidebook-2013',
  locator: 'page 828, worked example',
  notes:
    'The algebra of the coating figure. An exempt thinner is unbounded by it: the most thinner on the data sheet always bounds too, and the exempt litres belong in the vapour check. Keep away from the limit: a laboratory figure can be higher.',
  shows: 'volume',
  inputShows: { netVolume: 'volume', thinnerDensity: 'density', limit: 'voc' },
  compute: ({ vocMass, netVolume, thinnerDensity, limit }) => {
    if (limit >= thinnerDensity) throw new Refuse('limit-not-below-thinner-density', 'limit', [0, thinnerDensity]);
    return Math.max(0, (limit * netVolume - vocMass) / (thinnerDensity - limit));
  },
  flags: ({ vocMass, netVolume, limit }) => (vocMass > limit * netVolume ? ['vocMass'] : []),
});
