import type { FloorDrawing, FloorMark } from '@slabwright/core';
import { type Command, disc, line, type Point } from './commands.ts';
import { anchorsOf, freePlace } from './floor-anchors.ts';
import { type Placed, placeLabels } from './floor-labels.ts';
import { dimension, floorCommands, frameFloor } from './floor-plan.ts';
import { overlap, type Rectangle } from './geometry.ts';
import { HAIRLINE, INK, PAPER, QUIET, WALL } from './look.ts';
import { type Line, type Measure, type Run, run, widthOf, wrap } from './text.ts';
import { baselineOf } from './text-box.ts';

/** Texts of the drawing, already in words. */
export interface FloorTexts {
  readonly name: string;
  readonly net: string;
  readonly wide: string;
  readonly deep: string;
  /** One for each mark that carries a label, beside the mark. */
  readonly labels: readonly { readonly mark: FloorMark; readonly runs: readonly Run[] }[];
}

export interface FloorSheet {
  readonly width: number;
  readonly height: number;
  readonly commands: readonly Command[];
  /** Where the words stand, so that a test can see that none lies on another or on the floor. */
  readonly labels: readonly Rectangle[];
  readonly leaders: readonly (readonly Point[])[];
  readonly floor: Rectangle;
}

export interface FloorRoom {
  readonly width: number;
  readonly height: number;
  readonly size: number;
  readonly leading: number;
}

/** More than this many labels become numbers with a legend. */
export const MOST_LABELS = 5;

const GUTTER = 20;
const LEGEND_GAP = 4;

interface Laid {
  readonly lines: readonly Line[];
  readonly height: number;
}

