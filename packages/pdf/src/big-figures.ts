import type { Block } from '@slabwright/core';
import { type Box, stack } from './box.ts';
import { line } from './commands.ts';
import { figureOf } from './content.ts';
import { EDGE, HAIRLINE, INK, QUIET } from './look.ts';
import { type Tag, tag } from './pen.ts';
import type { Setting } from './setting.ts';
import { type Run, run, widthOf } from './text.ts';
import { textBox } from './text-box.ts';

type BigBlock = Extract<Block, { kind: 'big-figures' }>;

function valueRuns(figure: BigBlock['figures'][number], size: number, setting: Setting): readonly Run[] {
  const { number, unit } = figureOf(figure.value, { size, weight: 'bold', figures: 'bold' }, setting);
  const units = unit.map((one) => ({ ...one, weight: 'regular' as const, ink: QUIET }));
  return [...number, ...(units.length > 0 ? [run('\u00a0', { size: size * 0.6 })] : []), ...units];
}

/** Price, return, area: read across the table. Between two rules, parted by hairlines. */
export function bigFiguresBox(block: BigBlock, width: number, parent: Tag, setting: Setting): Box {
  const { scale, measure, voice } = setting;
  const across = block.figures.length > 4 ? 3 : Math.max(1, block.figures.length);
  const pad = scale.body;
  const column = width / across;
  const left = (place: number): number => (place === 0 ? 0 : pad);
  const room = (place: number): number => column - left(place) - (place === across - 1 ? 0 : pad);
  // One size for all, the largest at which the longest still fits.
  const fits = [scale.figure, scale.figure * 0.8, scale.lead].find((size) =>
    block.figures.every((one, index) => widthOf(valueRuns(one, size, setting), measure) <= room(index % across)),
  );
  const size = fits ?? scale.lead;
  const cells = block.figures.map((one, index): Box => {
    const place = index % across;
    const inside = room(place);
    return stack([
      textBox([run(voice.say(one.label), { size: scale.body })], measure, {
        tag: tag('P', parent),
        width: inside,
        leading: 1.25,
      }),
      textBox(valueRuns(one, size, setting), measure, { tag: tag('P', parent), width: inside, leading: 1.2 }),
      ...(one.under
        ? [
            textBox([run(voice.say(one.under), { size: scale.small, ink: QUIET })], measure, {
              tag: tag('P', parent),
              width: inside,
              leading: 1.3,
              gap: 2,
            }),
          ]
        : []),
    ]);
  });
  const rows: Box[][] = [];
  for (let index = 0; index < cells.length; index += across) rows.push(cells.slice(index, index + across));
  const heights = rows.map((row) => Math.max(...row.map((cell) => cell.height)) + 2 * pad);
  const height = heights.reduce((sum, one) => sum + one, 0);
  return {
    height,
    gap: scale.body * 1.2,
    draw(pen, x, y) {
      const edge = { width: EDGE, ink: INK };
      const hair = { width: HAIRLINE, ink: INK };
      let top = y;
      rows.forEach((row, index) => {
        const own = heights[index] ?? 0;
        const at = top;
        row.forEach((cell, place) => {
          cell.draw(pen, x + place * column + left(place), at + pad);
        });
        const parts = row.slice(1).map((_, place) => {
          const part = x + (place + 1) * column;
          return line([part, at], [part, at + own], hair);
        });
        pen.artifact(() => pen.paint([...parts, line([x, at], [x + width, at], index === 0 ? edge : hair)]));
        top += own;
      });
      pen.artifact(() => pen.paint([line([x, y + height], [x + width, y + height], edge)]));
    },
  };
}
