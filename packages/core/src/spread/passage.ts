import { boxOf, segmentsMeet } from './geometry.ts';
import type { Point, SpreadCase } from './types.ts';

/** Narrowest passage assumed when none is given, m (shoulders of a working adult; assumed, no source). */
export const PASSAGE_M = 0.45;

/** Just inside the ends of a step, as share of it: a wall across the middle of a square belongs to one step only. */
const AT_END = 1e-6;

/** Widths nearer than this to what is needed are wide enough: a gap drawn just as wide must not fail by rounding. */
export const WIDTH_ROUNDING_M = 1e-6;

/**
 * Clear width, m, where a person steps from p to q (neighbouring square centres), capped at `enough`.
 *
 * The smallest room sideways, up to a wall, the outline or a hole, anywhere between the two centres. Between the places
 * where some wall ends it grows and shrinks in straight lines, so it is smallest at one of those or at an end of the step.
 */
export function clearWidth(all: readonly Blocker[], cellM: number, p: Point, q: Point, enough: number): number {
  const reach = enough + cellM;
  const blockers = blockersNear(all, p, q, reach);
  if (blockers.length === 0) return enough;
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const length = Math.sqrt(dx * dx + dy * dy);
  const places = new Set<number>([AT_END, 1 - AT_END]);
  for (const [a, b] of blockers) {
    for (const [ex, ey] of [a, b]) {
      const along = ((ex - p[0]) * dx + (ey - p[1]) * dy) / (length * length);
      if (along > AT_END && along < 1 - AT_END) places.add(along);
    }
  }
  let width = enough;
  for (const along of places) {
    const ox = p[0] + dx * along;
    const oy = p[1] + dy * along;
    let sum = 0;
    for (const sign of [1, -1]) {
      const end: Point = [ox - (sign * dy * reach) / length, oy + (sign * dx * reach) / length];
      let near = reach;
      for (const [a, b] of blockers) near = Math.min(near, reach * whereMet([ox, oy], end, a, b));
      sum += near;
    }
    width = Math.min(width, sum);
  }
  return width;
}

/** A line people cannot pass, and the box around it. */
export interface Blocker {
  readonly line: Segment;
  readonly box: readonly [number, number, number, number];
}

type Segment = readonly [Point, Point];

/** Outline, holes and walls of a floor. */
export function blockersOf(question: SpreadCase): Blocker[] {
  const lines: Segment[] = [...question.walls];
  for (const ring of [question.outline, ...question.holes]) {
    for (let k = 0; k < ring.length; k++) lines.push([ring[k] as Point, ring[(k + 1) % ring.length] as Point]);
  }
  return lines.map((line) => ({ line, box: boxOf(line) }));
}

function blockersNear(all: readonly Blocker[], p: Point, q: Point, reach: number): Segment[] {
  const near: Segment[] = [];
  const loX = Math.min(p[0], q[0]) - reach;
  const hiX = Math.max(p[0], q[0]) + reach;
  const loY = Math.min(p[1], q[1]) - reach;
  const hiY = Math.max(p[1], q[1]) + reach;
  for (const { line, box } of all) {
    if (box[2] >= loX && box[0] <= hiX && box[3] >= loY && box[1] <= hiY) near.push(line);
  }
  return near;
}

/** Share of the way from o to end at which the segment a-b is met; 1 when it is not. */
function whereMet(o: Point, end: Point, a: Point, b: Point): number {
  if (!segmentsMeet(o, end, a, b)) return 1;
  const rx = end[0] - o[0];
  const ry = end[1] - o[1];
  const sx = b[0] - a[0];
  const sy = b[1] - a[1];
  const cross = rx * sy - ry * sx;
  if (Math.abs(cross) < 1e-12) {
    const length2 = rx * rx + ry * ry;
    const toA = ((a[0] - o[0]) * rx + (a[1] - o[1]) * ry) / length2;
    const toB = ((b[0] - o[0]) * rx + (b[1] - o[1]) * ry) / length2;
    return Math.max(0, Math.min(toA, toB));
  }
  return Math.min(1, Math.max(0, ((a[0] - o[0]) * sy - (a[1] - o[1]) * sx) / cross));
}
