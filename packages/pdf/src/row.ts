import type { Box, Split } from './box.ts';
import { line as ruleLine } from './commands.ts';
import { HAIRLINE, INK, RULE } from './look.ts';
import type { Pen, Tag } from './pen.ts';
import { heightOf, type Line } from './text.ts';
import { baselineOf } from './text-box.ts';

/** Space between a number and the edge where units begin. */
export const UNIT_GAP = 2.5;

export type Cell = {
  readonly x: number;
  readonly width: number;
  readonly tag: Tag;
} & (
  | { readonly kind: 'text'; readonly lines: readonly Line[]; readonly align: 'left' | 'right' }
  /** Numbers end on one edge down the column, units begin on the next; `units` is the width of the widest unit. */
  | {
      readonly kind: 'figure';
      readonly number: Line;
      readonly unit: Line;
      readonly units: number;
      readonly below?: Line;
    }
  | { readonly kind: 'blank' }
);

/** A row taller than this holds a long text and may be cut between two pages. */
const TALL = 200;

export interface RowOptions {
  readonly width: number;
  readonly leading: number;
  readonly pad: number;
  readonly least?: number;
  readonly under?: { readonly width: number; readonly ink: string };
  readonly over?: { readonly width: number; readonly ink: string };
  readonly keepNext?: boolean;
  /** Drawn again on a later page: seen, not read. */
  readonly repeated?: boolean;
  readonly valign?: 'top' | 'bottom';
}

const linesOf = (cell: Cell): readonly Line[] => {
  if (cell.kind === 'text') return cell.lines;
  if (cell.kind === 'blank') return [];
  return cell.below ? [cell.number, cell.below] : [cell.number];
};

function drawLines(pen: Pen, cell: Cell, x: number, baseline: number, leading: number): void {
  if (cell.kind === 'blank') return;
  if (cell.kind === 'figure') {
    const edge = x + cell.x + cell.width - (cell.units > 0 ? cell.units + UNIT_GAP : 0);
    pen.line(cell.number, edge - cell.number.width, baseline);
    if (cell.unit.parts.length > 0) pen.line(cell.unit, edge + UNIT_GAP, baseline);
    if (cell.below) {
      const right = x + cell.x + cell.width;
      pen.line(cell.below, right - cell.below.width, baseline + cell.below.size * leading);
    }
    return;
  }
  let at = baseline;
  cell.lines.forEach((line, index) => {
    if (index > 0) at += line.size * leading;
    pen.line(line, x + cell.x + (cell.align === 'right' ? cell.width - line.width : 0), at);
  });
}

function blankBox(pen: Pen, cell: Cell, x: number, y: number, height: number): void {
  const stroke = { width: 0.75, ink: INK };
  pen.artifact(() =>
    pen.paint([
      ruleLine([x + cell.x, y], [x + cell.x, y + height], stroke),
      ruleLine([x + cell.x + cell.width, y], [x + cell.x + cell.width, y + height], stroke),
      ruleLine([x + cell.x, y + height], [x + cell.x + cell.width, y + height], stroke),
    ]),
  );
}

/** Lines of every text that fit, and the lines that go over; figures and boxes stay with the first. */
function cutRow(cells: readonly Cell[], options: RowOptions, room: number): Split | undefined {
  const fit = (lines: readonly Line[]): number => {
    let count = 0;
    while (count < lines.length && heightOf(lines.slice(0, count + 1), options.leading) <= room - 2 * options.pad) {
      count += 1;
    }
    return count;
  };
  const counts = cells.map((cell) => fit(linesOf(cell)));
  if (cells.some((cell, index) => linesOf(cell).length > 0 && (counts[index] ?? 0) === 0)) return undefined;
  const part = (first: boolean): readonly Cell[] =>
    cells.map((cell, index): Cell => {
      if (cell.kind === 'blank' || (first && cell.kind === 'figure')) return cell;
      const { x, width, tag } = cell;
      if (cell.kind === 'figure') return { x, width, tag, kind: 'text', lines: [], align: 'right' };
      const lines = first ? cell.lines.slice(0, counts[index]) : cell.lines.slice(counts[index]);
      return { ...cell, lines };
    });
  const { under: _, ...open } = options;
  return { first: rowBox(part(true), open), rest: rowBox(part(false), options) };
}

/** One row: first lines of all cells stand on one baseline, whatever their sizes. */
export function rowBox(cells: readonly Cell[], options: RowOptions): Box {
  const { width, leading, pad, least = 0, under, over, keepNext, repeated, valign = 'top' } = options;
  const tallest = Math.max(0, ...cells.map((cell) => heightOf(linesOf(cell), leading)));
  const first = Math.max(0, ...cells.map((cell) => linesOf(cell)[0]?.size ?? 0));
  // A small first line beside a large one hangs lower, so the row may grow by the difference.
  const content = Math.max(
    tallest,
    ...cells.map((cell) => {
      const lines = linesOf(cell);
      return first * leading + heightOf(lines.slice(1), leading);
    }),
  );
  const height = Math.max(least, content + 2 * pad);
  return {
    height,
    gap: 0,
    ...(keepNext ? { keepNext } : {}),
    ...(height > TALL ? { split: (room: number) => cutRow(cells, options, room) } : {}),
    draw(pen, x, y) {
      const top = y + pad + (least > content + 2 * pad ? (height - content) / 2 - pad : 0);
      const shared = top + baselineOf(first, leading);
      for (const cell of cells) {
        if (cell.kind === 'blank') continue;
        const own = valign === 'bottom' ? content - heightOf(linesOf(cell), leading) : 0;
        const draw = (): void => drawLines(pen, cell, x, shared + own, leading);
        if (repeated) pen.artifact(draw);
        else if (linesOf(cell).some((line) => line.parts.length > 0)) pen.marked(cell.tag, draw);
      }
      const edges = [
        ...(over ? [ruleLine([x, y], [x + width, y], over)] : []),
        ...(under ? [ruleLine([x, y + height], [x + width, y + height], under)] : []),
      ];
      if (edges.length > 0) pen.artifact(() => pen.paint(edges));
      for (const cell of cells) if (cell.kind === 'blank') blankBox(pen, cell, x, y, height);
    },
  };
}

export const HAIR = { width: HAIRLINE, ink: RULE };
