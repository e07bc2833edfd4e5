import type { Point, Ring } from './commands.ts';

export interface Rectangle {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const boundsOf = (points: readonly Point[]): Rectangle => ({
  left: Math.min(...points.map(([x]) => x)),
  right: Math.max(...points.map(([x]) => x)),
  top: Math.min(...points.map(([, y]) => y)),
  bottom: Math.max(...points.map(([, y]) => y)),
});

export const overlap = (a: Rectangle, b: Rectangle): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Sides of a ring, the last back to the first. */
export const sidesOf = (ring: Ring): readonly (readonly [Point, Point])[] =>
  ring.map((point, index) => [point, ring[(index + 1) % ring.length] ?? point] as const);

/** Even-odd: a point in a hole is not on the floor. */
export function onFloor([x, y]: Point, rings: readonly Ring[]): boolean {
  let inside = false;
  for (const ring of rings) {
    for (const [[ax, ay], [bx, by]] of sidesOf(ring)) {
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    }
  }
  return inside;
}

/** Whether a segment touches a rectangle (cut of the segment by the four sides, one after the other). */
export function touches([ax, ay]: Point, [bx, by]: Point, { left, right, top, bottom }: Rectangle): boolean {
  let enter = 0;
  let leave = 1;
  for (const [p, q] of [
    [ax - bx, ax - left],
    [bx - ax, right - ax],
    [ay - by, ay - top],
    [by - ay, bottom - ay],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const at = q / p;
    if (p < 0) enter = Math.max(enter, at);
    else leave = Math.min(leave, at);
    if (enter > leave) return false;
  }
  return true;
}

const side = ([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);

/** Whether two segments cross at a point inside both; sharing an end is no crossing. */
export const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

/** Point at a share of the way along a line of several points. */
export function along(points: readonly Point[], share: number): Point {
  const lengths = points.slice(1).map(([x, y], index) => {
    const [px, py] = points[index] ?? [x, y];
    return Math.hypot(x - px, y - py);
  });
  let left = lengths.reduce((sum, length) => sum + length, 0) * share;
  for (const [index, length] of lengths.entries()) {
    const a = points[index];
    const b = points[index + 1];
    if (!a || !b) break;
    if (left <= length || index === lengths.length - 1) {
      const part = length > 0 ? Math.min(1, left / length) : 0;
      return [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part];
    }
    left -= length;
  }
  return points[0] ?? [0, 0];
}
