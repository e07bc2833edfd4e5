import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/**
 * Opening of a joint between two slabs, m, as the slab between its joints shortens.
 *
 * `temperatureRange` is a difference: how far the slab cools from where the joint was closed or filled. For an old
 * slab take no further shrinkage. Measured openings mostly exceed this formula, since not every joint works.
 */
export const jointOpening = formula({
  id: 'movement/joint-opening',
  says: 'Opening of a joint as the slab cools and shrinks',
  equation: 'opening = restraint slabLength (expansionCoefficient temperatureRange + shrinkageStrain)',
  takes: { slabLength: 'm', restraint: '1', expansionCoefficient: '1/K', temperatureRange: 'K', shrinkageStrain: '1' },
  gives: 'm',
  holds: {
    slabLength: [0.5, 30],
    restraint: [0.5, 1],
    expansionCoefficient: [6e-6, 15e-6],
    temperatureRange: [0, 80],
    shrinkageStrain: [0, 1e-3],
  },
  refuses: {
    slabLength: [0, 1000],
    restraint: [0, 1],
    expansionCoefficient: [0, 1e-3],
    temperatureRange: [-200, 200],
    shrinkageStrain: [0, 0.05],
  },
  source: 'fhwa-joint-seal-advisory',
  locator: 'worked examples A and B',
  notes: 'Restraint: 0.80 on granular base, 0.65 on stabilised base (from memory), 1 for a slab free to slide.',
  shows: 'small-length',
  inputShows: {
    slabLength: 'length',
    expansionCoefficient: 'expansion',
    temperatureRange: 'difference',
  },
  compute: ({ slabLength, restraint, expansionCoefficient, temperatureRange, shrinkageStrain }) =>
    restraint * slabLength * (expansionCoefficient * temperatureRange + shrinkageStrain),
});

const fractions = { leastFraction: [0, 0.9], greatestFraction: [0.05, 1] } as const;

/** The share of its width by which a seal may be squeezed must grow from the least to the greatest. */
function fractionsInOrder(leastFraction: number, greatestFraction: number): void {
  if (!(greatestFraction > leastFraction))
    throw new Refuse('fractions-out-of-order', 'greatestFraction', [leastFraction, 1]);
}

/** Width of seal whose allowed squeeze takes up the opening of a joint, m. */
export const sealWidth = formula({
  id: 'movement/seal-width',
  says: 'Width of a seal that can take up the opening of a joint',
  equation: 'width = opening / (greatestFraction - leastFraction)',
  takes: { opening: 'm', leastFraction: '1', greatestFraction: '1' },
  gives: 'm',
  holds: { opening: [0, 0.05], ...fractions },
  refuses: { opening: [0, 1], leastFraction: [0, 1], greatestFraction: [0, 1] },
  source: 'fhwa-joint-seal-advisory',
  locator: 'worked examples A and B',
  notes: 'The scanned page prints a plus where its numbers prove a division.',
  shows: 'small-length',
  inputShows: { opening: 'small-length', leastFraction: 'share', greatestFraction: 'share' },
  compute: ({ opening, leastFraction, greatestFraction }) => {
    fractionsInOrder(leastFraction, greatestFraction);
    return opening / (greatestFraction - leastFraction);
  },
});

const takesSqueeze = {
  installedAt: '°C',
  coldest: '°C',
  hottest: '°C',
  leastFraction: '1',
  greatestFraction: '1',
} as const;
const temperatures = { installedAt: [-40, 80], coldest: [-50, 50], hottest: [-20, 90] } as const;
const sense = {
  installedAt: [-100, 200],
  coldest: [-100, 200],
  hottest: [-100, 200],
  leastFraction: [0, 1],
  greatestFraction: [0, 1],
} as const;
const squeezeShows = {
  installedAt: 'temperature',
  coldest: 'temperature',
  hottest: 'temperature',
  leastFraction: 'share',
  greatestFraction: 'share',
} as const;

function squeezeAt(v: Values<typeof takesSqueeze>): number {
  fractionsInOrder(v.leastFraction, v.greatestFraction);
  if (!(v.hottest > v.coldest)) throw new Refuse('temperatures-out-of-order', 'hottest', [v.coldest, 200]);
  if (v.installedAt < v.coldest || v.installedAt > v.hottest) {
    throw new Refuse('temperatures-out-of-order', 'installedAt', [v.coldest, v.hottest]);
  }
  const warm = (v.installedAt - v.coldest) / (v.hottest - v.coldest);
  return v.leastFraction + warm * (v.greatestFraction - v.leastFraction);
}

/** Share of its width by which a seal must be squeezed when it goes in, so that it stays within its limits all year. */
export const sealSqueeze = formula({
  id: 'movement/seal-squeeze',
  says: 'Share by which a seal is squeezed when it goes in',
  equation: 'squeeze = least + (installedAt - coldest)/(hottest - coldest) (greatest - least)',
  takes: takesSqueeze,
  gives: '1',
  holds: { ...temperatures, ...fractions },
  refuses: sense,
  source: 'fhwa-joint-seal-advisory',
  locator: 'worked example A',
  shows: 'share',
  inputShows: squeezeShows,
  compute: squeezeAt,
});

/** Width to saw on the day the seal goes in, m: the seal's width less its squeeze at the slab's temperature. */
export const sawcutWidth = formula({
  id: 'movement/sawcut-width',
  says: 'Width to saw a joint on the day its seal goes in',
  equation: 'cut = sealWidth (1 - squeeze)',
  takes: { sealWidth: 'm', ...takesSqueeze },
  gives: 'm',
  holds: { sealWidth: [0.003, 0.1], ...temperatures, ...fractions },
  refuses: { sealWidth: [0, 1], ...sense },
  source: 'fhwa-joint-seal-advisory',
  locator: 'worked examples A and B',
  shows: 'small-length',
  inputShows: { sealWidth: 'small-length', ...squeezeShows },
  compute: (values) => values.sealWidth * (1 - squeezeAt(values)),
});

/** Joint spacing by the rule of the thickness, m, capped. */
export const jointSpacing = formula({
  id: 'movement/joint-spacing',
  says: 'Joint spacing by a multiple of the slab thickness, capped',
  equation: 'spacing = min(multiple thickness, cap)',
  takes: { thickness: 'm', multiple: '1', cap: 'm' },
  gives: 'm',
  holds: { thickness: [0.075, 0.3], multiple: [24, 36], cap: [4, 6] },
  refuses: { thickness: [0, 5], multiple: [1, 100], cap: [0, 100] },
  defaults: { cap: 5.4864 },
  source: 'concrete-producer-joints',
  locator: 'ACI 302.1R-96: 24 to 36 times the thickness, at most 18 ft',
  notes: 'Even then up to 3 % of panels crack. Other rules of thumb run to 60 times: too long.',
  shows: 'length',
  inputShows: { thickness: 'small-length', cap: 'length' },
  compute: ({ thickness, multiple, cap }) => Math.min(multiple * thickness, cap),
});
