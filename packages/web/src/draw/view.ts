import { type Extent, extentOf, type FloorFrame, frameFor } from '../floor/geometry.ts';
import type { Dot } from '../worker/api.ts';

/** The part of the world the drawing shows, which stays put while a hand draws. */

const MARGIN = 0.12;
const LEAST = 2;

/** An extent with room around it to go on drawing. */
export function roomAround(dots: readonly Dot[], empty: Dot): Extent {
  const extent = extentOf(dots);
  if (!extent) return { least: [-empty[0] * MARGIN, -empty[1] * MARGIN], most: empty };
  const span = (axis: 0 | 1): number => Math.max(extent.most[axis] - extent.least[axis], LEAST);
  const reach = Math.max(span(0), span(1)) * MARGIN;
  const most = (axis: 0 | 1): number => Math.max(extent.most[axis], extent.least[axis] + LEAST) + reach;
  return { least: [extent.least[0] - reach, extent.least[1] - reach], most: [most(0), most(1)] };
}

/** An extent larger or smaller by a factor, about its own middle or another place. */
export function scaledExtent({ least, most }: Extent, by: number, about?: Dot): Extent {
  const middle: Dot = about ?? [(least[0] + most[0]) / 2, (least[1] + most[1]) / 2];
  const half: Dot = [((most[0] - least[0]) / 2) * by, ((most[1] - least[1]) / 2) * by];
  return { least: [middle[0] - half[0], middle[1] - half[1]], most: [middle[0] + half[0], middle[1] + half[1]] };
}

export const holds = ({ least, most }: Extent, dots: readonly Dot[]): boolean =>
  dots.every(([x, y]) => x >= least[0] && x <= most[0] && y >= least[1] && y <= most[1]);

const ROOM = { left: 8, top: 8, right: 8, bottom: 8 };

export const viewFrame = (extent: Extent, width: number, height: number): FloorFrame =>
  frameFor(extent, width, height, ROOM);

/** The place on the floor under a pixel of the drawing. */
export const dotAt = (frame: FloorFrame, extent: Extent, [px, py]: Dot): Dot => [
  extent.least[0] + (px - frame.left) / frame.scale,
  extent.most[1] - (py - frame.top) / frame.scale,
];
