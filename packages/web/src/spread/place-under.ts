import type { PointerEvent } from 'react';
import type { FloorFrame } from '../floor/geometry.ts';
import type { Dot } from '../worker/api.ts';

/** The place that a drawing shows at a pixel, whichever way the room is turned. */
export function placeAt(at: FloorFrame['at'], [px, py]: Dot): Dot {
  const [ox, oy] = at([0, 0]);
  const [ax, ay] = at([1, 0]);
  const [bx, by] = at([0, 1]);
  const [ux, uy, vx, vy] = [ax - ox, ay - oy, bx - ox, by - oy];
  const whole = ux * vy - uy * vx;
  const [x, y] = [px - ox, py - oy];
  return [(x * vy - y * vx) / whole, (y * ux - x * uy) / whole];
}

/** The place on the drawn floor under a finger or a mouse. */
export function placeUnder(event: PointerEvent<SVGElement>, frame: FloorFrame): Dot {
  const sheet = (event.currentTarget.ownerSVGElement ?? event.currentTarget).getBoundingClientRect();
  return placeAt(frame.at, [event.clientX - sheet.left, event.clientY - sheet.top]);
}
