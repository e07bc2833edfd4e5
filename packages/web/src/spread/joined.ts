import { lengthText } from '../draw/lengths.ts';
import { extentOf } from '../floor/geometry.ts';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';
import type { Coat } from './coats.ts';

/** Rooms that doors join are spread as one floor: one drawing, in the coordinates of its first room. */

type Joined = NonNullable<Coat['joined']>;
export type Placed = Joined['rooms'][number]['placed'];

/** A place of a room on the joined floor, and back. */
export const onFloor = ({ cos, sin, dx, dy }: Placed, [x, y]: Dot): Dot => [
  cos * x - sin * y + dx,
  sin * x + cos * y + dy,
];
export const inRoom = ({ cos, sin, dx, dy }: Placed, [x, y]: Dot): Dot => [
  cos * (x - dx) + sin * (y - dy),
  cos * (y - dy) - sin * (x - dx),
];

/** A room drawn by itself lies where it is. */
export const HERE: Placed = { cos: 1, sin: 0, dx: 0, dy: 0 };

export const placedIn = (coat: Coat | null, area: string): Placed =>
  coat?.joined?.rooms.find((room) => room.area === area)?.placed ?? HERE;

/** The rooms of a coat as one drawing, with what lies in each where it lies; null where the coat has one room. */
export function joinedDrawing(coat: Coat, areas: readonly AreaDrawing[], units: Units): AreaDrawing | null {
  const { joined } = coat;
  if (!joined) return null;
  const rooms = joined.rooms.flatMap(({ area, placed }) => {
    const drawn = areas.find(({ id }) => id === area);
    return drawn ? [{ drawn, put: (dot: Dot): Dot => onFloor(placed, dot) }] : [];
  });
  const every = <T>(pick: (drawn: AreaDrawing, put: (dot: Dot) => Dot) => readonly T[]): readonly T[] =>
    rooms.flatMap(({ drawn, put }) => pick(drawn, put));
  const extent = extentOf(joined.outline);
  const along = (axis: 0 | 1): string => (extent ? lengthText(extent.most[axis] - extent.least[axis], units) : '');
  return {
    id: coat.areas.join('+'),
    name: rooms.map(({ drawn }) => drawn.name).join(', '),
    outline: joined.outline,
    holes: joined.holes,
    exits: [
      ...joined.exits.map(({ name, along: [from, to], outside }, i) => ({
        id: `out-${i}`,
        name,
        from: from as Dot,
        to: to as Dot,
        shut: false,
        outside,
      })),
      ...every((drawn, put) =>
        drawn.exits
          .filter(({ shut }) => shut)
          .map((exit) => ({ ...exit, id: `${drawn.id} ${exit.id}`, from: put(exit.from), to: put(exit.to) })),
      ),
    ],
    joints: [
      ...every((drawn, put) => drawn.joints.map((one) => ({ ...one, along: one.along.map(put) }))),
      ...joined.doorways.map(({ door, along: line }) => ({ id: door, kind: 'isolation', along: line })),
    ],
    cracks: every((drawn, put) => drawn.cracks.map((one) => ({ ...one, along: one.along.map(put) }))),
    spots: every((drawn, put) => drawn.spots.map((one) => ({ ...one, at: put(one.at) }))),
    points: every((drawn, put) => drawn.points.map((one) => ({ ...one, at: put(one.at) }))),
    sun: every((drawn, put) => drawn.sun.map((one) => ({ ...one, outline: one.outline.map(put) }))),
    width: along(0),
    depth: along(1),
  };
}
