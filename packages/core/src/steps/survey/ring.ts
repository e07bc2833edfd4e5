import type { Area, AreaDoor } from '../../drawing.ts';
import type { DoorShape, Point, Ring, RoomShape } from '../../science/shape/index.ts';
import { roomOf } from './tape.ts';

/** Outline of an area in its own coordinates, m: as drawn, or as its taped sides give it; undefined where neither does. */
export function areaRing(area: Area): Ring | undefined {
  if (area.outline) return area.outline.map(([x, y]): Point => [x.value, y.value]);
  const { tape } = area;
  // a measure between corners that do not exist is said by the check of the tape
  if (!tape || tape.measures.some(({ from, to }) => !tape.corners.includes(from) || !tape.corners.includes(to))) {
    return undefined;
  }
  const room = roomOf(tape);
  return room.ok ? room.room.corners : undefined;
}

/** Areas that have an outline, for putting rooms together. */
export const roomShapes = (areas: readonly Area[]): readonly RoomShape[] =>
  areas.flatMap((area) => {
    const outline = areaRing(area);
    return outline ? [{ id: area.id, outline }] : [];
  });

const at = ([x, y]: AreaDoor['sides'][number]['from']): Point => [x.value, y.value];

/** Doors of a job in plain metres. */
export const doorShapes = (doors: readonly AreaDoor[]): readonly DoorShape[] =>
  doors.map(({ id, sides: [one, other], wall }) => ({
    id,
    sides: [
      { area: one.area, from: at(one.from), to: at(one.to) },
      { area: other.area, from: at(other.from), to: at(other.to) },
    ],
    ...(wall ? { wall: wall.value } : {}),
  }));
