import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const SLAB = [-60, 80] as const;

/** How far a slab cools from one temperature to another, K; below nothing where it warms. */
export const slabCools = formula({
  id: 'cracks/slab-cools',
  says: 'How far the slab cools from one temperature to another',
  equation: 'from − to',
  takes: { from: '°C', to: '°C' },
  gives: 'K',
  holds: { from: SLAB, to: SLAB },
  refuses: { from: [-100, 200], to: [-100, 200] },
  source: 'own-arithmetic',
  noOutsideRow: 'A difference of two temperatures.',
  shows: 'difference',
  inputShows: { from: 'temperature', to: 'temperature' },
  compute: ({ from, to }) => from - to,
});

/** Slab that shortens away from a joint, m: half of each neighbour, because each also opens its far joint. */
export const slabAtJoint = formula({
  id: 'cracks/slab-at-joint',
  says: 'Length of slab whose shortening opens a joint',
  equation: '(oneSide + otherSide) / 2',
  takes: { oneSide: 'm', otherSide: 'm' },
  gives: 'm',
  holds: { oneSide: [0.3, 60], otherSide: [0.3, 60] },
  refuses: { oneSide: [0, 2000], otherSide: [0, 2000] },
  source: 'own-arithmetic',
  notes: 'A slab alone, with a wall or a free edge on its far side, is taken the same way.',
  noOutsideRow: 'A mean of two lengths; movement/joint-opening, which takes it, has its rows.',
  shows: 'length',
  inputShows: { oneSide: 'length', otherSide: 'length' },
  compute: ({ oneSide, otherSide }) => (oneSide + otherSide) / 2,
});

/**
 * Opening to reckon with on a floor, m: the formula's own value as the middle, from half of it to twice. Not every joint
 * works, so those that do open further than the slab's length says; measured openings mostly exceed the formula.
 */
export const openingToReckonWith = formula({
  id: 'cracks/opening-to-reckon-with',
  says: 'Opening of a joint or crack to reckon with',
  equation: 'opening, from opening / 2 to 2 opening',
  takes: { opening: 'm' },
  gives: 'm',
  holds: { opening: [0, 0.03] },
  refuses: { opening: [0, 1] },
  source: 'joint-openings-measured',
  notes: 'The direction is read, the factor of two is an assumption.',
  noOutsideRow: 'The value is movement/joint-opening, which has its rows; the band is an assumption.',
  shows: 'small-length',
  inputShows: { opening: 'small-length' },
  compute: ({ opening }) => opening,
  band: (_, value) => ({ band: [value / 2, value * 2] }),
});

/** Upper end of an opening, m: what a film that is to bridge it must bear. */
export const openingToBear = formula({
  id: 'cracks/opening-to-bear',
  says: 'Opening that a film over it must bear',
  equation: '2 opening',
  takes: { opening: 'm' },
  gives: 'm',
  holds: { opening: [0, 0.03] },
  refuses: { opening: [0, 1] },
  source: 'joint-openings-measured',
  notes: 'The factor of two is an assumption: measured openings mostly exceed the formula.',
  noOutsideRow: 'Twice a value that has its rows; the factor is an assumption.',
  shows: 'small-length',
  inputShows: { opening: 'small-length' },
  compute: ({ opening }) => 2 * opening,
});

/** Opening over a season from two widths read at two temperatures, m; a crack that closes as it cools gives nothing. */
export const openingFromReadings = formula({
  id: 'cracks/opening-from-readings',
  says: 'Opening over a season, from two widths read at two temperatures',
  equation: 'max(0, (coldWidth − warmWidth) / readingsRange × temperatureRange)',
  takes: { coldWidth: 'm', warmWidth: 'm', readingsRange: 'K', temperatureRange: 'K' },
  gives: 'm',
  holds: { coldWidth: [0, 0.03], warmWidth: [0, 0.03], readingsRange: [5, 60], temperatureRange: [0, 80] },
  refuses: { coldWidth: [0, 1], warmWidth: [0, 1], readingsRange: [0, 200], temperatureRange: [-200, 200] },
  source: 'own-arithmetic',
  notes: 'Straight line through two readings; beats the formula because it is this crack in this slab.',
  noOutsideRow: 'A straight line through two readings.',
  shows: 'small-length',
  inputShows: {
    coldWidth: 'small-length',
    warmWidth: 'small-length',
    readingsRange: 'difference',
    temperatureRange: 'difference',
  },
  compute: ({ coldWidth, warmWidth, readingsRange, temperatureRange }) => {
    if (readingsRange === 0) throw new Refuse('readings-at-one-temperature', 'readingsRange', [0.1, 200]);
    return Math.max(0, ((coldWidth - warmWidth) / readingsRange) * temperatureRange);
  },
});

