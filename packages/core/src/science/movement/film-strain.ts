import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/**
 * Strain of a film over a crack that opens.
 *
 * The movement spreads over the length that is free of the slab: a bond-breaker tape, or what lets go by itself. A
 * film bonded up to the crack has no free length, and then no strain can be stated at all: the answer is a refusal,
 * not a large number. Elongation on a data sheet alone does not rank films over cracks.
 */
export const filmStrain = formula({
  id: 'movement/film-strain',
  says: 'Strain of a film over a crack that opens',
  equation: 'strain = opening / freeLength',
  takes: { opening: 'm', freeLength: 'm' },
  gives: '1',
  holds: { opening: [0, 0.005], freeLength: [0.002, 0.3] },
  refuses: { opening: [0, 1], freeLength: [0, 10] },
  source: 'film-over-crack',
  shows: 'share',
  inputShows: { opening: 'small-length', freeLength: 'small-length' },
  noOutsideRow: 'Definition of strain; the worked number is own arithmetic (CALC).',
  compute: ({ opening, freeLength }) => {
    if (freeLength === 0) throw new Refuse('strain-undefined-without-free-length', 'freeLength', [0.0001, 10]);
    return opening / freeLength;
  },
});
