import type { Point, Ring } from './types.ts';

/** Even-odd test; a point on an edge may fall on either side, always the same one. */
export function insideRing(x: number, y: number, ring: Ring): boolean {
  let inside = false;
  let [px, py] = ring[ring.length - 1] ?? [0, 0];
  for (const [qx, qy] of ring) {
    if (py > y !== qy > y && x < ((px - qx) * (y - qy)) / (py - qy) + qx) inside = !inside;
    px = qx;
    py = qy;
  }
  return inside;
}

/** Twice the signed area of the triangle a, b, c: positive when it turns left. */
const turn = (ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

/** Do the segments a-b and c-d meet? Touching counts. */
export function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const [ax, ay] = a;
  const [bx, by] = b;
  const [cx, cy] = c;
  const [dx, dy] = d;
  if (Math.max(ax, bx) < Math.min(cx, dx) || Math.max(cx, dx) < Math.min(ax, bx)) return false;
  if (Math.max(ay, by) < Math.min(cy, dy) || Math.max(cy, dy) < Math.min(ay, by)) return false;
  const first = turn(ax, ay, bx, by, cx, cy) * turn(ax, ay, bx, by, dx, dy);
  const second = turn(cx, cy, dx, dy, ax, ay) * turn(cx, cy, dx, dy, bx, by);
  return first <= 0 && second <= 0;
}

/** Distance of a point from the segment a-b, m. */
export function distanceToSegment(x: number, y: number, a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / length2));
  const ex = x - a[0] - along * dx;
  const ey = y - a[1] - along * dy;
  return Math.sqrt(ex * ex + ey * ey);
}

/** Area of a ring, m², always positive. */
export function ringArea(ring: Ring): number {
  let twice = 0;
  let [px, py] = ring[ring.length - 1] ?? [0, 0];
  for (const [qx, qy] of ring) {
    twice += px * qy - qx * py;
    px = qx;
    py = qy;
  }
  return Math.abs(twice) / 2;
}

/** Part of a ring inside an upright box, as area, m² (cut by the four half planes in turn). */
export function areaInBox(ring: Ring, minX: number, minY: number, maxX: number, maxY: number): number {
  let points: Point[] = [...ring];
  const cut = (side: (p: Point) => number): void => {
    const kept: Point[] = [];
    for (let k = 0; k < points.length; k++) {
      const p = points[k] as Point;
      const q = points[(k + 1) % points.length] as Point;
      const sp = side(p);
      const sq = side(q);
      if (sp >= 0) kept.push(p);
      if (sp >= 0 !== sq >= 0) {
        const at = sp / (sp - sq);
        kept.push([p[0] + (q[0] - p[0]) * at, p[1] + (q[1] - p[1]) * at]);
      }
    }
    points = kept;
  };
  cut((p) => p[0] - minX);
  cut((p) => maxX - p[0]);
  cut((p) => p[1] - minY);
  cut((p) => maxY - p[1]);
  return points.length < 3 ? 0 : ringArea(points);
}

/** Smallest upright box around a ring: [minX, minY, maxX, maxY] in m. */
export function boxOf(ring: Ring): [number, number, number, number] {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of ring) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return [minX, minY, maxX, maxY];
}
