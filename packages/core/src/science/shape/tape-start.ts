import type { Point, Ring } from './polygon.ts';
import type { TapeMeasure } from './tape-measures.ts';

/**
 * A first shape for the adjustment of a taped room: walk round it with the taped sides and the stated angles.
 *
 * Corners without a stated angle share what the sum of angles leaves; a side not taped gets the mean of the others.
 * Good enough for rooms without re-entrant corners or with their angles stated; others need a sketch.
 */
export function startFromWalk(count: number, measures: readonly TapeMeasure[]): Ring {
  const sides: (number | undefined)[] = Array.from({ length: count }, () => undefined);
  const angles: (number | undefined)[] = Array.from({ length: count }, () => undefined);
  for (const measure of measures) {
    if (measure.kind === 'angle') angles[measure.corner] = measure.angle;
    if (measure.kind !== 'distance') continue;
    if ((measure.from + 1) % count === measure.to) sides[measure.from] = measure.length;
    if ((measure.to + 1) % count === measure.from) sides[measure.to] = measure.length;
  }
  const known = sides.filter((side) => side !== undefined);
  const usual = known.length > 0 ? known.reduce((sum, side) => sum + side, 0) / known.length : 1;
  const stated = angles.filter((angle) => angle !== undefined);
  const left = (count - 2) * Math.PI - stated.reduce((sum, angle) => sum + angle, 0);
  const share = left / Math.max(1, count - stated.length);
  const corners: Point[] = [[0, 0]];
  let heading = 0;
  for (let i = 0; i + 1 < count; i++) {
    const [x, y] = corners[i] as Point;
    const side = sides[i] ?? usual;
    corners.push([x + side * Math.cos(heading), y + side * Math.sin(heading)]);
    heading += Math.PI - (angles[i + 1] ?? share);
  }
  return corners;
}

/** A sketch moved and turned so that its first corner is the origin and its first wall runs along x. */
export function startFromSketch(sketch: Ring, measures: readonly TapeMeasure[]): Ring {
  const [[x0, y0], [x1, y1]] = [sketch[0] as Point, sketch[1] as Point];
  const along = Math.hypot(x1 - x0, y1 - y0);
  const [c, s] = [(x1 - x0) / along, (y1 - y0) / along];
  const placed = sketch.map(([x, y]): Point => [c * (x - x0) + s * (y - y0), c * (y - y0) - s * (x - x0)]);
  let drawn = 0;
  let taped = 0;
  for (const measure of measures) {
    if (measure.kind !== 'distance') continue;
    const [a, b] = [placed[measure.from] as Point, placed[measure.to] as Point];
    drawn += Math.hypot(b[0] - a[0], b[1] - a[1]);
    taped += measure.length;
  }
  const size = drawn > 0 ? taped / drawn : 1;
  return placed.map(([x, y]): Point => [x * size, y * size]);
}
