import type { Block, Column, Content } from '@slabwright/core';
import { type Box, rowsThatFit, stack } from './box.ts';
import { columnWidths, type Wish } from './column-widths.ts';
import { type Figure, figureOf, sentence, type Tone } from './content.ts';
import { INK, QUIET } from './look.ts';
import { type Tag, tag } from './pen.ts';
import { type Cell, HAIR, rowBox, UNIT_GAP } from './row.ts';
import type { Setting } from './setting.ts';
import { type Line, type Run, run, widestWord, widthOf, wrap } from './text.ts';

type TableBlock = Extract<Block, { kind: 'table' }>;

interface Planned {
  readonly column: Column;
  readonly x: number;
  readonly width: number;
  readonly units: number;
  readonly numbers: number;
}

const isTime = (content: Content): boolean => 'name' in content && /\d{1,2}:\d{2}/.test(content.name);

/** Strong figures and clock times of a crew sheet are set larger than what stands around them. */
function toneOf(content: Content, bold: boolean, { scale }: Setting): Tone {
  const strong = ('strong' in content && content.strong) || false;
  const size = strong && ('entry' in content || isTime(content)) ? scale.strong : scale.body;
  return { size, ...(bold ? { weight: 'bold' as const } : {}) };
}

const EMPTY: Line = { parts: [], width: 0, size: 0 };
const oneLine = (runs: readonly Run[], { measure }: Setting): Line =>
  wrap(runs, Number.POSITIVE_INFINITY, measure)[0] ?? EMPTY;

const isNumber = (figure: Figure): boolean => /^[^\p{L}]*\d/u.test(figure.number.map((one) => one.text).join(''));

function figureCell(content: Content, bold: boolean, setting: Setting): Figure {
  return figureOf(content, toneOf(content, bold, setting), setting);
}

const headRuns = (column: Column, setting: Setting): readonly Run[] => [
  run(setting.voice.say(column.head), { size: setting.scale.small, ink: QUIET }),
];

/** Rows with the total, the total in bold. */
const allRows = (block: TableBlock): readonly { cells: readonly Content[]; bold: boolean }[] => [
  ...block.rows.map((cells) => ({ cells, bold: false })),
  ...(block.total ? [{ cells: block.total, bold: true }] : []),
];

const cellRuns = (content: Content, bold: boolean, setting: Setting): readonly Run[] =>
  sentence([content], toneOf(content, bold, setting), setting);

function plan(block: TableBlock, width: number, gap: number, setting: Setting): readonly Planned[] {
  const { measure, scale } = setting;
  const asked = block.columns.map((column, index) => {
    const cells = allRows(block).flatMap(({ cells: row, bold }) => {
      const content = row[index];
      return content ? [{ content, bold }] : [];
    });
    const head = headRuns(column, setting);
    let units = 0;
    let numbers = 0;
    let least = widestWord(head, measure);
    let most = Math.max(least, Math.min(widthOf(head, measure), 90));
    for (const { content, bold } of cells) {
      const figure = column.align === 'right' ? figureCell(content, bold, setting) : undefined;
      if (figure && isNumber(figure)) {
        units = Math.max(units, widthOf(figure.unit, measure));
        numbers = Math.max(numbers, widthOf(figure.number, measure));
        least = Math.max(least, widthOf(figure.band, measure));
      } else {
        const runs = cellRuns(content, bold, setting);
        const full = widthOf(runs, measure);
        // Two short words stand on one line: "not known".
        least = Math.max(least, full <= scale.body * 6 ? full : widestWord(runs, measure));
        most = Math.max(most, full);
      }
    }
    // a cell of two amounts may be set on two lines
    const pairs = cells.filter(({ content }) => 'say' in content);
    const broken = Math.max(
      least,
      ...pairs.map(({ content, bold }) => widestWord(cellRuns(content, bold, setting), measure)),
    );
    const figures = numbers + (units > 0 ? units + UNIT_GAP : 0);
    least = Math.max(least, figures);
    most = Math.max(most, figures);
    if (column.blank) most = Math.max(most, least, 60);
    // A word of a stranger may be longer than the page; it is cut, not let into the next column.
    const wish: Wish = {
      least: Math.min(least, width / 2),
      most,
      ...(pairs.length === cells.length && pairs.length > 0 ? { broken: Math.min(broken, width / 2) } : {}),
      ...(column.width ? { share: column.width } : {}),
    };
    return { column, wish, units, numbers };
  });
  const widths = columnWidths(
    asked.map(({ wish }) => wish),
    width,
    gap,
  );
  let x = 0;
  return asked.map(({ column, units, numbers }, index) => {
    const own = widths[index] ?? 0;
    // Boxes to write in share their edges.
    const before = column.blank && block.columns[index - 1]?.blank ? gap / 2 : 0;
    const after = column.blank && block.columns[index + 1]?.blank ? gap / 2 : 0;
    const planned = { column, x: x - before, width: own + before + after, units, numbers };
    x += own + gap;
    return planned;
  });
}

