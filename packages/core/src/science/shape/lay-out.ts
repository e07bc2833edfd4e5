import { DOOR_OFF_WALL, type DoorOnWall, doorOnWall } from './door-on-wall.ts';
import { areaShared } from './overlap.ts';
import { boxOf, type Point, perimeterOf, type Ring } from './polygon.ts';

/**
 * Rooms drawn each in its own coordinates, put together by their doors as the building has them: every room is turned
 * and moved, never stretched or mirrored, until the doorways of two rooms face each other across the wall.
 */

export interface RoomShape {
  readonly id: string;
  readonly outline: Ring;
}

export interface DoorSide {
  readonly area: string;
  readonly from: Point;
  readonly to: Point;
}

export interface DoorShape {
  readonly id: string;
  readonly sides: readonly [DoorSide, DoorSide];
  /** Thickness of the wall between the two rooms, m; absent: the rooms meet. */
  readonly wall?: number | undefined;
}

/** Where a room lies: `x' = cos·x − sin·y + dx`, `y' = sin·x + cos·y + dy`. */
export interface RoomPlaced {
  readonly area: string;
  /** Rooms joined by doors, directly or through others, are one group; counted from 0 in the order of the areas. */
  readonly group: number;
  readonly cos: number;
  readonly sin: number;
  readonly dx: number;
  readonly dy: number;
  readonly outline: Ring;
}

/** A door between two placed rooms. */
export interface DoorPlaced {
  readonly door: string;
  readonly areas: readonly [string, string];
  /** The doorway in the wall of each room, with the room on the left of who walks from the first point to the second. */
  readonly sides: readonly [readonly [Point, Point], readonly [Point, Point]];
  /** The threshold: middle of the wall, from post to post. */
  readonly threshold: readonly [Point, Point];
  /** How far its ends miss each other, m: 0 where the rooms were put together by this door, more where doors close a loop. */
  readonly gap: number;
}

export interface LaidOut {
  readonly rooms: readonly RoomPlaced[];
  readonly doors: readonly DoorPlaced[];
  /** Rooms of one group that lie over each other, with the area they share, m². */
  readonly overlaps: readonly { readonly areas: readonly [string, string]; readonly area: number }[];
  /** Doors that name no area of the drawing, the same area twice, or lie on no wall. */
  readonly unplaced: readonly string[];
}

/** A point of a room where the room lies. */
export const placedPoint = (
  { cos, sin, dx, dy }: Pick<RoomPlaced, 'cos' | 'sin' | 'dx' | 'dy'>,
  [x, y]: Point,
): Point => [cos * x - sin * y + dx, sin * x + cos * y + dy];

/** The way back: a point of the layout in the room's own coordinates. */
export const pointInRoom = (
  { cos, sin, dx, dy }: Pick<RoomPlaced, 'cos' | 'sin' | 'dx' | 'dy'>,
  [x, y]: Point,
): Point => [cos * (x - dx) + sin * (y - dy), cos * (y - dy) - sin * (x - dx)];

/** Rooms that no door joins stand beside each other, this far apart, m. */
const APART = 2;

type Placing = Omit<RoomPlaced, 'outline' | 'area'>;
interface Leaf {
  readonly door: DoorShape;
  readonly index: 0 | 1;
  readonly on: readonly [DoorOnWall, DoorOnWall];
}

const length = ([x, y]: Point): number => Math.sqrt(x * x + y * y);
const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1]];
const middle = (p: Point, q: Point): Point => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
const unit = (p: Point): Point => [p[0] / length(p), p[1] / length(p)];
/** A quarter turn drawn with a tape is a quarter turn: what is off by rounding alone is put right. */
const clean = (value: number): number =>
  Math.abs(value) < 1e-9 ? 0 : Math.abs(Math.abs(value) - 1) < 1e-12 ? Math.sign(value) : value;

/** Where the far room must lie so that its doorway faces the near one across the wall. */
function facing(near: Placing, mine: DoorOnWall, theirs: DoorOnWall, wall: number): Placing {
  const ownWay = minus(mine.end, mine.start);
  const turnedWay = unit([near.cos * ownWay[0] - near.sin * ownWay[1], near.sin * ownWay[0] + near.cos * ownWay[1]]);
  const farWay = unit(minus(theirs.end, theirs.start));
  // with the room on the left on both sides, the two doorways run against each other
  const cos = clean(-(turnedWay[0] * farWay[0] + turnedWay[1] * farWay[1]));
  const sin = clean(-(turnedWay[1] * farWay[0] - turnedWay[0] * farWay[1]));
  const [mx, my] = placedPoint(near, middle(mine.start, mine.end));
  // out of the near room: to the right of its doorway
  const target: Point = [mx + turnedWay[1] * wall, my - turnedWay[0] * wall];
  const [cx, cy] = middle(theirs.start, theirs.end);
  return { group: near.group, cos, sin, dx: target[0] - (cos * cx - sin * cy), dy: target[1] - (sin * cx + cos * cy) };
}

/**
 * Puts rooms together by their doors. The first room of each group keeps its own coordinates (groups after the first
 * are moved aside); the others follow door by door in the order given. A door that closes a loop places nothing: how
 * far it misses is told, and so are rooms that lie over each other.
 */
