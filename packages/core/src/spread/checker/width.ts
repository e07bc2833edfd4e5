import type { Point, SpreadCase } from '../types.ts';
import { type CheckFloor, standpoint } from './raster.ts';

/** Steps (4·square + way, both directions) narrower than a person, with the width found, m. */
export function narrowSteps(question: SpreadCase, floor: CheckFloor, needed: number): Map<number, number> {
  const narrow = new Map<number, number>();
  const lines: (readonly [Point, Point])[] = [...question.walls];
  for (const ring of [question.outline, ...question.holes]) {
    ring.forEach((p, k) => {
      lines.push([p, ring[(k + 1) % ring.length] as Point]);
    });
  }
  const boxed = lines.map((line) => {
    const [[ax, ay], [bx, by]] = line;
    return { line, left: Math.min(ax, bx), right: Math.max(ax, bx), low: Math.min(ay, by), high: Math.max(ay, by) };
  });
  const reach = needed + question.cellM;
  floor.squares.forEach((square, s) => {
    // a neighbour to the right or above: one box holds both steps
    const about = boxed.filter(
      ({ left, right, low, high }) =>
        right >= square.x - reach &&
        left <= square.x + question.cellM + reach &&
        high >= square.y - reach &&
        low <= square.y + question.cellM + reach,
    );
    if (about.length === 0) return;
    for (const way of [0, 1] as const) {
      const o = square.next[way];
      const other = floor.squares[o];
      if (!other) continue;
      const close = about.flatMap(({ line, left, right, low, high }) =>
        left <= other.x + reach && right >= square.x - reach && low <= other.y + reach && high >= square.y - reach
          ? [line]
          : [],
      );
      if (close.length === 0) continue;
      const width = clearance(close, standpoint(square, question.cellM), standpoint(other, question.cellM), needed);
      // a gap drawn just as wide as needed must not fail by rounding
      if (width < needed - 1e-6) {
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

/**
 * Least room across a step, m, at most `enough`. Every line is turned into the step's own axes (u along it, v across) and
 * asked for its v wherever it lies over the step; only its ends and the ends of the step can be the tightest place.
 */
function clearance(lines: readonly (readonly [Point, Point])[], p: Point, q: Point, enough: number): number {
  const span = Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2);
  const [cos, sin] = [(q[0] - p[0]) / span, (q[1] - p[1]) / span];
  const turned = lines.map((line) =>
    line.map(([x, y]) => ({
      u: (x - p[0]) * cos + (y - p[1]) * sin,
      v: (y - p[1]) * cos - (x - p[0]) * sin,
    })),
  );
  const margin = span / 1e6;
  const tight = turned.flat().filter(({ u }) => u > margin && u < span - margin);
  let least = enough;
  for (const u of [margin, span - margin, ...tight.map((end) => end.u)]) {
    let above = enough;
    let below = enough;
    for (const [a, b] of turned) {
      if (!a || !b || Math.min(a.u, b.u) > u || Math.max(a.u, b.u) < u) continue;
      const upright = Math.abs(b.u - a.u) < 1e-12;
      const here = upright ? [a.v, b.v] : [a.v + ((b.v - a.v) * (u - a.u)) / (b.u - a.u)];
      const [low, high] = [Math.min(...here), Math.max(...here)];
      if (high >= 0) above = Math.min(above, Math.max(0, low));
      if (low <= 0) below = Math.min(below, Math.max(0, -high));
    }
    least = Math.min(least, above + below);
  }
  return least;
}
