import type { Area } from '../../drawing.ts';
import type { Said } from '../../kernel/said.ts';
import {
  areaOf,
  type DoorPlaced,
  holdsPoint,
  joinRooms,
  layOut,
  placedPoint,
  type RoomPlaced,
} from '../../science/shape/index.ts';
import type * as planner from '../../spread/index.ts';
import type { OptionContext } from '../context.ts';
import { coatedAreas } from '../quantities/coated-areas.ts';
import type { AreaMeasure, SurveyPlan } from '../results.ts';
import { doorShapes } from '../survey/ring.ts';

type Point = planner.Point;

export type Door = planner.Exit & { readonly name: string };

/** One area of a part, where it lies in it. */
export interface PartRoom {
  readonly area: AreaMeasure;
  readonly placed: RoomPlaced;
  readonly holes: readonly planner.Ring[];
  /** The door from which places in this room are measured: its own way out, else the doorway towards one. */
  readonly door: Door | undefined;
}

/** Floor that hangs together: one area, or several that doors join. In the coordinates of its first area. */
export interface FloorPart {
  readonly areas: readonly AreaMeasure[];
  readonly rooms: readonly PartRoom[];
  readonly outline: planner.Ring;
  readonly holes: readonly planner.Ring[];
  readonly walls: readonly (readonly [Point, Point])[];
  readonly exits: readonly Door[];
  readonly stopLines: readonly (planner.StopLine & { readonly name: string })[];
  /** Doorways between its rooms: their threshold is a stop line too. */
  readonly doorways: readonly { readonly door: string; readonly threshold: readonly [Point, Point] }[];
  /** Floor in the doorways, in the thickness of the walls, m². */
  readonly doorwayArea: number;
  readonly notes: readonly Said[];
}

type Pair = readonly [{ readonly value: number }, { readonly value: number }];
type Place = (p: Point) => Point;
const pair = ([x, y]: Pair): Point => [x.value, y.value];
const distance = (a: Point, b: Point): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
const width = ({ a, b }: planner.Exit): number => distance(a, b);

/** Joints of the drawing, and the tape lines somebody chose for this option. */
function stopLinesOf({ option }: OptionContext, area: Area, put: Place): FloorPart['stopLines'] {
  const joints = (area.joints ?? []).flatMap(({ id, along }) =>
    along.slice(1).map((to, i) => ({
      a: put(pair(along[i] as Pair)),
      b: put(pair(to)),
      kind: 'joint' as const,
      name: id,
    })),
  );
  const tapes = (option.stopLines ?? [])
    .filter((line) => line.area === area.id)
    .map(({ id, from, to }) => ({ a: put(pair(from)), b: put(pair(to)), kind: 'tape' as const, name: id }));
  return [...joints, ...tapes];
}

/** Which way out the ends are measured from: the widest door that leads outside, else the widest. */
export function mainDoor(exits: readonly Door[]): { readonly index: number; readonly door: Door } | undefined {
  const ranked = exits
    .map((door, index) => ({ door, index }))
    .sort((p, q) => Number(q.door.outside) - Number(p.door.outside) || width(q.door) - width(p.door));
  return ranked[0];
}

/** From here on, on both sides of a door, lanes come towards it from two sides: an assumption, about three lanes. */
const BESIDE_DOOR_M = 1.5;
/** A hole as large as two lanes parts them; a column is gone round. */
const PARTS_LANES_M = 1;

/** A door with much wall on both sides: nobody walks out along a side wall. */
function inMidWall(outline: planner.Ring, { a, b }: planner.Exit): boolean {
  return outline.some((from, i) => {
    const to = outline[(i + 1) % outline.length] as Point;
    const length = distance(from, to);
    const on = (p: Point): boolean => Math.abs(distance(from, p) + distance(p, to) - length) < 0.02;
    if (!on(a) || !on(b)) return false;
    const near = Math.min(distance(from, a), distance(from, b));
    const far = Math.min(distance(to, a), distance(to, b));
    return near >= BESIDE_DOOR_M && far >= BESIDE_DOOR_M;
  });
}

