import type { FloorDrawing, FloorMark } from '@slabwright/core';
import { type Command, disc, line, type Point, polygon, type Ring } from './commands.ts';
import { laneArrow, pourFloor, pourNumber } from './floor-pours.ts';
import { boundsOf, onFloor } from './geometry.ts';
import { HAIRLINE, INK, PAPER, QUIET, RULE, SLAB, WALL } from './look.ts';
import type { Run } from './text.ts';

/** Metres of the floor (y to the back of the room) to points on the sheet (y down). */
export interface FloorFrame {
  readonly at: (point: Point) => Point;
  /** Points to the metre. */
  readonly scale: number;
  readonly rings: readonly Ring[];
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Largest drawing of the floor, to scale, in the room given from `left`, `top`. */
export function frameFloor(
  drawing: Pick<FloorDrawing, 'outline' | 'holes'>,
  place: { readonly left: number; readonly top: number; readonly width: number; readonly height: number },
): FloorFrame {
  const bounds = boundsOf(drawing.outline);
  const wide = Math.max(bounds.right - bounds.left, 1e-9);
  const deep = Math.max(bounds.bottom - bounds.top, 1e-9);
  const scale = Math.min(place.width / wide, place.height / deep);
  const at = ([x, y]: Point): Point => [
    place.left + (x - bounds.left) * scale,
    place.top + (bounds.bottom - y) * scale,
  ];
  return {
    at,
    scale,
    rings: [drawing.outline, ...drawing.holes].map((ring) => ring.map(at)),
    left: place.left,
    top: place.top,
    width: wide * scale,
    height: deep * scale,
  };
}

const INK_LINE = { width: 1, ink: INK };
type Exit = Extract<FloorMark, { kind: 'exit' }>;

const HAIR_INK = { width: HAIRLINE, ink: INK };

/** Way out of the floor across one of its sides, as a length of one. */
export function outwards(from: Point, to: Point, rings: readonly Ring[]): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const normal: Point = [(to[1] - from[1]) / length, -(to[0] - from[0]) / length];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return onFloor([middle[0] + normal[0], middle[1] + normal[1]], rings) ? [-normal[0], -normal[1]] : normal;
}

function door(mark: Exit, frame: FloorFrame): readonly Command[] {
  const from = frame.at(mark.from);
  const to = frame.at(mark.to);
  const [nx, ny] = outwards(from, to, frame.rings);
  const out = ([x, y]: Point, by: number): Point => [x + nx * by, y + ny * by];
  const half = WALL / 2;
  return [
    polygon([out(from, 0), out(to, 0), out(to, WALL + 0.3), out(from, WALL + 0.3)], { fill: PAPER }),
    line(from, to, HAIR_INK),
    line(out(from, WALL), out(to, WALL), HAIR_INK),
    line(from, out(from, WALL), HAIR_INK),
    line(to, out(to, WALL), HAIR_INK),
    ...(mark.shut ? [line(out(from, half), out(to, half), { width: 1.4, ink: INK })] : []),
  ];
}

/** Dots in a grid of equal distances, the same for the same spot. */
function stipple([x, y]: Point, radius: number): readonly Command[] {
  const step = 3;
  const dots: Command[] = [];
  const rows = Math.floor(radius / (step * 0.87));
  for (let row = -rows; row <= rows; row += 1) {
    const dy = row * step * 0.87;
    const shift = row % 2 === 0 ? 0 : step / 2;
    const reach = Math.sqrt(Math.max(0, (radius - 1) ** 2 - dy ** 2));
    for (let dx = shift - Math.ceil(radius / step) * step; dx <= radius; dx += step) {
      if (Math.abs(dx) <= reach) dots.push(disc([x + dx, y + dy], 0.65, { fill: INK }));
    }
  }
  return dots;
}

/** Lines at 45 degrees over a rectangle, to be clipped to what they cover. */
export function hatch(ring: Ring, step: number, stroke: { width: number; ink: string }): readonly Command[] {
  const { left, right, top, bottom } = boundsOf(ring);
  const lines: Command[] = [];
  for (let x = left - (bottom - top); x <= right; x += step) {
    lines.push(line([x, bottom], [x + (bottom - top), top], stroke));
  }
  return lines;
}

