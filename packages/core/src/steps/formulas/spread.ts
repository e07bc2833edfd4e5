import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';

/** Small sums of the spread: rates of the front, litres of a pour, and values read off a timed sequence. */

const ownArithmetic = 'Worked by hand (own arithmetic).';
const offSequence =
  'Read off a sequence of squares timed by the planner; the checker times it again with code of its own.';

/** One person who does several works on the same floor, one after the other. */
export const onePersonRate = formula({
  id: 'spread/one-person-rate',
  says: 'Rate of one person who does several works on the same floor',
  equation: 'rate = 1 / Σ(1 / rates)',
  takes: { rates: 'm²/s[]' },
  gives: 'm²/s',
  holds: { rates: [1e-5, 1] },
  refuses: { rates: [1e-9, 1e3] },
  source: 'own-arithmetic',
  noOutsideRow: ownArithmetic,
  shows: 'area-rate',
  compute: ({ rates }) => 1 / rates.reduce((sum, rate) => sum + 1 / rate, 0),
});

/** Everything that is mixed for an area, walls and surplus with it, over its floor. */
export const volumePerFloor = formula({
  id: 'spread/volume-per-floor',
  says: 'Mixed volume for each area of floor',
  equation: 'perArea = part · mixed / (whole · floor)',
  takes: { part: 'm³', whole: 'm³', mixed: 'm³', floor: 'm²' },
  gives: 'm',
  holds: { part: [1e-6, 20], whole: [1e-6, 20], mixed: [1e-6, 20], floor: [0.01, 50_000] },
  refuses: { part: [0, 1e4], whole: [1e-9, 1e4], mixed: [1e-9, 1e4], floor: [1e-4, 1e6] },
  source: 'own-arithmetic',
  notes: 'What goes up stem walls and stays in pails and rollers comes out of the same batches, so it counts here too.',
  noOutsideRow: ownArithmetic,
  shows: 'film',
  compute: ({ part, whole, mixed, floor }) => (part * mixed) / (whole * floor),
});

export const workingFromPot = formula({
  id: 'spread/working-time',
  says: 'Time from mixed to down and rolled, as a share of the pot life',
  equation: 'working = share · potLife',
  takes: { potLife: 's', share: '1' },
  gives: 's',
  holds: { potLife: [60, 6 * 3600], share: [0.3, 1] },
  refuses: { potLife: [1, 1e6], share: [0.01, 1] },
  source: 'hours-common-practice',
  notes: 'The last part of a pot life is thick and warm and no longer levels. The share is an assumption.',
  noOutsideRow: ownArithmetic,
  shows: 'duration',
  compute: ({ potLife, share }) => potLife * share,
});

export const openFromPot = formula({
  id: 'spread/open-from-pot',
  says: 'Open time assumed from the pot life',
  equation: 'open = share · potLife',
  takes: { potLife: 's', share: '1' },
  gives: 's',
  holds: { potLife: [60, 6 * 3600], share: [0.2, 1] },
  refuses: { potLife: [1, 1e6], share: [0.01, 1] },
  source: 'hours-common-practice',
  notes: 'Pot life and open time follow different laws; this stands in only where nothing else is known.',
  noOutsideRow: ownArithmetic,
  shows: 'duration',
  compute: ({ potLife, share }) => potLife * share,
});

export const pourVolume = formula({
  id: 'spread/pour-volume',
  says: 'Volume that one pour takes',
  equation: 'volume = area · perArea',
  takes: { area: 'm²', perArea: 'm' },
  gives: 'm³',
  holds: { area: [0.01, 5000], perArea: [1e-5, 0.05] },
  refuses: { area: [0, 1e6], perArea: [0, 1] },
  source: 'own-arithmetic',
  noOutsideRow: ownArithmetic,
  shows: 'volume',
  compute: ({ area, perArea }) => area * perArea,
});

export const mostInSequence = formula({
  id: 'spread/most-in-sequence',
  says: 'Largest of the values along a sequence',
  equation: 'max(along)',
  takes: { along: '*[]' },
  gives: '*',
  holds: {},
  source: 'own-arithmetic',
  noOutsideRow: offSequence,
  compute: ({ along }) => along.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
});

export const sumInSequence = formula({
  id: 'spread/sum-in-sequence',
  says: 'Sum of the values along a sequence',
  equation: 'Σ along',
  takes: { along: '*[]' },
  gives: '*',
  holds: {},
  source: 'own-arithmetic',
  noOutsideRow: offSequence,
  compute: ({ along }) => along.reduce((a, b) => a + b, 0),
});

export const leastInSequence = formula({
  id: 'spread/least-in-sequence',
  says: 'Least of the values along a sequence',
  equation: 'min(along)',
  takes: { along: '*[]' },
  gives: '*',
  holds: {},
  source: 'own-arithmetic',
  noOutsideRow: offSequence,
  compute: ({ along }) => along.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
});

export const shareOfLimit = formula({
  id: 'spread/share-of-limit',
  says: 'Share of a limit that is used up',
  equation: 'share = used / limit',
  takes: { used: 's', limit: 's' },
  gives: '1',
  holds: { used: [0, 1e5], limit: [30, 1e5] },
  refuses: { used: [0, 1e7], limit: [1e-3, 1e7] },
  source: 'own-arithmetic',
  noOutsideRow: ownArithmetic,
  shows: 'share',
  compute: ({ used, limit }) => used / limit,
});

export const spreadFormulas: readonly AnyFormula[] = [
  onePersonRate,
  volumePerFloor,
  workingFromPot,
  openFromPot,
  pourVolume,
  mostInSequence,
  sumInSequence,
  leastInSequence,
  shareOfLimit,
];