/** Most a crack may open over a season although two readings showed nothing, m: what the comparator cannot see. */
export const openingUnseen = formula({
  id: 'cracks/opening-unseen',
  says: 'Most a crack may open over a season although its two readings are alike',
  equation: 'resolution / readingsRange × temperatureRange',
  takes: { resolution: 'm', readingsRange: 'K', temperatureRange: 'K' },
  gives: 'm',
  holds: { resolution: [1e-5, 1e-3], readingsRange: [5, 60], temperatureRange: [0, 80] },
  refuses: { resolution: [0, 0.1], readingsRange: [0, 200], temperatureRange: [-200, 200] },
  source: 'crack-reading-assumption',
  noOutsideRow: 'A proportion; the resolution is an assumption.',
  shows: 'small-length',
  inputShows: { resolution: 'small-length', readingsRange: 'difference', temperatureRange: 'difference' },
  compute: ({ resolution, readingsRange, temperatureRange }) => {
    if (readingsRange === 0) throw new Refuse('readings-at-one-temperature', 'readingsRange', [0.1, 200]);
    return Math.max(0, (resolution / readingsRange) * temperatureRange);
  },
});

/** Filler of a groove along a line, m³. */
export const fillerOfLine = formula({
  id: 'cracks/filler-of-line',
  says: 'Filler that a groove along a crack or joint takes',
  equation: 'length × width × depth',
  takes: { length: 'm', width: 'm', depth: 'm' },
  gives: 'm³',
  holds: { length: [0, 2000], width: [0.001, 0.05], depth: [0.003, 0.2] },
  refuses: { length: [0, 1e6], width: [0, 1], depth: [0, 2] },
  source: 'own-arithmetic',
  notes: 'Width and depth are assumed by common practice until they are measured.',
  noOutsideRow: 'A product of three lengths.',
  shows: 'volume',
  inputShows: { length: 'length', width: 'small-length', depth: 'small-length' },
  compute: ({ length, width, depth }) => length * width * depth,
});

/** What one line takes of the money for the packs of its filler, by volume; what is left in the packs is shared too. */
export const fillerShare = formula({
  id: 'cracks/filler-share',
  says: 'Share of one crack or joint in what the packs of its filler cost',
  equation: 'packs × volume / needed',
  takes: { packs: 'money', volume: 'm³', needed: 'm³' },
  gives: 'money',
  holds: { packs: [0, 1e9], volume: [0, 5], needed: [1e-6, 5] },
  refuses: { packs: [0, 1e15], volume: [0, 1e6], needed: [1e-12, 1e6] },
  source: 'own-arithmetic',
  notes: 'Not rounded, so that the shares of all lines add up to the packs.',
  noOutsideRow: 'A proportion.',
  shows: 'money',
  inputShows: { packs: 'money', volume: 'volume', needed: 'volume' },
  compute: ({ packs, volume, needed }) => (packs * volume) / needed,
});

/** Shrinkage that a slab still has before it, as a strain. */
export const shrinkageLeft = formula({
  id: 'cracks/shrinkage-left',
  says: 'Drying shrinkage that a slab still has before it',
  equation: 'wholeShrinkage × (1 − shareDone)',
  takes: { wholeShrinkage: '1', shareDone: '1' },
  gives: '1',
  holds: { wholeShrinkage: [0, 1e-3], shareDone: [0, 1] },
  refuses: { wholeShrinkage: [0, 0.05], shareDone: [0, 1] },
  source: 'own-arithmetic',
  noOutsideRow: 'What is left of a whole; movement/drying-shrinkage-share, which it takes, has its rows.',
  shows: 'plain',
  inputShows: { wholeShrinkage: 'plain', shareDone: 'share' },
  compute: ({ wholeShrinkage, shareDone }) => wholeShrinkage * (1 - shareDone),
});

/** Small sums of the cracks step. */
export const cracksFormulas: readonly AnyFormula[] = [
  slabCools,
  slabAtJoint,
  openingToReckonWith,
  openingToBear,
  openingFromReadings,
  openingUnseen,
  fillerOfLine,
  fillerShare,
  shrinkageLeft,
];
