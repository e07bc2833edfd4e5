import { cornerAt, isCounterClockwise, type Point, type Ring } from './polygon.ts';

/** A door drawn this far from the wall is on no wall, m; nearer, the tape is to blame. Common sense, no source. */
export const DOOR_OFF_WALL = 0.05;

/** Both ends of a doorway on its wall; who walks from `start` to `end` has the room on the left. */
export interface DoorOnWall {
  readonly start: Point;
  readonly end: Point;
  /** Wall of the outline it stands in: from this corner to the next. */
  readonly wall: number;
  readonly width: number;
}

const along = (p: Point, a: Point, [ux, uy]: Point): number => (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
const beside = (p: Point, a: Point, [ux, uy]: Point): number => Math.abs((p[1] - a[1]) * ux - (p[0] - a[0]) * uy);

/**
 * A doorway moved onto the wall it was drawn beside; undefined where its two ends lie on no one straight wall, within
 * `slack` m. The order of its ends does not matter.
 */
export function doorOnWall(outline: Ring, from: Point, to: Point, slack = DOOR_OFF_WALL): DoorOnWall | undefined {
  let best: (DoorOnWall & { readonly off: number }) | undefined;
  const leftIsInside = isCounterClockwise(outline);
  outline.forEach((a, wall) => {
    const b = cornerAt(outline, wall + 1);
    const length = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);
    if (length < slack) return;
    const unit: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const off = Math.max(beside(from, a, unit), beside(to, a, unit));
    const reach = [along(from, a, unit), along(to, a, unit)].sort((p, q) => p - q) as [number, number];
    if (off > slack || reach[0] < -slack || reach[1] > length + slack) return;
    if (best && best.off <= off) return;
    const [low, high] = [Math.max(0, reach[0]), Math.min(length, reach[1])];
    const at = (distance: number): Point => [a[0] + unit[0] * distance, a[1] + unit[1] * distance];
    const [start, end] = leftIsInside ? [at(low), at(high)] : [at(high), at(low)];
    best = { start, end, wall, width: high - low, off };
  });
  if (!best) return undefined;
  const { off: _, ...door } = best;
  return door;
}
