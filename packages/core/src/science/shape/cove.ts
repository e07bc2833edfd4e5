import { formula } from '../../kernel/formula.ts';

const takes = { radius: 'm', length: 'm' } as const;
const holds = { radius: [0.005, 0.15], length: [0, 10_000] } as const;
const refuses = { radius: [0, 10], length: [0, 1e6] } as const;
const inputShows = { radius: 'small-length', length: 'length' } as const;

/**
 * Fill behind a concave quarter-round cove, m³: what the quarter circle leaves of the square in the corner.
 *
 * Straight runs only; mitres at inside and outside corners change it by less than radius³ each.
 */
export const coveFill = formula({
  id: 'shape/cove',
  says: 'Fill behind a concave quarter-round cove',
  equation: 'volume = (1 - π/4) radius² length',
  takes,
  gives: 'm³',
  holds,
  refuses,
  source: 'plane-geometry',
  locator: 'quarter circle',
  shows: 'volume',
  inputShows,
  noOutsideRow: 'Geometry of the quarter circle; worked by hand (CALC).',
  compute: ({ radius, length }) => (1 - Math.PI / 4) * radius ** 2 * length,
});

/**
 * Face of a concave quarter-round cove, m²: its developed width is a quarter of the circle.
 *
 * Where the plan runs wall to wall, the floor loses one radius of width along each coved wall.
 */
export const coveFace = formula({
  id: 'shape/cove-face',
  says: 'Face of a concave quarter-round cove',
  equation: 'area = π/2 radius length',
  takes,
  gives: 'm²',
  holds,
  refuses,
  source: 'plane-geometry',
  locator: 'quarter circle',
  shows: 'area',
  inputShows,
  noOutsideRow: 'Geometry of the quarter circle; worked by hand (CALC).',
  compute: ({ radius, length }) => (Math.PI / 2) * radius * length,
});
