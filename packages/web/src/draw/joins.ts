import { freshId, insertAt, listAt, type Raw, textAt, valueAt } from '../edit/path.ts';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';
import { distance, dotOf, typedDot } from './lengths.ts';

/** Doors between rooms: a stretch of wall in one room and the same opening in another, each in its room's coordinates. */

export interface DoorSide {
  readonly area: string;
  readonly from: Dot;
  readonly to: Dot;
}

/** A stretch of a wall, from so far behind its first corner and so wide; null where the wall is shorter. */
export function wallStretch(
  outline: readonly Dot[],
  wall: number,
  behind: number,
  width: number,
): readonly [Dot, Dot] | null {
  const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
  if (!a || !b || behind < 0 || width <= 0) return null;
  const length = distance(a, b);
  // A tape read to the millimetre may end a door a hair past its corner.
  if (length === 0 || behind + width > length + 0.001) return null;
  const at = (by: number): Dot => [a[0] + ((b[0] - a[0]) * by) / length, a[1] + ((b[1] - a[1]) * by) / length];
  return [at(behind), at(Math.min(behind + width, length))];
}

/** Writes a door into the draft of a job as a tape would read it. */
export function joinRooms(draft: Raw, one: DoorSide, other: DoorSide, units: Units, wall: string): void {
  const side = ({ area, from, to }: DoorSide) => ({ area, from: typedDot(from, units), to: typedDot(to, units) });
  const door = {
    id: freshId('door', listAt(draft, ['doors'])),
    sides: [side(one), side(other)],
    ...(wall.trim() === '' ? {} : { wall: wall.trim() }),
  };
  insertAt(draft, ['doors'], door);
}

/** A door of the file as it lies in one of its rooms; null where the room is none of its, or its ends cannot be read. */
export function sideIn(
  door: Raw,
  area: string,
): { readonly from: Dot; readonly to: Dot; readonly other: string } | null {
  for (const [mine, theirs] of [
    [0, 1],
    [1, 0],
  ] as const) {
    if (textAt(door, ['sides', mine, 'area']) !== area) continue;
    const [from, to] = [dotOf(valueAt(door, ['sides', mine, 'from'])), dotOf(valueAt(door, ['sides', mine, 'to']))];
    if (from && to) return { from, to, other: textAt(door, ['sides', theirs, 'area']) };
  }
  return null;
}

/** The drawing of a room with its doors to other rooms as openings in its walls. */
export function withDoors(drawing: AreaDrawing, doors: readonly Raw[], nameOf: (area: string) => string): AreaDrawing {
  const openings = doors.flatMap((door) => {
    const side = sideIn(door, drawing.id);
    if (!side) return [];
    const { from, to, other } = side;
    const name = textAt(door, ['name']) || nameOf(other);
    return [{ id: textAt(door, ['id']), name, from, to, shut: valueAt(door, ['shut']) === true, outside: false }];
  });
  return openings.length === 0 ? drawing : { ...drawing, exits: [...drawing.exits, ...openings] };
}
