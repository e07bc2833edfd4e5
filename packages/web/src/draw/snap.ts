import type { Dot } from '../worker/api.ts';
import { distance } from './lengths.ts';

/** Help for a hand that draws: whole steps of the tape, right angles to the first wall, corners that line up. */

export interface Help {
  /** Step a drawn coordinate is rounded to, m; 0 leaves it. */
  readonly step: number;
  readonly rightAngles: boolean;
  /** How near a line of help must be to pull, m. */
  readonly near: number;
}

const rounded = (value: number, step: number): number => (step > 0 ? Math.round(value / step) * step : value);

/** Direction of the first wall, which the room is square to. */
export function axisOf(ring: readonly Dot[]): Dot {
  const [a, b] = ring;
  if (!a || !b) return [1, 0];
  const length = distance(a, b);
  return length > 0 ? [(b[0] - a[0]) / length, (b[1] - a[1]) / length] : [1, 0];
}

const along = (dot: Dot, [ux, uy]: Dot): Dot => [dot[0] * ux + dot[1] * uy, -dot[0] * uy + dot[1] * ux];
const back = (dot: Dot, [ux, uy]: Dot): Dot => [dot[0] * ux - dot[1] * uy, dot[0] * uy + dot[1] * ux];

/** Widest turn off a right angle that is still taken for one: 12 degrees. */
const TURN = Math.tan((12 * Math.PI) / 180);

/**
 * Where a hand meant to put a corner: square to the first wall as seen from its neighbours, and lined up with any other
 * corner it comes near to.
 */
export function helped(dot: Dot, neighbours: readonly Dot[], ring: readonly Dot[], help: Help): Dot {
  const axis = axisOf(ring);
  const square = axis[0] === 1;
  // A turned room is rounded along its own walls, so that walls square to the first stay square.
  let [x, y] = along(dot, axis);
  let [heldX, heldY] = [false, false];
  if (help.rightAngles) {
    for (const neighbour of neighbours) {
      const [nx, ny] = along(neighbour, axis);
      const [dx, dy] = [Math.abs(x - nx), Math.abs(y - ny)];
      if (!heldX && dx <= dy * TURN) [x, heldX] = [nx, true];
      else if (!heldY && dy <= dx * TURN) [y, heldY] = [ny, true];
    }
    for (const corner of ring) {
      const [cx, cy] = along(corner, axis);
      if (!heldX && Math.abs(x - cx) <= help.near) [x, heldX] = [cx, true];
      if (!heldY && Math.abs(y - cy) <= help.near) [y, heldY] = [cy, true];
    }
  }
  if (!heldX) x = rounded(x, help.step);
  if (!heldY) y = rounded(y, help.step);
  return square ? [x, y] : back([x, y], axis);
}

/** The corner at a typed length from another, in the direction a hand pointed. */
export function atLength(from: Dot, towards: Dot, length: number): Dot {
  const far = distance(from, towards);
  if (far === 0) return [from[0] + length, from[1]];
  return [from[0] + ((towards[0] - from[0]) * length) / far, from[1] + ((towards[1] - from[1]) * length) / far];
}

/** The nearest place on a wall of a ring: where an exit belongs. */
export function onWall(dot: Dot, ring: readonly Dot[]): Dot {
  let best: Dot = dot;
  let least = Number.POSITIVE_INFINITY;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as Dot;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const square = dx * dx + dy * dy;
    const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((dot[0] - a[0]) * dx + (dot[1] - a[1]) * dy) / square));
    const foot: Dot = [a[0] + dx * share, a[1] + dy * share];
    const away = distance(dot, foot);
    if (away < least) [best, least] = [foot, away];
  });
  return best;
}
