import type { AreaDrawing, Dot, RoomPlace } from '../worker/api.ts';
import type { FloorFrame } from './geometry.ts';

/** Rooms where the building has them: a drawing in the coordinates of its room, moved to its place among the others. */

export const placedDot = ({ cos, sin, dx, dy }: RoomPlace, [x, y]: Dot): Dot => [
  cos * x - sin * y + dx,
  sin * x + cos * y + dy,
];

export function placedArea(area: AreaDrawing, room: RoomPlace): AreaDrawing {
  const dot = (one: Dot): Dot => placedDot(room, one);
  const dots = (line: readonly Dot[]): readonly Dot[] => line.map(dot);
  return {
    ...area,
    outline: dots(area.outline),
    holes: area.holes.map(dots),
    exits: area.exits.map((exit) => ({ ...exit, from: dot(exit.from), to: dot(exit.to) })),
    joints: area.joints.map((joint) => ({ ...joint, along: dots(joint.along) })),
    cracks: area.cracks.map((crack) => ({ ...crack, along: dots(crack.along) })),
    spots: area.spots.map((spot) => ({ ...spot, at: dot(spot.at) })),
    points: area.points.map((point) => ({ ...point, at: dot(point.at) })),
    sun: area.sun.map((patch) => ({ ...patch, outline: dots(patch.outline) })),
  };
}

/** The frame a layer of one room is drawn in, so that it need not know where the room lies. */
export function roomFrame(frame: FloorFrame, room: RoomPlace, outline: readonly Dot[]): FloorFrame {
  const at = (dot: Dot): Dot => frame.at(placedDot(room, dot));
  const on = outline.map(at);
  const [xs, ys] = [on.map(([x]) => x), on.map(([, y]) => y)];
  return {
    ...frame,
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
    at,
  };
}
