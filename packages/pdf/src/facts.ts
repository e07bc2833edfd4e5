import type { Block } from '@slabwright/core';
import { type Box, beside, rowsStack, wholeWhenShort } from './box.ts';
import { figureOf, sentence } from './content.ts';
import { QUIET } from './look.ts';
import { type Tag, tag } from './pen.ts';
import { type Cell, HAIR, rowBox, UNIT_GAP } from './row.ts';
import type { Setting } from './setting.ts';
import { widthOf, wrap } from './text.ts';

type FactsBlock = Extract<Block, { kind: 'facts' }>;

/** Wider than this, the eye loses the way from a label to its value: the facts stand in two columns. */
const WIDE = 400;
const GUTTER = 26;

function factsColumn(block: FactsBlock, width: number, parent: Tag, gap: number, setting: Setting): Box {
  const { scale, measure } = setting;
  const table = tag('Table', parent);
  const tone = { size: scale.body, figures: 'bold' as const };
  const planned = block.rows.map(({ label, value, note }) => {
    const figure = figureOf(value, tone, setting);
    const numeric = 'entry' in value;
    return { label, value, note, figure, numeric };
  });
  const numeric = planned.filter((row) => row.numeric);
  const units = Math.max(0, ...numeric.map(({ figure }) => widthOf(figure.unit, measure)));
  const numbers = Math.max(0, ...numeric.map(({ figure }) => widthOf(figure.number, measure)));
  const bands = Math.max(0, ...numeric.map(({ figure }) => widthOf(figure.band, measure)));
  const figures = Math.max(bands, numbers + (units > 0 ? units + UNIT_GAP : 0));
  const aligned = figures <= width * 0.55;
  const rows = planned.map(({ label, value, note, figure, numeric: isNumber }): Box => {
    const row = tag('TR', table);
    const words = sentence([value], tone, setting);
    const own = aligned && isNumber ? figures : Math.min(widthOf(words, measure), width * 0.5);
    const labelWidth = width - own - 10;
    const labelLines = [
      ...wrap(sentence([label], { size: scale.body }, setting), labelWidth, measure),
      ...(note ? wrap(sentence([note], { size: scale.small, ink: QUIET }, setting), labelWidth, measure) : []),
    ];
    const place = { x: width - own, width: own, tag: tag('TD', row) };
    const line = (runs: typeof words) => wrap(runs, Number.POSITIVE_INFINITY, measure)[0];
    const empty = { parts: [], width: 0, size: 0 };
    const valueCell: Cell =
      aligned && isNumber
        ? {
            ...place,
            kind: 'figure',
            number: line(figure.number) ?? empty,
            unit: line(figure.unit) ?? empty,
            units,
            ...(figure.band.length > 0 ? { below: line(figure.band) ?? empty } : {}),
          }
        : { ...place, kind: 'text', lines: wrap(words, own + 0.01, measure), align: 'right' };
    const labelCell: Cell = {
      x: 0,
      width: labelWidth,
      tag: tag('TH', row, { scope: 'Row' }),
      kind: 'text',
      lines: labelLines,
      align: 'left',
    };
    return rowBox([labelCell, valueCell], { width, leading: scale.leading, pad: scale.body * 0.24, under: HAIR });
  });
  return rowsStack(rows, gap);
}

/** Values that are sentences: read from the left, beside their labels. */
function proseFacts(block: FactsBlock, width: number, parent: Tag, gap: number, setting: Setting): Box {
  const { scale, measure } = setting;
  const table = tag('Table', parent);
  const between = 14;
  const labels = block.rows.map(({ label }) => sentence([label], { size: scale.body }, setting));
  const own = Math.min(width * 0.38, Math.max(0, ...labels.map((runs) => widthOf(runs, measure))) + 0.5);
  const rows = block.rows.map(({ value, note }, index): Box => {
    const row = tag('TR', table);
    const room = width - own - between;
    const quiet = { size: scale.small, ink: QUIET };
    const lines = [
      ...wrap(sentence([value], { size: scale.body, figures: 'bold' }, setting), room, measure),
      ...(note ? wrap(sentence([note], quiet, setting), room, measure) : []),
    ];
    const cells: readonly Cell[] = [
      {
        x: 0,
        width: own,
        tag: tag('TH', row, { scope: 'Row' }),
        kind: 'text',
        lines: wrap(labels[index] ?? [], own, measure),
        align: 'left',
      },
      { x: own + between, width: room, tag: tag('TD', row), kind: 'text', lines, align: 'left' },
    ];
    return rowBox(cells, { width, leading: scale.leading, pad: scale.body * 0.24, under: HAIR });
  });
  return rowsStack(rows, gap);
}

/** Label at the left, its value on one edge at the right, a quiet note under the label. */
export function factsBox(block: FactsBlock, width: number, parent: Tag, gap: number, setting: Setting): Box {
  const half = (width - GUTTER) / 2;
  const tone = { size: setting.scale.body, figures: 'bold' as const };
  const values = block.rows.map(({ value }) => widthOf(sentence([value], tone, setting), setting.measure));
  const sentences = values.filter((value) => value > width * 0.5).length;
  if (sentences > values.length / 2) return proseFacts(block, width, parent, gap, setting);
  if (width <= WIDE || Math.max(0, ...values) > half * 0.55) return factsColumn(block, width, parent, gap, setting);
  if (block.rows.length < 4) return factsColumn(block, half, parent, gap, setting);
  const column = (from: number, to: number): Box =>
    factsColumn({ ...block, rows: block.rows.slice(from, to) }, half, parent, gap, setting);
  const middle = Math.ceil(block.rows.length / 2);
  return wholeWhenShort(
    beside(
      [
        { x: 0, box: column(0, middle) },
        { x: half + GUTTER, box: column(middle, block.rows.length) },
      ],
      gap,
    ),
    // Cut in the middle, the two columns would be read in the wrong order.
    400,
  );
}