export function layOut(areas: readonly RoomShape[], doors: readonly DoorShape[]): LaidOut {
  const shapes = new Map(areas.map((area) => [area.id, area]));
  const unplaced: string[] = [];
  const leaves = new Map<string, Leaf[]>();
  const sound: (Leaf & { readonly index: 0 })[] = [];
  for (const door of doors) {
    const [one, other] = door.sides;
    const on = door.sides.map(({ area, from, to }) => {
      const shape = shapes.get(area);
      return shape && doorOnWall(shape.outline, from, to);
    });
    if (one.area === other.area || !on[0] || !on[1] || on[0].width <= 0 || on[1].width <= 0) {
      unplaced.push(door.id);
      continue;
    }
    const both = [on[0], on[1]] as const;
    sound.push({ door, index: 0, on: both });
    for (const index of [0, 1] as const) {
      const { area } = door.sides[index];
      leaves.set(area, [...(leaves.get(area) ?? []), { door, index, on: both }]);
    }
  }
  const placed = placeAll(areas, leaves);
  const rooms = standAside(
    areas.flatMap(({ id, outline }) => {
      const placing = placed.get(id);
      return placing ? [{ area: id, ...placing, outline: outline.map((p) => placedPoint(placing, p)) }] : [];
    }),
  );
  const roomOf = new Map(rooms.map((room) => [room.area, room]));
  return {
    rooms,
    doors: sound.map(({ door, on }) => doorPlaced(door, on, roomOf)),
    overlaps: overlapsOf(rooms),
    unplaced,
  };
}

function placeAll(areas: readonly RoomShape[], leaves: ReadonlyMap<string, readonly Leaf[]>): Map<string, Placing> {
  const placed = new Map<string, Placing>();
  let group = 0;
  for (const { id } of areas) {
    if (placed.has(id)) continue;
    placed.set(id, { group, cos: 1, sin: 0, dx: 0, dy: 0 });
    group += 1;
    const reached = [id];
    for (const here of reached) {
      const near = placed.get(here) as Placing;
      for (const { door, index, on } of leaves.get(here) ?? []) {
        const there = door.sides[index === 0 ? 1 : 0].area;
        if (placed.has(there)) continue;
        placed.set(there, facing(near, on[index], on[index === 0 ? 1 : 0], door.wall ?? 0));
        reached.push(there);
      }
    }
  }
  return placed;
}

/** Groups side by side along x, in their order, so that a drawing shows each. */
function standAside(rooms: readonly RoomPlaced[]): readonly RoomPlaced[] {
  const groups = [...new Set(rooms.map(({ group }) => group))];
  let right = -Infinity;
  return groups.flatMap((group) => {
    const own = rooms.filter((room) => room.group === group);
    const box = boxOf(own.flatMap(({ outline }) => outline));
    const by = group === 0 ? 0 : right + APART - box.left;
    right = box.right + by;
    return by === 0
      ? own
      : own.map((room) => ({ ...room, dx: room.dx + by, outline: room.outline.map(([x, y]): Point => [x + by, y]) }));
  });
}

function doorPlaced(
  { id, sides, wall = 0 }: DoorShape,
  on: readonly [DoorOnWall, DoorOnWall],
  rooms: ReadonlyMap<string, RoomPlaced>,
): DoorPlaced {
  const put = (index: 0 | 1): readonly [Point, Point] => {
    const room = rooms.get(sides[index].area) as RoomPlaced;
    return [placedPoint(room, on[index].start), placedPoint(room, on[index].end)];
  };
  const [near, far] = [put(0), put(1)];
  const way = unit(minus(near[1], near[0]));
  const out: Point = [way[1] * wall, -way[0] * wall];
  // measured from middle to middle and end to end, so that a width that differs a little is no gap
  const half = length(minus(far[1], far[0])) / 2;
  const centre = middle(near[0], near[1]);
  const expected = [1, -1].map(
    (sign): Point => [centre[0] + out[0] + sign * way[0] * half, centre[1] + out[1] + sign * way[1] * half],
  ) as [Point, Point];
  const gap = Math.max(length(minus(far[0], expected[0])), length(minus(far[1], expected[1])));
  return {
    door: id,
    areas: [sides[0].area, sides[1].area],
    sides: [near, far],
    threshold: [middle(near[0], far[1]), middle(near[1], far[0])],
    gap: gap < 1e-9 ? 0 : gap,
  };
}

function overlapsOf(rooms: readonly RoomPlaced[]): LaidOut['overlaps'] {
  return rooms.flatMap((one, i) =>
    rooms.slice(i + 1).flatMap((other) => {
      if (one.group !== other.group) return [];
      const area = areaShared(one.outline, other.outline);
      // a sliver as wide as the tape's slack along two walls is the tape's doing
      const slack = (DOOR_OFF_WALL * Math.min(perimeterOf(one.outline), perimeterOf(other.outline))) / 2;
      return area > slack ? [{ areas: [one.area, other.area] as const, area }] : [];
    }),
  );
}
