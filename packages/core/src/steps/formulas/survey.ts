import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const DAY = 86_400;

/**
 * Floor less its columns and pads, m², with the error of the tape.
 *
 * One tape measured the whole drawing: if it reads long, every side is long together. So the relative error of a
 * length counts twice in an area, under one shared cause `tape`, and does not average out over the corners.
 */
export const netArea = formula({
  id: 'survey/net-area',
  says: 'Floor less its columns, pits and pads, with the error of the tape',
  equation: 'net = gross − sum(holes); deviation = 2 × tapeError × net',
  takes: { grossArea: 'm²', holeAreas: 'm²[]', tapeError: '1' },
  gives: 'm²',
  holds: { grossArea: [0.5, 50_000], holeAreas: [0, 10_000], tapeError: [0, 0.05] },
  refuses: { grossArea: [0, 1e9], holeAreas: [0, 1e9], tapeError: [0, 1] },
  source: 'plane-geometry',
  noOutsideRow: 'A subtraction; the invented workshop is worked by hand (own arithmetic).',
  shows: 'area',
  inputShows: { grossArea: 'area', holeAreas: 'area', tapeError: 'share' },
  compute: ({ grossArea, holeAreas }) => {
    const net = holeAreas.reduce((rest, hole) => rest - hole, grossArea);
    if (net <= 0) throw new Refuse('holes-larger-than-the-floor', 'grossArea');
    return net;
  },
  band: ({ tapeError }, net) => ({ causes: { tape: 2 * tapeError * net } }),
});

/** All edges of a floor, m: the outline and the edge of every hole, door openings included. */
export const allEdges = formula({
  id: 'survey/all-edges',
  says: 'Length of all edges of a floor, doors included',
  equation: 'edges = sum(perimeters); deviation = tapeError × edges',
  takes: { perimeters: 'm[]', tapeError: '1' },
  gives: 'm',
  holds: { perimeters: [1, 10_000], tapeError: [0, 0.05] },
  refuses: { perimeters: [0, 1e7], tapeError: [0, 1] },
  source: 'plane-geometry',
  noOutsideRow: 'A sum of lengths; worked by hand (own arithmetic).',
  shows: 'length',
  inputShows: { perimeters: 'length', tapeError: 'share' },
  compute: ({ perimeters }) => perimeters.reduce((sum, length) => sum + length, 0),
  band: ({ tapeError }, edges) => ({ causes: { tape: tapeError * edges } }),
});

/** Walls and columns a hand machine must follow, m: all edges less the door openings. */
export const edgeToWork = formula({
  id: 'survey/edge',
  says: 'Walls and columns a hand machine must follow, door openings left out',
  equation: 'edge = edges − sum(openings)',
  takes: { edges: 'm', openings: 'm[]' },
  gives: 'm',
  holds: { edges: [1, 10_000], openings: [0, 100] },
  refuses: { edges: [0, 1e7], openings: [0, 1e6] },
  source: 'plane-geometry',
  noOutsideRow: 'A subtraction; worked by hand (own arithmetic).',
  shows: 'length',
  inputShows: { edges: 'length', openings: 'length' },
  compute: ({ edges, openings }) => {
    const edge = openings.reduce((rest, opening) => rest - opening, edges);
    if (edge < 0) throw new Refuse('openings-longer-than-the-walls', 'openings');
    return edge;
  },
});

