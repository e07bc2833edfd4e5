import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const LIMIT_HOLDS = [0.005, 0.2] as const;
const LIMIT_REFUSES = [1e-4, 0.99] as const;

/** Air that thins a vapour to a quarter of its lower explosive limit, m³; vapour in m³, limit as a volume fraction. */
export const airToQuarterLimit = formula({
  id: 'vapour/air-to-quarter-lel',
  says: 'Air that thins a vapour to a quarter of its lower explosive limit',
  equation: '4 (1 − lowerExplosiveLimit) / lowerExplosiveLimit × vapourVolume',
  takes: { vapourVolume: 'm³', lowerExplosiveLimit: '1' },
  gives: 'm³',
  holds: { vapourVolume: [0, 1000], lowerExplosiveLimit: LIMIT_HOLDS },
  refuses: { vapourVolume: [0, 1e6], lowerExplosiveLimit: LIMIT_REFUSES },
  source: 'cfr-29-1910-94',
  locator: '29 CFR 1910.94(c)(6)(ii); construction: 1926.57(h)(6)',
  notes:
    'Limits differ between sources (acetone 2.15 to 2.6 %): take the lowest, or the safety data sheet. A confined space is judged from a tenth of the limit, and health needs far more air than fire.',
  shows: 'gas-volume',
  inputShows: { vapourVolume: 'gas-volume', lowerExplosiveLimit: 'concentration' },
  compute: ({ vapourVolume, lowerExplosiveLimit }) =>
    ((4 * (1 - lowerExplosiveLimit)) / lowerExplosiveLimit) * vapourVolume,
});

/**
 * Share of the lower explosive limit that a vapour reaches when spread evenly through a shut room (fraction); volumes
 * in m³, limit a volume fraction. May exceed 1.
 */
export const roomFractionOfLimit = formula({
  id: 'vapour/room-fraction-of-lel',
  says: 'Share of the lower explosive limit reached in a room without air change',
  equation: 'vapourVolume / roomVolume / lowerExplosiveLimit',
  takes: { vapourVolume: 'm³', roomVolume: 'm³', lowerExplosiveLimit: '1' },
  gives: '1',
  holds: { vapourVolume: [0, 1000], roomVolume: [1, 1e6], lowerExplosiveLimit: LIMIT_HOLDS },
  refuses: { vapourVolume: [0, 1e6], roomVolume: [0.01, 1e9], lowerExplosiveLimit: LIMIT_REFUSES },
  source: 'ideal-gas',
  notes:
    'Fully mixed, no air change: an average. Near the floor the vapour is richer, so a quarter of the limit on average may be the limit in the layer where the pilot flame stands.',
  shows: 'share',
  inputShows: { vapourVolume: 'gas-volume', roomVolume: 'gas-volume', lowerExplosiveLimit: 'concentration' },
  compute: ({ vapourVolume, roomVolume, lowerExplosiveLimit }) => vapourVolume / roomVolume / lowerExplosiveLimit,
});

/**
 * Lower explosive limit of a blend of vapours (volume fraction); shares of the vapour by moles that sum to 1, and the
 * limit of each.
 */
export const blendLimit = formula({
  id: 'vapour/blend-lel',
  says: 'Lower explosive limit of a blend of vapours',
  equation: '1 / Σ (vapourFractions / lowerExplosiveLimits)',
  takes: { vapourFractions: '1[]', lowerExplosiveLimits: '1[]' },
  gives: '1',
  holds: { vapourFractions: [0, 1], lowerExplosiveLimits: LIMIT_HOLDS },
  refuses: { vapourFractions: [0, 1], lowerExplosiveLimits: LIMIT_REFUSES },
  together: [['vapourFractions', 'lowerExplosiveLimits']],
  source: 'le-chatelier-formula-sheet',
  notes:
    'Le Chatelier’s rule, of the vapour and not of the liquid: the more volatile solvent is richer in the vapour. Where that is not known take the lowest limit of the parts.',
  shows: 'concentration',
  inputShows: { vapourFractions: 'share', lowerExplosiveLimits: 'concentration' },
  compute: ({ vapourFractions, lowerExplosiveLimits }) => {
    let [total, sum] = [0, 0];
    vapourFractions.forEach((fraction, i) => {
      total += fraction;
      sum += fraction / (lowerExplosiveLimits[i] as number);
    });
    if (Math.abs(total - 1) > 1e-6) throw new Refuse('fractions-do-not-sum-to-one', 'vapourFractions', [1, 1]);
    return 1 / sum;
  },
});
