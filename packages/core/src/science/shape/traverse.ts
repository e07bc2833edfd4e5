import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/**
 * Gap at the end of a measured round of courses, m: where the last course should have met the first corner.
 *
 * For taped rooms least squares over sides and diagonals says more; this serves a round measured by bearings.
 */
export const misclosure = formula({
  id: 'shape/misclosure',
  says: 'Gap at the end of a measured round of courses',
  equation: 'gap = hypot(sum(departures), sum(latitudes))',
  takes: { departures: 'm[]', latitudes: 'm[]' },
  gives: 'm',
  holds: { departures: [-1000, 1000], latitudes: [-1000, 1000] },
  refuses: { departures: [-1e6, 1e6], latitudes: [-1e6, 1e6] },
  together: [['departures', 'latitudes']],
  source: 'surveying-traverse',
  locator: 'linear misclosure',
  shows: 'small-length',
  inputShows: { departures: 'length', latitudes: 'length' },
  noOutsideRow: 'The textbook traverse that is checked is from memory (MEM).',
  compute: ({ departures, latitudes }) => {
    if (departures.length < 3) throw new Refuse('outline-needs-three-corners', 'departures');
    const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);
    return Math.hypot(sum(departures), sum(latitudes));
  },
});