/** Length of a line drawn over the floor, a crack or a joint, m: straight from point to point. */
export const lineLength = formula({
  id: 'survey/line-length',
  says: 'Length of a crack or joint drawn from point to point',
  equation: 'length = sum(hypot(x_next − x_i, y_next − y_i))',
  takes: { pointsX: 'm[]', pointsY: 'm[]' },
  gives: 'm',
  holds: { pointsX: [-1000, 1000], pointsY: [-1000, 1000] },
  refuses: { pointsX: [-1e7, 1e7], pointsY: [-1e7, 1e7] },
  together: [['pointsX', 'pointsY']],
  source: 'plane-geometry',
  noOutsideRow: 'A sum of distances; worked by hand (own arithmetic).',
  shows: 'length',
  inputShows: { pointsX: 'length', pointsY: 'length' },
  compute: ({ pointsX, pointsY }) => {
    if (pointsX.length < 2) throw new Refuse('line-needs-two-points', 'pointsX');
    let length = 0;
    for (let i = 1; i < pointsX.length; i++) {
      length += Math.hypot(
        (pointsX[i] as number) - (pointsX[i - 1] as number),
        (pointsY[i] as number) - (pointsY[i - 1] as number),
      );
    }
    return length;
  },
});

/** Sum of areas, m². No areas give 0. */
export const totalArea = formula({
  id: 'survey/total-area',
  says: 'Floor of all areas together',
  equation: 'total = sum(areas)',
  takes: { areas: 'm²[]' },
  gives: 'm²',
  holds: { areas: [0, 50_000] },
  refuses: { areas: [0, 1e9] },
  source: 'plane-geometry',
  noOutsideRow: 'A sum; worked by hand (own arithmetic).',
  shows: 'area',
  inputShows: { areas: 'area' },
  compute: ({ areas }) => areas.reduce((sum, area) => sum + area, 0),
});

/** Sum of lengths, m. */
export const totalLength = formula({
  id: 'survey/total-length',
  says: 'Lengths together',
  equation: 'total = sum(lengths)',
  takes: { lengths: 'm[]' },
  gives: 'm',
  holds: { lengths: [0, 10_000] },
  refuses: { lengths: [0, 1e7] },
  source: 'plane-geometry',
  noOutsideRow: 'A sum; worked by hand (own arithmetic).',
  shows: 'length',
  inputShows: { lengths: 'length' },
  compute: ({ lengths }) => lengths.reduce((sum, length) => sum + length, 0),
});

/** Length of all riser edges of a flight, m. */
export const riserLength = formula({
  id: 'survey/riser-length',
  says: 'Length of all riser edges of a flight',
  equation: 'length = riserCount × width',
  takes: { riserCount: '1', width: 'm' },
  gives: 'm',
  holds: { riserCount: [1, 60], width: [0.3, 20] },
  refuses: { riserCount: [0, 10_000], width: [0, 1000] },
  source: 'plane-geometry',
  noOutsideRow: 'A product; worked by hand (own arithmetic).',
  shows: 'length',
  inputShows: { riserCount: 'count', width: 'length' },
  compute: ({ riserCount, width }) => riserCount * width,
});

/** Age from whole days, s. */
export const ageFromDays = formula({
  id: 'survey/age',
  says: 'Age in whole days between two dates',
  equation: 'age = days × 86400 s',
  takes: { days: '1' },
  gives: 's',
  holds: { days: [0, 80_000] },
  refuses: { days: [0, 1e6] },
  source: 'civil-calendar',
  noOutsideRow: 'A day has 86,400 s; worked by hand (own arithmetic).',
  shows: 'duration',
  inputShows: { days: 'count' },
  compute: ({ days }) => days * DAY,
});

/** Relative error of a length, from the error of an area measured with the same tape: half of it. */
export const lengthErrorFromArea = formula({
  id: 'survey/length-error-from-area',
  says: 'Relative error of a length, from the error of the area taped with it',
  equation: 'tapeError = areaError / (2 × area)',
  takes: { areaError: 'm²', area: 'm²' },
  gives: '1',
  holds: { areaError: [0, 100], area: [0.5, 50_000] },
  refuses: { areaError: [0, 1e6], area: [1e-6, 1e9] },
  source: 'error-propagation',
  noOutsideRow: 'First-order propagation of A = l²; worked by hand (own arithmetic).',
  shows: 'share',
  inputShows: { areaError: 'area', area: 'area' },
  compute: ({ areaError, area }) => areaError / (2 * area),
});
