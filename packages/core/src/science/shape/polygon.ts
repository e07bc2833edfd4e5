/** A corner in metres, x to the right and y up, origin anywhere. */
export type Point = readonly [x: number, y: number];
/** Corners in order, the last joined to the first; not repeated at the end. */
export type Ring = readonly Point[];

/** Corner `index` of a ring, counted round and round. */
export const cornerAt = (ring: Ring, index: number): Point =>
  ring[((index % ring.length) + ring.length) % ring.length] as Point;

/**
 * Area with its sign, m²: positive when the corners run counter-clockwise (shoelace rule).
 *
 * The sum is taken from the first corner, so that a small room far from the origin keeps its digits.
 */
export function signedArea(ring: Ring): number {
  const [x0, y0] = cornerAt(ring, 0);
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [ax, ay] = cornerAt(ring, i);
    const [bx, by] = cornerAt(ring, i + 1);
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  }
  return twice / 2;
}

export const areaOf = (ring: Ring): number => Math.abs(signedArea(ring));

export const isCounterClockwise = (ring: Ring): boolean => signedArea(ring) > 0;

/** The same ring running counter-clockwise (or clockwise), first corner kept. */
export function turned(ring: Ring, counterClockwise = true): Ring {
  if (isCounterClockwise(ring) === counterClockwise) return ring;
  const [first, ...rest] = ring;
  return first ? [first, ...rest.reverse()] : ring;
}

/** Length of each wall, m: wall `i` runs from corner `i` to the next. */
export const wallLengths = (ring: Ring): readonly number[] =>
  ring.map(([x, y], i) => {
    const [nx, ny] = cornerAt(ring, i + 1);
    return Math.hypot(nx - x, ny - y);
  });

export const perimeterOf = (ring: Ring): number => wallLengths(ring).reduce((sum, length) => sum + length, 0);

/** Area of a floor less its holes, m². The holes must lie inside and apart: see `holeTrouble`. */
export const floorArea = (outline: Ring, holes: readonly Ring[] = []): number =>
  holes.reduce((rest, hole) => rest - areaOf(hole), areaOf(outline));

/** Length to be edged, m: the outline and the edge of each hole. */
export const edgeLength = (outline: Ring, holes: readonly Ring[] = []): number =>
  holes.reduce((sum, hole) => sum + perimeterOf(hole), perimeterOf(outline));

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export const boxOf = (ring: Ring): Box => ({
  left: Math.min(...ring.map(([x]) => x)),
  right: Math.max(...ring.map(([x]) => x)),
  bottom: Math.min(...ring.map(([, y]) => y)),
  top: Math.max(...ring.map(([, y]) => y)),
});
