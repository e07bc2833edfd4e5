import type { JobFile } from '@slabwright/core';
import { dotOf, typedDot } from '../draw/lengths.ts';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';

/** Ways out moved along the walls of their room, kept in the drawing of the job. */

type Exit = NonNullable<JobFile['areas'][number]['exits']>[number];

export const exitIn = (file: JobFile, area: string, exit: string): Exit | undefined =>
  file.areas.find(({ id }) => id === area)?.exits?.find(({ id }) => id === exit);

const minus = (a: Dot, b: Dot): Dot => [a[0] - b[0], a[1] - b[1]];
const size = ([x, y]: Dot): number => Math.hypot(x, y);

/** The door of a width on the wall nearest to a place, its middle as near to it as the wall allows. */
export function doorAt(outline: readonly Dot[], width: number, to: Dot): readonly [Dot, Dot] | null {
  let best: { readonly away: number; readonly ends: readonly [Dot, Dot] } | null = null;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] as Dot;
    const [dx, dy] = minus(b, a);
    const length = size([dx, dy]);
    if (length < width) return;
    const unit: Dot = [dx / length, dy / length];
    const along = (to[0] - a[0]) * unit[0] + (to[1] - a[1]) * unit[1];
    const middle = Math.min(Math.max(along, width / 2), length - width / 2);
    const at = (distance: number): Dot => [a[0] + unit[0] * distance, a[1] + unit[1] * distance];
    const away = size(minus(to, at(middle)));
    if (!best || away < best.away - 1e-9) best = { away, ends: [at(middle - width / 2), at(middle + width / 2)] };
  });
  return (best as { readonly ends: readonly [Dot, Dot] } | null)?.ends ?? null;
}

/** Where a way out would go if a hand took its middle to a place. */
export function movedDoor(area: AreaDrawing, exit: { readonly from: Dot; readonly to: Dot }, to: Dot) {
  return doorAt(area.outline, size(minus(exit.to, exit.from)), to);
}

/** Moves a way out to the wall nearest to a place; its width stays. */
export function moveDoor(file: JobFile, area: AreaDrawing, exitId: string, to: Dot, units: Units): void {
  const exit = exitIn(file, area.id, exitId);
  const [from, end] = [dotOf(exit?.from), dotOf(exit?.to)];
  const ends = exit && from && end ? movedDoor(area, { from, to: end }, to) : null;
  if (!exit || !ends) return;
  exit.from = typedDot(ends[0], units);
  exit.to = typedDot(ends[1], units);
}

/** One press along the wall, in the direction it was drawn. */
export function stepDoor(file: JobFile, area: AreaDrawing, exitId: string, by: number, units: Units): void {
  const exit = exitIn(file, area.id, exitId);
  const [from, to] = [dotOf(exit?.from), dotOf(exit?.to)];
  if (!from || !to) return;
  const length = size(minus(to, from));
  const along: Dot = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const middle: Dot = [(from[0] + to[0]) / 2 + along[0] * by, (from[1] + to[1]) / 2 + along[1] * by];
  moveDoor(file, area, exitId, middle, units);
}
