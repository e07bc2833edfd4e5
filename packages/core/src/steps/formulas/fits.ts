import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/** Time from the first coat to the use of the floor, s: the waits between the coats and the last coat's own time. */
export const timeUntilUse = formula({
  id: 'fits/time-until-use',
  says: 'Time from the first coat until the floor is used',
  equation: 'sum(waits) + last',
  takes: { waits: 's[]', last: 's' },
  gives: 's',
  holds: { waits: [0, 864_000], last: [0, 7_776_000] },
  refuses: { waits: [0, 1e9], last: [0, 1e9] },
  source: 'own-arithmetic',
  notes: 'By the sheets, each at the temperature it states; a colder slab takes longer.',
  noOutsideRow: 'A sum of times.',
  shows: 'duration',
  inputShows: { waits: 'duration', last: 'duration' },
  compute: ({ waits, last }) => waits.reduce((sum, wait) => sum + wait, 0) + last,
});

/** Room left below a limit as a share of it; below nothing the limit is passed. */
export const shareLeft = formula({
  id: 'fits/share-left',
  says: 'Room left below a limit, as a share of the limit',
  equation: '(limit − reading) / limit',
  takes: { limit: '*', reading: '*' },
  gives: '1',
  holds: {},
  source: 'own-arithmetic',
  noOutsideRow: 'A quotient.',
  shows: 'share',
  compute: ({ limit, reading }) => {
    if (limit <= 0) throw new Refuse('limit-not-above-nothing', 'limit');
    return (limit - reading) / limit;
  },
});

/** How far a value lies above what is asked, as a share of what is asked; below nothing it is not reached. */
export const shareAbove = formula({
  id: 'fits/share-above',
  says: 'How far a value lies above what is asked, as a share of what is asked',
  equation: '(reading − limit) / limit',
  takes: { limit: '*', reading: '*' },
  gives: '1',
  holds: {},
  source: 'own-arithmetic',
  noOutsideRow: 'A quotient.',
  shows: 'share',
  compute: ({ limit, reading }) => {
    if (limit <= 0) throw new Refuse('limit-not-above-nothing', 'limit');
    return (reading - limit) / limit;
  },
});

/**
 * How far a value lies within a range, as a share of the range: for temperatures, whose nought means nothing. Half in
 * the middle, nothing at an end, below nothing beyond it.
 */
export const shareOfRange = formula({
  id: 'fits/share-of-range',
  says: 'How far a value lies within a range, as a share of the range',
  equation: 'min(reading − least, most − reading) / (most − least)',
  takes: { least: '*', most: '*', reading: '*' },
  gives: '1',
  holds: {},
  source: 'own-arithmetic',
  noOutsideRow: 'A quotient.',
  shows: 'share',
  compute: ({ least, most, reading }) => {
    if (most <= least) throw new Refuse('limits-out-of-order', 'most');
    return Math.min(reading - least, most - reading) / (most - least);
  },
});

/** The least of several margins: the need that fails first if things turn out worse. */
export const weakestMargin = formula({
  id: 'fits/weakest-margin',
  says: 'Margin of the weakest need',
  equation: 'min(margins)',
  takes: { margins: '1[]' },
  gives: '1',
  holds: {},
  source: 'own-arithmetic',
  notes: 'One of the criteria, never a score: margins of different needs are not added up.',
  noOutsideRow: 'A minimum.',
  shows: 'share',
  compute: ({ margins }) => {
    if (margins.length === 0) throw new Refuse('no-margins', 'margins');
    return Math.min(...margins);
  },
});

/** Small sums of the ranking of systems. */
export const fitsFormulas: readonly AnyFormula[] = [timeUntilUse, shareLeft, shareAbove, shareOfRange, weakestMargin];
