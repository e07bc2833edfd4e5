import type { AreaDrawing, Dot } from '../worker/api.ts';
import { type FloorFrame, pixels, pointsText } from './geometry.ts';

/** Wall around an area on the sheet, in pixels; it lies outside the outline. */
export const WALL = 6;

/** Walls, floor, columns and pits, and the gaps of the doors. */
export function Slab({
  area,
  frame,
  small,
}: {
  readonly area: AreaDrawing;
  readonly frame: FloorFrame;
  readonly small: boolean;
}) {
  const outline = pointsText(frame, area.outline);
  const wall = small ? 3 : WALL;
  return (
    <>
      <polygon points={outline} fill="var(--ink)" stroke="var(--ink)" strokeWidth={wall * 2} strokeLinejoin="miter" />
      <polygon points={outline} fill="var(--slab)" />
      {area.holes.map((hole) => {
        const points = pointsText(frame, hole);
        return <polygon key={points} points={points} fill="var(--ink)" stroke="var(--ink)" strokeWidth="1" />;
      })}
      {area.exits.map(({ id, from, to }) => (
        <Door key={id} from={frame.at(from)} to={frame.at(to)} outline={area.outline.map(frame.at)} wall={wall} />
      ))}
    </>
  );
}

/** A gap in the wall with its threshold. The wall lies outside the outline, so the gap goes to the outer side. */
export function Door({
  from,
  to,
  outline,
  wall,
}: {
  readonly from: Dot;
  readonly to: Dot;
  readonly outline: readonly Dot[];
  readonly wall: number;
}) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length < 1) return null;
  const normal: Dot = [dy / length, -dx / length];
  const middle: Dot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const out = inside([middle[0] + normal[0] * 2, middle[1] + normal[1] * 2], outline) ? -1 : 1;
  const [ox, oy] = [normal[0] * out, normal[1] * out];
  const deep = wall + 1;
  const line = (by: number): string =>
    `M${pixels(from[0] + ox * by)} ${pixels(from[1] + oy * by)}L${pixels(to[0] + ox * by)} ${pixels(to[1] + oy * by)}`;
  return (
    <>
      <path
        d={`${line(0)}L${pixels(to[0] + ox * deep)} ${pixels(to[1] + oy * deep)}L${pixels(from[0] + ox * deep)} ${pixels(from[1] + oy * deep)}Z`}
        fill="var(--sheet)"
      />
      <path d={`${line(0)}${line(wall)}`} stroke="var(--ink)" strokeWidth="1" fill="none" />
    </>
  );
}

function inside([x, y]: Dot, outline: readonly Dot[]): boolean {
  let odd = false;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] as Dot;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
  });
  return odd;
}
