import { boxOf, cornerAt, type Point, type Ring, wallLengths } from './polygon.ts';

/**
 * Where a drawn floor contradicts itself. All tests are made with a tolerance in proportion to the drawing, so that
 * corners typed in feet and kept in metres do not cross by a rounding.
 */
const RELATIVE = 1e-9;

const sizeOf = (ring: Ring): number => {
  const { left, right, bottom, top } = boxOf(ring);
  return Math.max(right - left, top - bottom);
};

/** Twice the area of a-b-c: positive when c lies to the left of a-b. */
const turn = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

const distanceToWall = (p: Point, a: Point, b: Point): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square));
  return Math.hypot(p[0] - a[0] - along * dx, p[1] - a[1] - along * dy);
};

/** True when the walls a-b and c-d cross or come closer than `slack`, m. */
function wallsMeet(a: Point, b: Point, c: Point, d: Point, slack: number): boolean {
  if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true;
  return (
    distanceToWall(a, c, d) <= slack ||
    distanceToWall(b, c, d) <= slack ||
    distanceToWall(c, a, b) <= slack ||
    distanceToWall(d, a, b) <= slack
  );
}

/** Two walls of one outline that meet where they should not; wall `i` runs from corner `i` to the next. */
export interface Crossing {
  readonly first: number;
  readonly second: number;
}

/**
 * The first pair of walls of an outline that cross, touch or fold back onto each other; undefined for a plain outline.
 * A wall of no length (the same corner twice) is reported as meeting itself.
 */
export function selfCrossing(ring: Ring): Crossing | undefined {
  const count = ring.length;
  const slack = sizeOf(ring) * RELATIVE;
  const nothing = wallLengths(ring).findIndex((length) => length <= slack);
  if (nothing >= 0) return { first: nothing, second: nothing };
  for (let i = 0; i < count; i++) {
    const [a, b] = [cornerAt(ring, i), cornerAt(ring, i + 1)];
    // The next wall shares a corner; it may only leave it, not run back along this one.
    const c = cornerAt(ring, i + 2);
    if (distanceToWall(c, a, b) <= slack || distanceToWall(a, b, c) <= slack) {
      return { first: i, second: (i + 1) % count };
    }
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      if (wallsMeet(a, b, cornerAt(ring, j), cornerAt(ring, j + 1), slack)) return { first: i, second: j };
    }
  }
  return undefined;
}

/** True inside the ring or on its edge. */
export function holdsPoint(ring: Ring, p: Point): boolean {
  const slack = sizeOf(ring) * RELATIVE;
  let inside = false;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [cornerAt(ring, i), cornerAt(ring, i + 1)];
    if (distanceToWall(p, a, b) <= slack) return true;
    if (a[1] > p[1] !== b[1] > p[1]) {
      const x = a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
      if (p[0] < x) inside = !inside;
    }
  }
  return inside;
}

const ringsMeet = (one: Ring, other: Ring, slack: number): boolean =>
  one.some((a, i) => other.some((c, j) => wallsMeet(a, cornerAt(one, i + 1), c, cornerAt(other, j + 1), slack)));

/** Index of the first hole that is not wholly inside the outline; touching a wall counts as outside. */
export function holeOutside(outline: Ring, holes: readonly Ring[]): number | undefined {
  const slack = sizeOf(outline) * RELATIVE;
  const found = holes.findIndex((hole) => !holdsPoint(outline, cornerAt(hole, 0)) || ringsMeet(outline, hole, slack));
  return found < 0 ? undefined : found;
}

/** The first two holes that overlap, touch or lie one in the other. */
export function holesOverlap(holes: readonly Ring[]): readonly [number, number] | undefined {
  for (let i = 0; i < holes.length; i++) {
    for (let j = i + 1; j < holes.length; j++) {
      const [one, other] = [holes[i] as Ring, holes[j] as Ring];
      const slack = Math.max(sizeOf(one), sizeOf(other)) * RELATIVE;
      const within = holdsPoint(one, cornerAt(other, 0)) || holdsPoint(other, cornerAt(one, 0));
      if (within || ringsMeet(one, other, slack)) return [i, j];
    }
  }
  return undefined;
}