function spot(mark: Extract<FloorMark, { kind: 'spot' }>, frame: FloorFrame): readonly Command[] {
  const at = frame.at(mark.at);
  // A spot too small to see is drawn as large as a pencil point would make it.
  const radius = Math.max(3, mark.radius * frame.scale);
  const round = disc(at, radius, { stroke: { width: 0.75, ink: INK } });
  if (mark.what.includes('oil')) return [...stipple(at, radius), round];
  if (mark.what === 'drain') {
    const [x, y] = at;
    return [round, line([x - radius, y], [x + radius, y], HAIR_INK), line([x, y - radius], [x, y + radius], HAIR_INK)];
  }
  const ring: Ring = Array.from({ length: 24 }, (_, index): Point => {
    const angle = (index / 24) * 2 * Math.PI;
    return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
  });
  return [{ draw: 'clip', rings: [ring], inside: hatch(ring, 3, { width: HAIRLINE, ink: QUIET }) }, round];
}

const LINES: Readonly<
  Record<'joint' | 'crack' | 'stop line' | 'bail-out', { width: number; ink: string; dash?: readonly number[] }>
> = {
  joint: { width: 0.9, ink: QUIET, dash: [9, 2.5, 1.5, 2.5] },
  crack: { width: 1.2, ink: INK },
  'stop line': { width: 2.4, ink: INK },
  'bail-out': { width: 1.4, ink: INK, dash: [3, 3] },
};

function markCommands(mark: Exclude<FloorMark, Exit>, frame: FloorFrame): readonly Command[] {
  if (mark.kind === 'pour') return [pourFloor(mark, frame)];
  if (mark.kind === 'arrow') return laneArrow(mark, frame);
  if (mark.kind === 'spot') return spot(mark, frame);
  if (mark.kind === 'reading') {
    const [x, y] = frame.at(mark.at);
    const arm = 3.6;
    const stroke = { width: 1.4, ink: INK };
    return [line([x - arm, y - arm], [x + arm, y + arm], stroke), line([x - arm, y + arm], [x + arm, y - arm], stroke)];
  }
  if (mark.kind === 'sun') {
    const ring = mark.outline.map(frame.at);
    return [
      { draw: 'clip', rings: [ring], inside: hatch(ring, 5, { width: HAIRLINE, ink: RULE }) },
      polygon(ring, { stroke: { width: HAIRLINE, ink: QUIET, dash: [2, 2] } }),
    ];
  }
  const { along, kind } = mark;
  return [{ draw: 'lines', rings: [along.map(frame.at)], closed: false, stroke: LINES[kind] }];
}

const LOWEST_FIRST = ['pour', 'sun', 'spot', 'joint', 'crack', 'arrow', 'bail-out', 'stop line'] as const;

/** Slab, walls outside its outline, and every mark on it, from what lies lowest to what lies on top. */
export function floorCommands(drawing: FloorDrawing, frame: FloorFrame): readonly Command[] {
  const drawn = (kind: Exclude<FloorMark, Exit>['kind']): readonly Command[] =>
    drawing.marks.flatMap((mark) => (mark.kind !== 'exit' && mark.kind === kind ? markCommands(mark, frame) : []));
  return [
    // Twice the wall, then the slab over its inner half: the wall stands outside the outline, and inside a column.
    { draw: 'lines', rings: frame.rings, closed: true, stroke: { width: WALL * 2, ink: INK } },
    { draw: 'lines', rings: frame.rings, closed: true, fill: SLAB },
    { draw: 'clip', rings: frame.rings, inside: LOWEST_FIRST.flatMap(drawn) },
    ...drawing.marks.flatMap((mark) => (mark.kind === 'pour' ? pourNumber(mark, frame) : [])),
    ...drawn('reading'),
    ...drawing.marks.flatMap((mark) => (mark.kind === 'exit' ? door(mark, frame) : [])),
  ];
}

/** A line from end to end of a side with slashes, and its length in a gap in the middle. */
export function dimension(
  from: Point,
  to: Point,
  text: { readonly run: Run; readonly width: number },
): readonly Command[] {
  const turned = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0]);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy]: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const gap = text.width / 2 + 4;
  const slash = ([x, y]: Point): Command => line([x - 3, y + 3], [x + 3, y - 3], INK_LINE);
  const cap = text.run.size * 0.35;
  const at: Point = turned
    ? [middle[0] + cap, middle[1] + text.width / 2]
    : [middle[0] - text.width / 2, middle[1] + cap];
  const across = ([x, y]: Point): Command =>
    turned ? line([x - 4, y], [x + 4, y], HAIR_INK) : line([x, y - 4], [x, y + 4], HAIR_INK);
  // Shorter than its own figure: the figure stands alone between the slashes' ends.
  const lines =
    length > 2 * gap
      ? [
          line(from, [middle[0] - ux * gap, middle[1] - uy * gap], HAIR_INK),
          line([middle[0] + ux * gap, middle[1] + uy * gap], to, HAIR_INK),
        ]
      : [];
  return [...lines, across(from), across(to), slash(from), slash(to), { draw: 'text', at, run: text.run, turned }];
}
