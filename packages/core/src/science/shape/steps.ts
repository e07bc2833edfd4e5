import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/**
 * Treads and risers of a flight that ends flush with the upper floor, m².
 *
 * The top tread is the upper floor and is not counted, so there is one tread less than risers. Sides of the
 * stringers are extra. A part of a riser is refused.
 */
export const flightFace = formula({
  id: 'shape/steps',
  says: 'Treads and risers of a flight that ends flush with the upper floor',
  equation: 'area = width (riserCount riser + (riserCount - 1) tread)',
  takes: { riserCount: '1', riser: 'm', tread: 'm', width: 'm' },
  gives: 'm²',
  holds: { riserCount: [1, 60], riser: [0.05, 0.25], tread: [0.2, 2], width: [0.3, 20] },
  refuses: { riserCount: [1, 10_000], riser: [0, 10], tread: [0, 100], width: [0, 1000] },
  source: 'plane-geometry',
  shows: 'area',
  inputShows: { riserCount: 'count', riser: 'small-length', tread: 'small-length', width: 'length' },
  noOutsideRow: 'A sum of rectangles; worked by hand (CALC).',
  compute: ({ riserCount, riser, tread, width }) => {
    if (!Number.isInteger(riserCount)) throw new Refuse('count-must-be-whole', 'riserCount');
    return width * (riserCount * riser + (riserCount - 1) * tread);
  },
});

/** Face of stem walls of one height, m²; openings are left out of the lengths. */
export const wallFace = formula({
  id: 'shape/wall-face',
  says: 'Face of stem walls of one height',
  equation: 'area = sum(lengths) height',
  takes: { lengths: 'm[]', height: 'm' },
  gives: 'm²',
  holds: { lengths: [0, 1000], height: [0.02, 5] },
  refuses: { lengths: [0, 1e6], height: [0, 100] },
  source: 'plane-geometry',
  shows: 'area',
  inputShows: { lengths: 'length', height: 'small-length' },
  noOutsideRow: 'A sum of rectangles; worked by hand (CALC).',
  compute: ({ lengths, height }) => lengths.reduce((sum, length) => sum + length, 0) * height,
});
