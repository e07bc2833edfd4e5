import type { FloorMark } from '@slabwright/core';
import { type Command, disc, line, type Point } from './commands.ts';
import type { Rectangle } from './geometry.ts';
import { HAIRLINE, INK, PAPER } from './look.ts';
import { type Line, type Measure, type Run, run, widthOf, wrap } from './text.ts';
import { baselineOf } from './text-box.ts';

/** More than this many labels become numbers with a legend. */
export const MOST_LABELS = 5;

const GAP = 4;

/** Lines of text as commands, from their top left corner. */
export function textCommands(lines: readonly Line[], x: number, y: number, leading: number): readonly Command[] {
  const commands: Command[] = [];
  let top = y;
  for (const one of lines) {
    const baseline = top + baselineOf(one.size, leading);
    for (const part of one.parts) commands.push({ draw: 'text', at: [x + part.x, baseline], run: part });
    top += one.size * leading;
  }
  return commands;
}

const centred = (number: string, at: Point, radius: number, measure: Measure): readonly Command[] => {
  const one = run(number, { size: radius * 1.25, weight: 'bold', ink: PAPER });
  return [
    disc(at, radius, { fill: INK, stroke: { width: 0.8, ink: PAPER } }),
    { draw: 'text', at: [at[0] - widthOf([one], measure) / 2, at[1] + one.size * 0.35], run: one },
  ];
};

/** A number must not cover what it names: it stands beside a spot or a cross, and on a line. */
function clearanceOf(mark: FloorMark | undefined, scale: number, radius: number): number {
  if (mark?.kind === 'reading') return radius + 5;
  if (mark?.kind === 'spot') return Math.max(3, mark.radius * scale) + radius + 2;
  return 0;
}

/** Moves numbers that would lie on each other to the nearest free place around their mark. */
function spreadNumbers(
  anchors: readonly { readonly at: Point; readonly clear: number }[],
  radius: number,
): readonly Point[] {
  const placed: Point[] = [];
  for (const { at, clear } of anchors) {
    const [x, y] = at;
    let found: Point = [x, y];
    for (let ring = 0; ring < 40; ring += 1) {
      const distance = clear + ring * radius * 0.7;
      const tries = distance === 0 ? 1 : 8 + 4 * ring;
      const free = Array.from({ length: tries }, (_, index): Point => {
        const angle = (index / tries) * 2 * Math.PI - Math.PI / 4;
        return [x + Math.cos(angle) * distance, y + Math.sin(angle) * distance];
      }).find((point) => placed.every(([px, py]) => Math.hypot(px - point[0], py - point[1]) >= 2 * radius + 1));
      if (free) {
        found = free;
        break;
      }
    }
    placed.push(found);
  }
  return placed;
}

/** Size of a number for type of this size, and the room it takes before its words. */
export const numberRadius = (size: number): number => size * 0.72;
const indentOf = (size: number): number => numberRadius(size) * 2 + 6;

/** Numbers on the floor, each joined to its mark when it had to step aside. */
export function numbersOnFloor(
  marks: readonly FloorMark[],
  anchors: readonly Point[],
  scale: number,
  size: number,
  measure: Measure,
): { readonly commands: readonly Command[]; readonly discs: readonly Rectangle[] } {
  const radius = numberRadius(size);
  const places = spreadNumbers(
    anchors.map((at, index) => ({ at, clear: clearanceOf(marks[index], scale, radius) })),
    radius,
  );
  const joins = places.map((at, index) => line(anchors[index] ?? at, at, { width: HAIRLINE, ink: INK }));
  return {
    commands: [...joins, ...places.flatMap((at, index) => centred(String(index + 1), at, radius, measure))],
    discs: places.map(([x, y]) => ({ left: x - radius, right: x + radius, top: y - radius, bottom: y + radius })),
  };
}

export interface Legend {
  readonly commands: readonly Command[];
  readonly labels: readonly Rectangle[];
  readonly height: number;
}

/** Widest a legend column can use. */
export const legendWish = (labels: readonly (readonly Run[])[], size: number, measure: Measure): number =>
  indentOf(size) + Math.max(0, ...labels.map((runs) => widthOf(runs, measure))) + 0.5;

/** How many columns of words stand beside each other in a width. */
export const legendColumns = (width: number, size: number): number => Math.max(1, Math.floor(width / (size * 11)));

/** Numbers with their words, down one column and then the next. */
export function legendOf(
  labels: readonly (readonly Run[])[],
  place: { readonly left: number; readonly top: number; readonly width: number; readonly columns: number },
  type: { readonly size: number; readonly leading: number },
  measure: Measure,
): Legend {
  const { size, leading } = type;
  const radius = numberRadius(size);
  const rows = Math.max(1, Math.ceil(labels.length / place.columns));
  const column = place.width / place.columns;
  const room = column - indentOf(size) - (place.columns > 1 ? size * 0.6 : 0);
  const commands: Command[] = [];
  const found: Rectangle[] = [];
  let top = place.top;
  let lowest = place.top;
  labels.forEach((runs, index) => {
    if (index % rows === 0) top = place.top;
    const x = place.left + Math.floor(index / rows) * column;
    const lines = wrap(runs, room, measure);
    const height = lines.reduce((sum, one) => sum + one.size * leading, 0);
    const left = x + indentOf(size);
    commands.push(
      ...centred(String(index + 1), [x + radius, top + (size * leading) / 2], radius, measure),
      ...textCommands(lines, left, top, leading),
    );
    found.push({ left, right: left + Math.max(0, ...lines.map((one) => one.width)), top, bottom: top + height });
    top += Math.max(height, radius * 2) + GAP;
    lowest = Math.max(lowest, top);
  });
  return { commands, labels: found, height: lowest - place.top };
}