function notesOn(area: Area, outline: planner.Ring, holes: readonly planner.Ring[], exits: readonly Door[]) {
  const [widest] = [...exits].sort((p, q) => width(q) - width(p));
  const middle = widest && inMidWall(outline, widest);
  const large = (area.holes ?? []).filter((_, i) => {
    const ring = holes[i] ?? [];
    const span = (axis: 0 | 1): number => Math.max(...ring.map((p) => p[axis])) - Math.min(...ring.map((p) => p[axis]));
    return ring.length > 0 && Math.min(span(0), span(1)) >= PARTS_LANES_M;
  });
  return [
    ...(middle ? [{ code: 'spread-door-in-mid-wall', names: { door: widest.name } }] : []),
    ...large.map(({ id, name }) => ({ code: 'spread-hole-parts-lanes', names: { hole: name ?? id } })),
  ];
}

/** An exit drawn where a doorway to another room of the same part is: that doorway says it already. */
const atDoorway = (exit: Door, doorways: readonly DoorPlaced[]): boolean =>
  doorways.some(({ sides }) =>
    sides.some(([a, b]) => {
      const middle: Point = [(exit.a[0] + exit.b[0]) / 2, (exit.a[1] + exit.b[1]) / 2];
      return distance(a, middle) + distance(b, middle) < distance(a, b) + 0.1;
    }),
  );

/** Doors between rooms, each with its name, and those that lead into a room this option leaves alone. */
interface Doorways {
  readonly between: readonly { readonly id: string; readonly name: string; readonly placed: DoorPlaced }[];
  readonly elsewhere: ReadonlyMap<string, readonly Door[]>;
}

function roomsOf(
  areas: readonly { readonly area: Area; readonly measure: AreaMeasure; readonly placed: RoomPlaced }[],
  doorways: Doorways,
): { readonly rooms: readonly PartRoom[]; readonly exits: readonly Door[]; readonly notes: readonly Said[] } {
  const own = areas.map(({ area, measure, placed }) => {
    const put: Place = (p) => placedPoint(placed, p);
    const drawn = (area.exits ?? []).filter(({ shut }) => !shut);
    const exits = drawn
      .map(
        ({ id, name, from, to, outside }): Door => ({
          a: put(pair(from)),
          b: put(pair(to)),
          outside: outside === true,
          name: name ?? id,
        }),
      )
      .filter(
        (exit) =>
          !atDoorway(
            exit,
            doorways.between.map(({ placed: door }) => door),
          ),
      );
    const inside = (doorways.elsewhere.get(area.id) ?? []).map((door) => ({ ...door, a: put(door.a), b: put(door.b) }));
    const holes = measure.holes.map((ring) => ring.map(put));
    const all = [...exits, ...inside];
    return { area: measure, placed, holes, exits: all, notes: notesOn(area, placed.outline, holes, all) };
  });
  const exits = own.flatMap((room) => room.exits);
  const main = mainDoor(exits)?.door;
  // from the room with the main way out inwards: the doorway one came through leads back to it
  const doors = new Map<string, Door>();
  const start = own.find((room) => main && room.exits.includes(main)) ?? own[0];
  const reached = start ? [start.area.id] : [];
  if (start && main) doors.set(start.area.id, main);
  for (const here of reached) {
    for (const { name, placed } of doorways.between) {
      const side = placed.areas.indexOf(here);
      if (side < 0) continue;
      const there = placed.areas[side === 0 ? 1 : 0];
      if (reached.includes(there)) continue;
      reached.push(there);
      const [a, b] = placed.sides[side === 0 ? 1 : 0];
      doors.set(there, { a, b, outside: false, name });
    }
  }
  return {
    rooms: own.map(({ area, placed, holes, exits: mine }) => {
      const outside = mainDoor(mine.filter((door) => door.outside))?.door;
      return { area, placed, holes, door: outside ?? doors.get(area.id) };
    }),
    exits,
    notes: own.flatMap(({ notes }) => notes),
  };
}

