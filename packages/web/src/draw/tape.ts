import { type RoomFromTape, roomFromTape, squareCorner, type TapeTrouble } from '@slabwright/core';
import { listAt, type Raw, textAt } from '../edit/path.ts';
import { INCH, metres } from './lengths.ts';

/** A room of sides and diagonals, solved while it is typed. */

export interface TapeLine {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly length: number | null;
}

export type Solved =
  | { readonly is: 'none' }
  /** Some measures cannot be read yet. */
  | { readonly is: 'typing' }
  | { readonly is: 'trouble'; readonly trouble: TapeTrouble }
  | { readonly is: 'room'; readonly room: RoomFromTape; readonly residuals: ReadonlyMap<number, number> };

export const cornersOf = (area: Raw): readonly string[] => listAt(area, ['tape', 'corners']).map(String);

export function linesOf(area: Raw): readonly TapeLine[] {
  const corners = cornersOf(area);
  return listAt(area, ['tape', 'measures']).map((measure, index) => ({
    index,
    from: corners.indexOf(textAt(measure, ['from'])),
    to: corners.indexOf(textAt(measure, ['to'])),
    length: metres(textAt(measure, ['length'])),
  }));
}

/** Standard deviation of a reading where nobody states one: a quarter inch, as the plan takes it. */
const USUAL_ERROR = INCH / 4;

export function solveTape(area: Raw): Solved {
  const corners = cornersOf(area);
  const lines = linesOf(area);
  if (corners.length === 0) return { is: 'none' };
  const known = lines.filter(
    ({ from, to, length }) => from >= 0 && to >= 0 && from !== to && length !== null && length > 0,
  );
  if (known.length === 0) return { is: 'typing' };
  const error = metres(textAt(area, ['tape', 'error'])) || USUAL_ERROR;
  const square = listAt(area, ['tape', 'rightAngles'])
    .map((name) => corners.indexOf(String(name)))
    .filter((corner) => corner >= 0);
  const solved = roomFromTape({
    cornerCount: corners.length,
    measures: [
      ...known.map(({ from, to, length }) => ({
        kind: 'distance' as const,
        from,
        to,
        length: length as number,
        deviation: error,
      })),
      ...square.map((corner) => squareCorner(corner)),
    ],
  });
  if (!solved.ok) return known.length < lines.length ? { is: 'typing' } : { is: 'trouble', trouble: solved.trouble };
  const residuals = new Map(known.map(({ index }, k) => [index, solved.room.residuals[k]?.residual ?? 0]));
  return { is: 'room', room: solved.room, residuals };
}

/** A room to be taped: corners in order, one empty measure for every side. */
export function emptyTape(count: number): Raw {
  const corners = Array.from({ length: count }, (_, i) => cornerName(i));
  return { corners, measures: corners.map((from, i) => ({ from, to: corners[(i + 1) % count], length: '' })) };
}

/** a, b, c, then a1, b1. */
export const cornerName = (index: number): string =>
  `${String.fromCharCode(97 + (index % 26))}${index >= 26 ? Math.floor(index / 26) : ''}`;

export const isSide = ({ from, to }: TapeLine, count: number): boolean =>
  Math.abs(from - to) === 1 || Math.abs(from - to) === count - 1;