function textCommands(lines: readonly Line[], x: number, y: number, leading: number): readonly Command[] {
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

function nameOnFloor(
  drawing: FloorDrawing,
  texts: FloorTexts,
  frame: ReturnType<typeof frameFloor>,
  leaders: readonly (readonly Point[])[],
  taken: readonly Rectangle[],
  room: FloorRoom,
  measure: Measure,
): { readonly commands: readonly Command[]; readonly placed: boolean } {
  const big = run(texts.net, { size: Math.max(14, room.size * 1.3), weight: 'bold' });
  const small = run(texts.name, { size: room.size });
  const wish = (runs: readonly Run[]) => {
    const lines = runs.flatMap((one) => wrap([one], Number.POSITIVE_INFINITY, measure));
    const width = Math.max(0, ...lines.map((one) => one.width));
    const height = lines.reduce((sum, one) => sum + one.size * 1.15, 0);
    return { lines, width, height };
  };
  const quiet = run(texts.net, { size: room.size, weight: 'bold' });
  for (const runs of [[big, small], [big], [quiet]]) {
    const size = wish(runs);
    const place = freePlace(size, drawing.marks, frame, leaders, taken);
    if (!place) continue;
    const commands: Command[] = [];
    let top = place.top;
    for (const one of size.lines) {
      const x = place.left + (size.width - one.width) / 2;
      commands.push(...textCommands([one], x, top, 1.15));
      top += one.size * 1.15;
    }
    return { commands, placed: true };
  }
  return { commands: [], placed: false };
}

/** The floor to scale with its dimensions at two sides and its words in one column at the right. */
export function floorSheet(drawing: FloorDrawing, texts: FloorTexts, room: FloorRoom, measure: Measure): FloorSheet {
  const { size, leading } = room;
  const margin = drawing.dimensions ? size + 16 : WALL + 1;
  const numbered = texts.labels.length > MOST_LABELS;
  const radius = size * 0.72;
  const indent = numbered ? radius * 2 + 6 : 0;
  const natural = Math.max(0, ...texts.labels.map(({ runs }) => widthOf(runs, measure)));
  const labelWidth = texts.labels.length > 0 ? Math.min(natural + 0.5, room.width * 0.36 - indent) : 0;
  const words = texts.labels.length > 0 ? GUTTER + WALL + indent + labelWidth : WALL + 1;
  const frame = frameFloor(drawing, {
    left: margin,
    top: margin,
    width: Math.max(20, room.width - margin - words),
    height: Math.max(20, room.height - margin - WALL - 8),
  });
  const laid = texts.labels.map(({ runs }): Laid => {
    const lines = wrap(runs, labelWidth, measure);
    return { lines, height: lines.reduce((sum, one) => sum + one.size * leading, 0) };
  });
  const right = frame.left + frame.width;
  const bottom = frame.top + frame.height;
  const labelLeft = right + WALL + GUTTER;
  const anchors = anchorsOf(
    texts.labels.map(({ mark }) => mark),
    frame,
    size * 1.6,
  );
  const commands: Command[] = [...floorCommands(drawing, frame)];
  const labels: Rectangle[] = [];
  let placed: readonly Placed[] = [];
  let numbers: readonly Point[] = [];
  let lowest = bottom + WALL + 8;
  if (numbered) {
    numbers = spreadNumbers(
      anchors.map((at, index) => ({ at, clear: clearanceOf(texts.labels[index]?.mark, frame.scale, radius) })),
      radius,
    );
    numbers.forEach((at, index) => {
      const [x, y] = anchors[index] ?? at;
      if (Math.hypot(at[0] - x, at[1] - y) > 0) commands.push(line([x, y], at, { width: HAIRLINE, ink: INK }));
    });
    let top = margin - WALL;
    laid.forEach(({ lines, height }, index) => {
      const middle = top + (size * leading) / 2;
      commands.push(
        ...centred(String(index + 1), numbers[index] ?? [0, 0], radius, measure),
        ...centred(String(index + 1), [labelLeft - GUTTER / 2 + radius, middle], radius, measure),
        ...textCommands(lines, labelLeft - GUTTER / 2 + indent, top, leading),
      );
      const left = labelLeft - GUTTER / 2 + indent;
      const wide = Math.max(0, ...lines.map((one) => one.width));
      labels.push({ left, right: left + wide, top, bottom: top + height });
      top += Math.max(height, radius * 2) + LEGEND_GAP;
    });
    lowest = Math.max(lowest, top);
  } else {
    placed = placeLabels(
      laid.map(({ height }, index) => ({
        anchor: anchors[index] ?? [0, 0],
        height,
        arrives: (size * leading) / 2,
      })),
      { edge: right + WALL + 2, left: labelLeft - 3, top: margin - WALL, bottom, track: 5, between: size * 0.35 },
    );
    for (const { index, top, leader } of placed) {
      const { lines, height } = laid[index] ?? { lines: [], height: 0 };
      const [anchor] = leader;
      commands.push({ draw: 'lines', rings: [leader], closed: false, stroke: { width: HAIRLINE, ink: QUIET } });
      if (anchor) commands.push(disc(anchor, 1.5, { fill: INK }));
      commands.push(...textCommands(lines, labelLeft, top, leading));
      const wide = Math.max(0, ...lines.map((one) => one.width));
      labels.push({ left: labelLeft, right: labelLeft + wide, top, bottom: top + height });
      lowest = Math.max(lowest, top + height);
    }
  }
  const leaders = placed.map(({ leader }) => leader);
  const discs = numbers.map(
    ([x, y]): Rectangle => ({ left: x - radius, right: x + radius, top: y - radius, bottom: y + radius }),
  );
  const name = nameOnFloor(drawing, texts, frame, leaders, discs, room, measure);
  commands.push(...name.commands);
  if (!name.placed) {
    const caption = wrap([run(`${texts.name}, ${texts.net}`, { size })], room.width - margin, measure);
    commands.push(...textCommands(caption, frame.left, lowest + 2, leading));
    lowest += 2 + caption.length * size * leading;
  }
  if (drawing.dimensions) {
    const off = WALL + 9;
    const wide = run(texts.wide, { size });
    const deep = run(texts.deep, { size });
    commands.push(
      ...dimension([frame.left, frame.top - off], [right, frame.top - off], {
        run: wide,
        width: widthOf([wide], measure),
      }),
      ...dimension([frame.left - off, bottom], [frame.left - off, frame.top], {
        run: deep,
        width: widthOf([deep], measure),
      }),
    );
  }
  return {
    width: room.width,
    height: lowest,
    commands,
    labels,
    leaders,
    floor: { left: frame.left - WALL, right: right + WALL, top: frame.top - WALL, bottom: bottom + WALL },
  };
}

/** True when no two of these rectangles share ground. */
export const allApart = (rectangles: readonly Rectangle[]): boolean =>
  rectangles.every((one, index) => rectangles.slice(index + 1).every((other) => !overlap(one, other)));
