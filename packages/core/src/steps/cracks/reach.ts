import type { Point } from '../results.ts';

/** How far the slab runs from a line to both sides, up to the next edge or joint that lies across the way. */

type Segment = readonly [Point, Point];

/** Lengths nearer than this are the line itself, m. */
const NEAR = 1e-6;

const segmentsOf = (ring: readonly Point[]): readonly Segment[] =>
  ring.map((from, i) => [from, ring[(i + 1) % ring.length] as Point]);

/** Distance along a ray to a segment; none where it runs beside it or misses. */
function hit(from: Point, way: Point, [a, b]: Segment): number | undefined {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const cross = way[0] * ey - way[1] * ex;
  const size = Math.hypot(ex, ey);
  if (Math.abs(cross) <= 1e-9 * size) return undefined;
  const [dx, dy] = [a[0] - from[0], a[1] - from[1]];
  const along = (dx * ey - dy * ex) / cross;
  const share = (dx * way[1] - dy * way[0]) / cross;
  return along > NEAR && share >= -1e-9 && share <= 1 + 1e-9 ? along : undefined;
}

/** Middle of a drawn line by its length. */
function middle(line: readonly Point[]): Point {
  const lengths = line.slice(1).map((p, i) => Math.hypot(p[0] - (line[i] as Point)[0], p[1] - (line[i] as Point)[1]));
  let left = lengths.reduce((sum, one) => sum + one, 0) / 2;
  for (const [i, length] of lengths.entries()) {
    const [a, b] = [line[i] as Point, line[i + 1] as Point];
    if (left <= length && length > 0)
      return [a[0] + ((b[0] - a[0]) * left) / length, a[1] + ((b[1] - a[1]) * left) / length];
    left -= length;
  }
  return line[0] as Point;
}

/**
 * Distances from the middle of a line, square to its chord, to the next edge or joint on either side, m. Nothing where
 * the line has no chord or lies outside the outline.
 */
export function reachOf(
  line: readonly Point[],
  outline: readonly Point[],
  joints: readonly (readonly Point[])[],
): readonly [number, number] | undefined {
  const [first, last] = [line[0], line.at(-1)];
  if (!first || !last) return undefined;
  const [cx, cy] = [last[0] - first[0], last[1] - first[1]];
  const chord = Math.hypot(cx, cy);
  if (chord <= NEAR) return undefined;
  const from = middle(line);
  const across = joints.flatMap((one) => one.slice(1).map((p, i): Segment => [one[i] as Point, p]));
  const stops = [...segmentsOf(outline), ...across];
  const nearest = (way: Point): number | undefined => {
    const found = stops.flatMap((stop) => hit(from, way, stop) ?? []);
    return found.length === 0 ? undefined : Math.min(...found);
  };
  const one = nearest([-cy / chord, cx / chord]);
  const other = nearest([cy / chord, -cx / chord]);
  return one === undefined || other === undefined ? undefined : [one, other];
}
