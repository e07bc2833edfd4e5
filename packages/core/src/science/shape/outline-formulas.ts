import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { selfCrossing } from './crossing.ts';
import { areaOf, perimeterOf, type Ring, wallLengths } from './polygon.ts';

const takes = { cornersX: 'm[]', cornersY: 'm[]' } as const;
const holds = { cornersX: [-1000, 1000], cornersY: [-1000, 1000] } as const;
const refuses = { cornersX: [-1e7, 1e7], cornersY: [-1e7, 1e7] } as const;
const together = [['cornersX', 'cornersY']] as const;

/** The ring the two lists describe; refused when it is no outline of a floor. */
function ringFrom({ cornersX, cornersY }: Values<typeof takes>): Ring {
  if (cornersX.length < 3) throw new Refuse('outline-needs-three-corners', 'cornersX');
  const ring = cornersX.map((x, i) => [x, cornersY[i] as number] as const);
  if (selfCrossing(ring)) throw new Refuse('outline-crosses-itself', 'cornersX');
  return ring;
}

/**
 * Area inside an outline, m².
 *
 * The shoelace rule gives half the sum of cross products of neighbouring corners. Its size does not depend on the
 * direction of travel. An outline that crosses itself has no area of its own: it is refused, not netted out.
 */
export const outlineArea = formula({
  id: 'shape/area',
  says: 'Area inside an outline of straight walls',
  equation: 'area = |sum(x_i y_next - x_next y_i)| / 2',
  takes,
  gives: 'm²',
  holds,
  refuses,
  together,
  source: 'plane-geometry',
  locator: 'shoelace rule',
  notes: 'Corners in order, the first not repeated. Sides alone do not fix a room of four corners or more.',
  shows: 'area',
  inputShows: { cornersX: 'length', cornersY: 'length' },
  compute: (values) => areaOf(ringFrom(values)),
});

/** Length of all walls of an outline, m. */
export const outlinePerimeter = formula({
  id: 'shape/perimeter',
  says: 'Length of all walls of an outline',
  equation: 'perimeter = sum(hypot(x_next - x_i, y_next - y_i))',
  takes,
  gives: 'm',
  holds,
  refuses,
  together,
  source: 'plane-geometry',
  shows: 'length',
  inputShows: { cornersX: 'length', cornersY: 'length' },
  noOutsideRow: 'A sum of distances; the invented garage and workshop are worked by hand (CALC).',
  compute: (values) => perimeterOf(ringFrom(values)),
});

/** Length of each wall of an outline in order, m: wall i runs from corner i to the next. */
export const outlineWalls = formula({
  id: 'shape/walls',
  says: 'Length of each wall of an outline, in order',
  equation: 'wall_i = hypot(x_next - x_i, y_next - y_i)',
  takes,
  gives: 'm[]',
  holds,
  refuses,
  together,
  source: 'plane-geometry',
  shows: 'length',
  inputShows: { cornersX: 'length', cornersY: 'length' },
  noOutsideRow: 'The distance between two points; worked by hand (CALC).',
  compute: (values) => wallLengths(ringFrom(values)),
});

/** Area of a floor less its columns, pits and pads, m². Refused when the holes are larger than the floor. */
export const areaLessHoles = formula({
  id: 'shape/area-less-holes',
  says: 'Area of a floor less its holes',
  equation: 'net = gross - sum(holes)',
  takes: { grossArea: 'm²', holeAreas: 'm²[]' },
  gives: 'm²',
  holds: { grossArea: [0.1, 100_000], holeAreas: [0, 10_000] },
  refuses: { grossArea: [0, 1e9], holeAreas: [0, 1e9] },
  source: 'plane-geometry',
  shows: 'area',
  inputShows: { grossArea: 'area', holeAreas: 'area' },
  noOutsideRow: 'A subtraction; worked by hand (CALC).',
  compute: ({ grossArea, holeAreas }) => {
    const net = holeAreas.reduce((rest, hole) => rest - hole, grossArea);
    if (net < 0) throw new Refuse('holes-larger-than-the-floor', 'grossArea');
    return net;
  },
});
