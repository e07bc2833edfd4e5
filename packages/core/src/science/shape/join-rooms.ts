import type { LaidOut } from './lay-out.ts';
import { areaOf, cornerAt, type Point, perimeterOf, type Ring, signedArea, turned } from './polygon.ts';

/** Rooms of one group as one floor: its outline runs through the open doorways from room to room. */
export interface JoinedFloor {
  readonly outline: Ring;
  /** Walls that stand free inside, where doors close a loop. */
  readonly holes: readonly Ring[];
  /** Every wall of every room but the open doorways: rooms that touch are still two rooms. */
  readonly walls: readonly (readonly [Point, Point])[];
  /** Doors the floor runs through; the others are walls. */
  readonly open: readonly string[];
  /** Floor in the doorways, in the thickness of the walls, m². */
  readonly doorways: number;
}

/** Rooms taped one by one close a loop of doors this well, m; a door that misses by more stays a wall. No source. */
export const LOOP_SLACK = 0.1;
/** Enclosed wall of less than this is drawn as a line, m². */
const NO_HOLE = 1e-3;
const SAME = 1e-6;

interface Corner {
  readonly at: Point;
  next: Corner | undefined;
  used: boolean;
}

interface Cut {
  readonly door: string;
  /** Distances of the doorway's two ends along the outline from its first corner. */
  readonly from: number;
  readonly to: number;
}

const distance = (p: Point, q: Point): number => Math.sqrt((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2);

/** Length along a ring to the point of it nearest to `p`. */
function alongRing(ring: Ring, p: Point): number {
  let best = { off: Infinity, at: 0 };
  let before = 0;
  ring.forEach((a, i) => {
    const b = cornerAt(ring, i + 1);
    const length = distance(a, b);
    const t = length === 0 ? 0 : ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
    const on = Math.min(length, Math.max(0, t));
    const foot: Point = length === 0 ? a : [a[0] + ((b[0] - a[0]) * on) / length, a[1] + ((b[1] - a[1]) * on) / length];
    const off = distance(p, foot);
    if (off < best.off - 1e-12) best = { off, at: before + on };
    before += length;
  });
  return best.at;
}

/** Joins rooms that were laid out together. `shut`: doors that stay closed. Rooms must be of one group. */
export function joinRooms(laid: LaidOut, shut: ReadonlySet<string> = new Set()): JoinedFloor {
  const rings = new Map(laid.rooms.map(({ area, outline }) => [area, turned(outline)]));
  const cuts = new Map<string, Cut[]>(laid.rooms.map(({ area }) => [area, []]));
  const open: string[] = [];
  for (const { door, areas, sides, gap } of laid.doors) {
    if (shut.has(door) || gap > LOOP_SLACK) continue;
    const both = areas.map((area, i): Cut | undefined => {
      const ring = rings.get(area);
      const [start, end] = sides[i as 0 | 1];
      if (!ring) return undefined;
      const [from, to] = [alongRing(ring, start), alongRing(ring, end)];
      // a doorway that ends at the first corner ends where the round is full
      return { door, from, to: to > from ? to : to + perimeterOf(ring) };
    });
    const [one, other] = both;
    if (!one || !other) continue;
    const clashes = (cut: Cut, area: string): boolean =>
      (cuts.get(area) ?? []).some(({ from, to }) => cut.from < to - SAME && cut.to > from + SAME);
    if (clashes(one, areas[0]) || clashes(other, areas[1])) continue;
    cuts.get(areas[0])?.push(one);
    cuts.get(areas[1])?.push(other);
    open.push(door);
  }
  const walls: (readonly [Point, Point])[] = [];
  const starts = new Map<string, Corner>();
  const ends = new Map<string, Corner>();
  const corners: Corner[] = [];
  for (const { area } of laid.rooms) {
    const ring = rings.get(area) as Ring;
    const own = (cuts.get(area) as Cut[]).sort((a, b) => a.from - b.from);
    const made = ringCorners(ring, own, area, starts, ends);
    made.forEach((corner, i) => {
      const next = made[(i + 1) % made.length] as Corner;
      corner.next = next;
      const doorway = own.some(({ door }) => starts.get(`${area} ${door}`) === corner);
      if (!doorway && distance(corner.at, next.at) > SAME) walls.push([corner.at, next.at]);
    });
    corners.push(...made);
  }
  let doorways = 0;
  for (const { door, areas, sides } of laid.doors) {
    if (!open.includes(door)) continue;
    const at = (map: ReadonlyMap<string, Corner>, i: 0 | 1): Corner => map.get(`${areas[i]} ${door}`) as Corner;
    // through the doorway along its two posts, instead of along the walls
    at(starts, 0).next = at(ends, 1);
    at(starts, 1).next = at(ends, 0);
    for (const [a, b] of [[at(starts, 0), at(ends, 1)] as const, [at(starts, 1), at(ends, 0)] as const]) {
      if (distance(a.at, b.at) > SAME) walls.push([a.at, b.at]);
    }
    doorways += areaOf([sides[0][1], sides[0][0], sides[1][1], sides[1][0]]);
  }
  const found = traced(corners);
  const outline = found.reduce((best, ring) => (signedArea(ring) > signedArea(best) ? ring : best));
  const holes = found.filter((ring) => ring !== outline && areaOf(ring) > NO_HOLE).map((ring) => turned(ring));
  return { outline, holes, walls, open, doorways };
}

/** Corners of a ring with the ends of its doorways put in between. */
function ringCorners(
  ring: Ring,
  own: readonly Cut[],
  area: string,
  starts: Map<string, Corner>,
  ends: Map<string, Corner>,
): Corner[] {
  const made: Corner[] = [];
  let before = 0;
  const corner = (at: Point): Corner => ({ at, next: undefined, used: false });
  ring.forEach((a, i) => {
    const b = cornerAt(ring, i + 1);
    const length = distance(a, b);
    made.push(corner(a));
    for (const { door, from, to } of own) {
      if (from < before - SAME || to > before + length + SAME) continue;
      const on = (along: number): Point => {
        const share = Math.min(1, Math.max(0, (along - before) / length));
        return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
      };
      const [first, last] = [corner(on(from)), corner(on(to))];
      starts.set(`${area} ${door}`, first);
      ends.set(`${area} ${door}`, last);
      made.push(first, last);
    }
    before += length;
  });
  return made;
}

/** Closed rings along `next`, each corner once; corners that coincide with the one before are dropped. */
function traced(corners: readonly Corner[]): readonly Ring[] {
  const rings: Ring[] = [];
  for (const first of corners) {
    const ring: Point[] = [];
    for (let here: Corner | undefined = first; here && !here.used; here = here.next) {
      here.used = true;
      const last = ring.at(-1);
      if (!last || distance(last, here.at) > SAME) ring.push(here.at);
    }
    const [start, end] = [ring[0], ring.at(-1)];
    if (start && end && ring.length > 1 && distance(start, end) <= SAME) ring.pop();
    if (ring.length >= 3) rings.push(ring);
  }
  return rings;
}
