import type { Point, SpreadCase } from '../types.ts';
import { type CheckFloor, cross, windings } from './raster.ts';

/** Steps (4·square + way, both directions) narrower than a person, with the width found, m. */
export function narrowSteps(question: SpreadCase, floor: CheckFloor, needed: number): Map<number, number> {
  const narrow = new Map<number, number>();
  const lines: (readonly [Point, Point])[] = [...question.walls];
  for (const ring of [question.outline, ...question.holes]) {
    ring.forEach((p, k) => {
      lines.push([p, ring[(k + 1) % ring.length] as Point]);
    });
  }
  floor.squares.forEach((square, s) => {
    for (const way of [0, 1] as const) {
      const o = square.next[way];
      const other = floor.squares[o];
      if (!other) continue;
      const reach = needed + question.cellM;
      const close = lines.filter(([a, b]) => {
        const [loX, hiX] = [Math.min(square.x, other.x) - reach, Math.max(square.x, other.x) + reach];
        const [loY, hiY] = [Math.min(square.y, other.y) - reach, Math.max(square.y, other.y) + reach];
        return (
          Math.max(a[0], b[0]) >= loX &&
          Math.min(a[0], b[0]) <= hiX &&
          Math.max(a[1], b[1]) >= loY &&
          Math.min(a[1], b[1]) <= hiY
        );
      });
      if (close.length === 0) continue;
      const width = clearance(question, close, [square.x, square.y], [other.x, other.y], needed);
      if (width < needed) {
        narrow.set(4 * s + way, width);
        narrow.set(4 * o + way + 2, width);
      }
    }
  });
  return narrow;
}

/**
 * What people cannot stand on they reach into from beside, one square and no farther: steps from where they stand into
 * such a square are taken off the list, steps between two such squares are put on it.
 */
export function withinReach(floor: CheckFloor, narrow: ReadonlyMap<number, number>): Map<number, number> {
  const { squares } = floor;
  const standing = new Set<number>();
  const ways = squares.map(({ exits }, s) => (exits.length > 0 ? s : -1)).filter((s) => s >= 0);
  for (let s = ways.pop(); s !== undefined; s = ways.pop()) {
    if (standing.has(s)) continue;
    standing.add(s);
    squares[s]?.next.forEach((o, way) => {
      if (o >= 0 && !narrow.has(4 * (s as number) + way)) ways.push(o);
    });
  }
  const tightest = Math.min(...narrow.values());
  const left = new Map<number, number>();
  squares.forEach(({ next }, s) => {
    next.forEach((o, way) => {
      if (o < 0) return;
      const width = narrow.get(4 * s + way);
      if (standing.has(s) && standing.has(o)) {
        if (width !== undefined) left.set(4 * s + way, width);
      } else if (!standing.has(s) && !standing.has(o)) left.set(4 * s + way, width ?? tightest);
    });
  });
  return left;
}

/** Feels its way sideways from the step, centimetre by centimetre, in eleven places, until off the floor or at a wall. */
function clearance(
  question: SpreadCase,
  lines: readonly (readonly [Point, Point])[],
  p: Point,
  q: Point,
  needed: number,
): number {
  const span = Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2);
  const side: Point = [-(q[1] - p[1]) / span, (q[0] - p[0]) / span];
  const feel = 0.01;
  let least = needed;
  for (let place = 0; place <= 10; place++) {
    const from: Point = [p[0] + ((q[0] - p[0]) * place) / 10, p[1] + ((q[1] - p[1]) * place) / 10];
    let width = 0;
    for (const sign of [1, -1]) {
      let far = 0;
      // nothing in the way at all: no need to feel for it
      const end: Point = [from[0] + side[0] * sign * needed, from[1] + side[1] * sign * needed];
      if (!lines.some(([a, b]) => cross(from, end, a, b))) far = needed;
      while (far < needed) {
        const to: Point = [from[0] + side[0] * sign * (far + feel), from[1] + side[1] * sign * (far + feel)];
        if (windings(question.outline, to[0], to[1]) === 0) break;
        if (question.holes.some((hole) => windings(hole, to[0], to[1]) !== 0)) break;
        const last: Point = [from[0] + side[0] * sign * far, from[1] + side[1] * sign * far];
        if (lines.some(([a, b]) => (place > 0 && place < 10 ? cross(last, to, a, b) : false))) break;
        far += feel;
      }
      width += far;
      if (width >= needed) break;
    }
    least = Math.min(least, width + 2 * feel);
  }
  return least;
}
