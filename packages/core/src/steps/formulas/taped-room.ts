import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { roomFromTape, squareCorner } from '../../science/shape/index.ts';

const takes = {
  cornerCount: '1',
  from: '1[]',
  to: '1[]',
  lengths: 'm[]',
  deviations: 'm[]',
  squareCorners: '1[]',
} as const;
const holds = { cornerCount: [3, 60], lengths: [0.05, 500], deviations: [1e-4, 0.1] } as const;
const refuses = { cornerCount: [3, 1000], lengths: [1e-6, 1e6], deviations: [1e-9, 1e3] } as const;
const together = [['from', 'to', 'lengths', 'deviations']] as const;
const inputShows = {
  cornerCount: 'count',
  from: 'count',
  to: 'count',
  lengths: 'length',
  deviations: 'small-length',
  squareCorners: 'count',
} as const;

function roomOf({ cornerCount, from, to, lengths, deviations, squareCorners }: Values<typeof takes>) {
  const distances = lengths.map((length, i) => ({
    kind: 'distance' as const,
    from: from[i] as number,
    to: to[i] as number,
    length,
    deviation: deviations[i] as number,
  }));
  const taped = roomFromTape({ cornerCount, measures: [...distances, ...squareCorners.map((c) => squareCorner(c))] });
  if (!taped.ok) throw new Refuse(taped.trouble.code, 'lengths');
  return taped.room;
}

/** Corners of a taped room, m: x and y in turn, the first corner at the origin, the first wall along x. */
export const cornersFromTape = formula({
  id: 'survey/corners-from-tape',
  says: 'Corners that fit the sides and diagonals of a room best',
  equation: 'corners = argmin sum(((computed − taped) / deviation)²)',
  takes,
  gives: 'm[]',
  holds,
  refuses,
  together,
  source: 'error-propagation',
  locator: 'weighed least squares',
  notes: 'Sides alone fix a triangle only; a room of n corners needs n − 3 diagonals, one more to check anything.',
  noOutsideRow: 'The adjustment is checked where it lives, in the shape laws; here it only gets an entry.',
  shows: 'length',
  inputShows,
  compute: (values) => roomOf(values).corners.flat(),
});

/** Standard deviation of the area of a taped room by its readings, m². */
export const tapedAreaError = formula({
  id: 'survey/taped-area-error',
  says: 'Standard deviation of the area of a taped room',
  equation: 'error = sqrt(slope covariance slope)',
  takes,
  gives: 'm²',
  holds,
  refuses,
  together,
  source: 'error-propagation',
  locator: 'covariance of the adjusted corners',
  noOutsideRow: 'The adjustment is checked where it lives, in the shape laws; here it only gets an entry.',
  shows: 'area',
  inputShows,
  compute: (values) => roomOf(values).areaDeviation,
});
