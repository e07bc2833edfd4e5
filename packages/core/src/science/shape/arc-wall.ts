import { formula } from '../../kernel/formula.ts';

const takes = { chord: 'm', bulge: '1' } as const;
const holds = { chord: [0.01, 500], bulge: [0.001, 1] } as const;
const refuses = { chord: [0, 1e6], bulge: [1e-6, 1000] } as const;
const inputShows = { chord: 'length' } as const;

/** Angle of the arc at its centre, rad: the bulge of a drawing is the tangent of a quarter of it. */
const arcAngle = (bulge: number): number => 4 * Math.atan(bulge);
const arcRadius = (chord: number, bulge: number): number => chord / (2 * Math.sin(arcAngle(bulge) / 2));

/** Radius of a curved wall of a drawing, m. A bulge of 1 is a half circle. */
export const arcWallRadius = formula({
  id: 'shape/arc-wall-radius',
  says: 'Radius of a curved wall given by its chord and the bulge of a drawing',
  equation: 'radius = chord / (2 sin(angle/2)), angle = 4 atan(bulge)',
  takes,
  gives: 'm',
  holds,
  refuses,
  source: 'drawing-exchange-bulge',
  shows: 'length',
  inputShows,
  noOutsideRow: 'Geometry of the circle; the half circle is exact (CALC).',
  compute: ({ chord, bulge }) => arcRadius(chord, bulge),
});

/** Area between the chord and a curved wall, m²: to be added where the wall bulges out of the floor. */
export const arcWallArea = formula({
  id: 'shape/arc-wall-area',
  says: 'Area between the chord and a curved wall',
  equation: 'area = radius² (angle - sin(angle)) / 2',
  takes,
  gives: 'm²',
  holds,
  refuses,
  source: 'drawing-exchange-bulge',
  shows: 'area',
  inputShows,
  noOutsideRow: 'Geometry of the circle; the half circle is exact (CALC).',
  compute: ({ chord, bulge }) => {
    const angle = arcAngle(bulge);
    return (arcRadius(chord, bulge) ** 2 * (angle - Math.sin(angle))) / 2;
  },
});
