import type { Block } from '@slabwright/core';
import { type Box, beside, stack } from './box.ts';
import { line, rectangle } from './commands.ts';
import { INK, QUIET } from './look.ts';
import { type Tag, tag } from './pen.ts';
import { HAIR } from './row.ts';
import type { Setting } from './setting.ts';
import { run } from './text.ts';
import { textBox } from './text-box.ts';

/** Height a hand needs to write a line, in points (9 mm). */
const HAND = 25.5;

/** A titled frame with ruled lines to write in: what the firm enters itself. */
export function frameBox(block: Extract<Block, { kind: 'frame' }>, width: number, parent: Tag, setting: Setting): Box {
  const { scale, measure, voice } = setting;
  const pad = scale.body * 0.8;
  const inside = width - 2 * pad;
  const words = stack([
    textBox([run(voice.say(block.title), { size: scale.body, weight: 'bold' })], measure, {
      tag: tag('P', parent),
      width: inside,
      leading: 1.25,
    }),
    textBox([run(voice.say(block.text), { size: scale.small, ink: QUIET })], measure, {
      tag: tag('P', parent),
      width: inside,
      leading: 1.3,
      gap: 2,
    }),
  ]);
  const count = Math.max(0, Math.round(block.lines));
  const height = words.height + 2 * pad + count * HAND;
  return {
    height,
    gap: scale.body,
    draw(pen, x, y) {
      const rules = Array.from({ length: count }, (_, index) => {
        const at = y + pad + words.height + (index + 1) * HAND - 2;
        return line([x + pad, at], [x + width - pad, at], HAIR);
      });
      const edge = { width: 1, ink: INK };
      pen.artifact(() => pen.paint([rectangle(x + 0.5, y + 0.5, width - 1, height - 1, { stroke: edge }), ...rules]));
      words.draw(pen, x + pad, y + pad);
    },
  };
}

/** Lines to sign on, two beside each other, what is asked for under each. */
export function signaturesBox(
  block: Extract<Block, { kind: 'signatures' }>,
  width: number,
  parent: Tag,
  setting: Setting,
): Box {
  const { scale, measure, voice } = setting;
  const gap = 24;
  const wide = (width - gap) / 2;
  const fields = block.fields.map((said): Box => {
    const words = textBox([run(voice.say(said), { size: scale.small, ink: QUIET })], measure, {
      tag: tag('P', parent),
      width: wide,
      leading: 1.25,
    });
    const room = HAND * 1.2;
    return {
      height: room + 3 + words.height,
      gap: 0,
      draw(pen, x, y) {
        pen.artifact(() => pen.paint([line([x, y + room], [x + wide, y + room], { width: 0.75, ink: INK })]));
        words.draw(pen, x, y + room + 3);
      },
    };
  });
  const rows: Box[] = [];
  for (let index = 0; index < fields.length; index += 2) {
    const pair = fields.slice(index, index + 2).map((box, place) => ({ x: place * (wide + gap), box }));
    rows.push(beside(pair, scale.body * 0.4));
  }
  const all = stack(rows, scale.body);
  // Names and dates of one signing stay on one page.
  return { height: all.height, gap: all.gap, draw: all.draw };
}