/** The floor of an option as parts that are spread one after the other; rooms that open doors join are one part. */
export function floorParts(ctx: OptionContext, surveyed: SurveyPlan): readonly FloorPart[] {
  const coated = coatedAreas(ctx, surveyed).flatMap(({ measure }) => {
    const area = ctx.job.areas.find(({ id }) => id === measure.id);
    return area ? [{ area, measure }] : [];
  });
  const here = new Set(coated.map(({ area }) => area.id));
  const doors = (ctx.job.doors ?? []).filter(({ shut }) => !shut);
  const nameOf = new Map(doors.map(({ id, name }) => [id, name ?? id]));
  const joining = doors.filter(({ sides }) => sides.every(({ area }) => here.has(area)));
  const elsewhere = new Map<string, Door[]>();
  for (const { id, name, sides } of doors) {
    const inside = sides.filter(({ area }) => here.has(area));
    const [only] = inside;
    if (!only || inside.length === 2) continue;
    const door: Door = { a: pair(only.from), b: pair(only.to), outside: false, name: name ?? id };
    elsewhere.set(only.area, [...(elsewhere.get(only.area) ?? []), door]);
  }
  const shapes = coated.map(({ measure }) => ({ id: measure.id, outline: measure.outline }));
  const groups = layOut(shapes, doorShapes(joining)).rooms;
  return [...new Set(groups.map(({ group }) => group))].map((group): FloorPart => {
    const ids = new Set(groups.filter((room) => room.group === group).map(({ area }) => area));
    // laid out by itself, so that its first area keeps the coordinates it was drawn in
    const laid = layOut(
      shapes.filter(({ id }) => ids.has(id)),
      doorShapes(joining.filter(({ sides }) => sides.every(({ area }) => ids.has(area)))),
    );
    const floor = joinRooms(laid);
    const open = laid.doors.filter(({ door }) => floor.open.includes(door));
    const areas = laid.rooms.flatMap((placed) => {
      const found = coated.find(({ area }) => area.id === placed.area);
      return found ? [{ ...found, placed }] : [];
    });
    const between = open.map((placed) => ({ id: placed.door, name: nameOf.get(placed.door) ?? placed.door, placed }));
    const { rooms, exits, notes } = roomsOf(areas, { between, elsewhere });
    const single = areas.length === 1;
    const put = (area: Area, placed: RoomPlaced) =>
      (area.walls ?? []).map(
        ({ from, to }) => [placedPoint(placed, pair(from)), placedPoint(placed, pair(to))] as const,
      );
    return {
      areas: areas.map(({ measure }) => measure),
      rooms,
      outline: single ? (areas[0]?.measure.outline ?? []) : floor.outline,
      holes: [...rooms.flatMap(({ holes }) => holes), ...floor.holes],
      walls: [...areas.flatMap(({ area, placed }) => put(area, placed)), ...(single ? [] : floor.walls)],
      exits,
      stopLines: [
        ...areas.flatMap(({ area, placed }) => stopLinesOf(ctx, area, (p) => placedPoint(placed, p))),
        ...between.map(({ name, placed: { threshold } }) => ({
          a: threshold[0],
          b: threshold[1],
          kind: 'threshold' as const,
          name,
        })),
      ],
      doorways: between.map(({ name, placed: { threshold } }) => ({ door: name, threshold })),
      doorwayArea: floor.doorways,
      notes,
    };
  });
}

/** Which room of a part a point lies in; in a doorway, the nearer one by the middle of its floor. */
export function roomAt({ rooms }: FloorPart, p: Point): number {
  const found = rooms.findIndex(({ placed }) => holdsPoint(placed.outline, p));
  if (found >= 0) return found;
  let best = 0;
  let near = Infinity;
  rooms.forEach(({ placed: { outline } }, i) => {
    const away = Math.min(...outline.map((a, k) => distanceToWall(p, a, outline[(k + 1) % outline.length] as Point)));
    if (away < near) [best, near] = [i, away];
  });
  return best;
}

function distanceToWall(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square));
  return distance(p, [a[0] + along * dx, a[1] + along * dy]);
}

/** Narrowest doorway between rooms as squares see it, m: a doorway that runs aslant is narrower along both axes. */
export function narrowestDoorway({ doorways }: FloorPart): number {
  return Math.min(
    ...doorways.map(({ threshold: [a, b] }) => Math.max(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1]))),
    Infinity,
  );
}

/** Floor of a part as drawn, holes out, m². */
export const partArea = ({ outline, holes }: FloorPart): number =>
  holes.reduce((rest, hole) => rest - areaOf(hole), areaOf(outline));