function bodyCell(planned: Planned, content: Content | undefined, bold: boolean, at: Tag, setting: Setting): Cell {
  const { column, x, width, units, numbers } = planned;
  const place = { x, width, tag: at };
  if (column.blank) return { ...place, kind: 'blank' };
  if (!content) return { ...place, kind: 'text', lines: [], align: 'left' };
  const align = column.align ?? 'left';
  const figure = align === 'right' ? figureCell(content, bold, setting) : undefined;
  if (figure && isNumber(figure) && numbers + (units > 0 ? units + UNIT_GAP : 0) <= width + 0.01) {
    const number = oneLine(figure.number, setting);
    const below = figure.band.length > 0 ? { below: oneLine(figure.band, setting) } : {};
    return { ...place, kind: 'figure', number, unit: oneLine(figure.unit, setting), units, ...below };
  }
  return { ...place, kind: 'text', lines: wrap(cellRuns(content, bold, setting), width, setting.measure), align };
}

/** A table of so few rows is not cut. */
const FEW_ROWS = 6;
/** Fewer than this under their head at the foot of a page say nothing: the table begins on the next. */
const FIRST_ROWS = 3;
/** Rows taller than this are long texts: they are cut rather than moved. */
const TALL = 300;

/** The box of the head, then rows; on a later page the head stands again above the rows that go on. */
function tableStack(head: Box, again: Box, rows: readonly Box[], gap: number): Box {
  const whole = stack([head, ...rows], gap);
  if (rows.length <= FEW_ROWS && whole.height <= TALL) return { height: whole.height, gap, draw: whole.draw };
  return {
    height: whole.height,
    gap,
    draw: whole.draw,
    split(room) {
      const count = rowsThatFit(rows, room - head.height);
      const least = stack(rows.slice(0, FIRST_ROWS)).height > TALL ? 1 : FIRST_ROWS;
      if (count === rows.length) return undefined;
      if (count < least) {
        const [row, ...others] = rows;
        const cut = count === 0 ? row?.split?.(room - head.height) : undefined;
        if (!cut?.rest) return undefined;
        return { first: stack([head, cut.first], gap), rest: tableStack(again, again, [cut.rest, ...others], gap) };
      }
      return {
        first: stack([head, ...rows.slice(0, count)], gap),
        rest: tableStack(again, again, rows.slice(count), gap),
      };
    },
  };
}

/** A table: quiet heads, one edge of numbers, hairlines between rows, boxes where the crew writes. */
export function tableBox(block: TableBlock, width: number, parent: Tag, gap: number, setting: Setting): Box {
  const { scale, measure } = setting;
  const between = scale.body * 1.1;
  const columns = plan(block, width, between, setting);
  const table = tag('Table', parent);
  const leading = Math.min(scale.leading, 1.25);
  const headRow = tag('TR', table);
  const headCells = columns.map((planned): Cell => {
    const { column, x, units } = planned;
    const align = column.align ?? 'left';
    const edge = align === 'right' && units > 0 ? units + UNIT_GAP : 0;
    const lines = wrap(headRuns(column, setting), planned.width, measure);
    // A short head ends where the numbers end; a long one takes the whole column.
    const inside = lines.every((line) => line.width <= planned.width - edge);
    return {
      x,
      width: planned.width - (inside ? edge : 0),
      tag: tag('TH', headRow, { scope: 'Column' }),
      kind: 'text',
      lines,
      align,
    };
  });
  const headLook = {
    width,
    leading,
    pad: 2.5,
    under: { width: 1, ink: INK },
    keepNext: true,
    valign: 'bottom' as const,
  };
  const blank = block.columns.some((column) => column.blank);
  const pad = scale.body <= 10 ? 1.6 : scale.body * 0.28;
  const rows = allRows(block).map(({ cells, bold }): Box => {
    const row = tag('TR', table);
    return rowBox(
      columns.map((planned, index) => bodyCell(planned, cells[index], bold, tag('TD', row), setting)),
      {
        width,
        leading,
        pad,
        ...(blank ? { least: scale.write } : {}),
        under: bold ? { width: 1, ink: INK } : HAIR,
        ...(bold ? { over: { width: 1, ink: INK } } : {}),
      },
    );
  });
  return tableStack(rowBox(headCells, headLook), rowBox(headCells, { ...headLook, repeated: true }), rows, gap);
}
