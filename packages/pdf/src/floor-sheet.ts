import type { FloorDrawing, FloorMark } from '@slabwright/core';
import { type Command, disc, type Point } from './commands.ts';
import { anchorsOf, freePlace } from './floor-anchors.ts';
import { placeLabels } from './floor-labels.ts';
import {
  legendColumns,
  legendOf,
  legendWish,
  MOST_LABELS,
  numberRadius,
  numbersOnFloor,
  textCommands,
} from './floor-legend.ts';
import { dimension, type FloorFrame, floorCommands, frameFloor } from './floor-plan.ts';
import { overlap, type Rectangle } from './geometry.ts';
import { HAIRLINE, INK, QUIET, WALL } from './look.ts';
import { type Line, type Measure, type Run, run, widthOf, wrap } from './text.ts';

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

const GUTTER = 20;

interface Laid {
  readonly lines: readonly Line[];
  readonly height: number;
}

function nameOnFloor(
  drawing: FloorDrawing,
  texts: FloorTexts,
  frame: FloorFrame,
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

interface Words {
  readonly commands: readonly Command[];
  readonly labels: readonly Rectangle[];
  readonly leaders: readonly (readonly Point[])[];
  /** Numbers on the floor that its name must not lie on. */
  readonly taken: readonly Rectangle[];
  readonly lowest: number;
}

/** Up to five labels in one column at the right, each with its leader. */
function labelColumn(texts: FloorTexts, frame: FloorFrame, width: number, room: FloorRoom, measure: Measure): Words {
  const { size, leading } = room;
  const right = frame.left + frame.width;
  const left = right + WALL + GUTTER;
  const marks = texts.labels.map(({ mark }) => mark);
  const anchors = anchorsOf(marks, frame, size * 1.6);
  const laid = texts.labels.map(({ runs }): Laid => {
    const lines = wrap(runs, width, measure);
    return { lines, height: lines.reduce((sum, one) => sum + one.size * leading, 0) };
  });
  const placed = placeLabels(
    laid.map(({ height }, index) => ({ anchor: anchors[index] ?? [0, 0], height, arrives: (size * leading) / 2 })),
    {
      edge: right + WALL + 2,
      left: left - 3,
      top: frame.top - WALL,
      bottom: frame.top + frame.height,
      track: 5,
      between: size * 0.35,
    },
  );
  const commands: Command[] = [];
  const labels: Rectangle[] = [];
  for (const { index, top, leader } of placed) {
    const { lines, height } = laid[index] ?? { lines: [], height: 0 };
    const [anchor] = leader;
    commands.push({ draw: 'lines', rings: [leader], closed: false, stroke: { width: HAIRLINE, ink: QUIET } });
    if (anchor) commands.push(disc(anchor, 1.5, { fill: INK }));
    commands.push(...textCommands(lines, left, top, leading));
    labels.push({ left, right: left + Math.max(0, ...lines.map((one) => one.width)), top, bottom: top + height });
  }
  const lowest = Math.max(0, ...labels.map((label) => label.bottom));
  return { commands, labels, leaders: placed.map(({ leader }) => leader), taken: [], lowest };
}

/** Many labels: numbers on the floor and their legend beside it, or below it when that lets the floor be larger. */
function numbered(
  drawing: FloorDrawing,
  texts: FloorTexts,
  margin: number,
  room: FloorRoom,
  measure: Measure,
): { readonly frame: FloorFrame; readonly words: Words } {
  const { size } = room;
  const runs = texts.labels.map((one) => one.runs);
  const wish = Math.min(legendWish(runs, size, measure), room.width * 0.36);
  const foot = margin + WALL + 8;
  const narrow = frameFloor(drawing, {
    left: margin,
    top: margin,
    width: Math.max(20, room.width - margin - WALL - GUTTER / 2 - wish),
    height: Math.max(20, room.height - foot),
  });
  const columns = legendColumns(room.width, size);
  const under = legendOf(runs, { left: 0, top: 0, width: room.width, columns }, room, measure).height + size;
  const wide = frameFloor(drawing, {
    left: margin,
    top: margin,
    width: Math.max(20, room.width - margin - WALL - 1 - numberRadius(size)),
    height: Math.max(20, room.height * 1.25 - foot - under),
  });
  const below = wide.scale > narrow.scale * 1.15;
  const frame = below ? wide : narrow;
  const place = below
    ? { left: 0, top: frame.top + frame.height + WALL + size * 1.6, width: room.width, columns }
    : { left: frame.left + frame.width + WALL + GUTTER / 2, top: frame.top - WALL, width: wish, columns: 1 };
  const legend = legendOf(runs, place, room, measure);
  const marks = texts.labels.map(({ mark }) => mark);
  const numbers = numbersOnFloor(marks, anchorsOf(marks, frame, size * 1.6), frame.scale, size, measure);
  return {
    frame,
    words: {
      commands: [...numbers.commands, ...legend.commands],
      labels: legend.labels,
      leaders: [],
      taken: numbers.discs,
      lowest: place.top + legend.height,
    },
  };
}

function besideLabels(
  drawing: FloorDrawing,
  texts: FloorTexts,
  margin: number,
  room: FloorRoom,
  measure: Measure,
): { readonly frame: FloorFrame; readonly words: Words } {
  const natural = Math.max(0, ...texts.labels.map(({ runs }) => widthOf(runs, measure)));
  const width = texts.labels.length > 0 ? Math.min(natural + 0.5, room.width * 0.36) : 0;
  const taken = texts.labels.length > 0 ? GUTTER + WALL + width : WALL + 1;
  const frame = frameFloor(drawing, {
    left: margin,
    top: margin,
    width: Math.max(20, room.width - margin - taken),
    height: Math.max(20, room.height - margin - WALL - 8),
  });
  return { frame, words: labelColumn(texts, frame, width, room, measure) };
}

/** The floor to scale with its dimensions at two sides and its words in one column, or numbered with a legend. */
export function floorSheet(drawing: FloorDrawing, texts: FloorTexts, room: FloorRoom, measure: Measure): FloorSheet {
  const { size, leading } = room;
  const margin = drawing.dimensions ? size + 16 : WALL + 1;
  const lay = texts.labels.length > MOST_LABELS ? numbered : besideLabels;
  const { frame, words } = lay(drawing, texts, margin, room, measure);
  const right = frame.left + frame.width;
  const bottom = frame.top + frame.height;
  const commands: Command[] = [...floorCommands(drawing, frame), ...words.commands];
  let lowest = Math.max(bottom + WALL + 8, words.lowest);
  const name = nameOnFloor(drawing, texts, frame, words.leaders, words.taken, room, measure);
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
    const above = frame.top - off;
    const before = frame.left - off;
    commands.push(
      ...dimension([frame.left, above], [right, above], { run: wide, width: widthOf([wide], measure) }),
      ...dimension([before, bottom], [before, frame.top], { run: deep, width: widthOf([deep], measure) }),
    );
  }
  return {
    width: room.width,
    height: lowest,
    commands,
    labels: words.labels,
    leaders: words.leaders,
    floor: { left: frame.left - WALL, right: right + WALL, top: frame.top - WALL, bottom: bottom + WALL },
  };
}

/** True when no two of these rectangles share ground. */
export const allApart = (rectangles: readonly Rectangle[]): boolean =>
  rectangles.every((one, index) => rectangles.slice(index + 1).every((other) => !overlap(one, other)));
