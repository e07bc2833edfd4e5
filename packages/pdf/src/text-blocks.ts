import type { Block } from '@slabwright/core';
import { type Box, besideMark, stack, wholeWhenShort } from './box.ts';
import { rectangle } from './commands.ts';
import { sentence } from './content.ts';
import { INK, QUIET } from './look.ts';
import { stopMark, tickBox } from './marks.ts';
import { type Pen, type Tag, tag } from './pen.ts';
import type { Setting } from './setting.ts';
import { run, wrap, wrapEvenly } from './text.ts';
import { linesBox, textBox } from './text-box.ts';

type Of<Kind extends Block['kind']> = Extract<Block, { kind: Kind }>;

export function headlineBox(block: Of<'headline'>, width: number, parent: Tag, setting: Setting): Box {
  const { scale, measure, voice } = setting;
  const title = run(voice.say(block.text), { size: scale.title, weight: 'bold' });
  const boxes = [
    linesBox(wrapEvenly([title], width, measure), { tag: tag('H1', parent), width, leading: 1.08, keepNext: true }),
    ...(block.under
      ? [
          textBox([run(voice.say(block.under), { size: Math.max(scale.body, 12) })], measure, {
            tag: tag('P', parent),
            width,
            leading: 1.3,
            gap: 4,
          }),
        ]
      : []),
  ];
  return { ...stack(boxes, scale.body), keepNext: true };
}

export const headingBox = (block: Of<'heading'>, width: number, parent: Tag, setting: Setting): Box =>
  textBox([run(setting.voice.say(block.text), { size: setting.scale.lead, weight: 'bold' })], setting.measure, {
    tag: tag('H2', parent),
    width,
    leading: 1.2,
    gap: setting.scale.body * 1.2,
    keepNext: true,
  });

export const paragraphBox = (block: Of<'paragraph'>, width: number, parent: Tag, setting: Setting): Box =>
  textBox(sentence(block.content, { size: setting.scale.body, figures: 'bold' }, setting), setting.measure, {
    tag: tag('P', parent),
    width,
    leading: setting.scale.leading,
    gap: setting.scale.body * 0.6,
  });

/** One line of a list: its mark hangs in the margin, the mark is drawn and not read. */
function itemBox(block: Of<'list'>, index: number, width: number, list: Tag, setting: Setting): Box {
  const { scale, measure } = setting;
  const indent = scale.body * 1.6;
  const content = block.lines[index];
  const size = scale.body * 0.82;
  const item = tag('LI', list);
  const lines = wrap(
    content ? sentence([content], { size: scale.body, figures: 'bold' }, setting) : [],
    width - indent,
    measure,
  );
  const text = linesBox(lines, { tag: tag('LBody', item), width: width - indent, leading: scale.leading });
  const mark = (pen: Pen, x: number, y: number): void => {
    const top = y + (scale.body * scale.leading - size) / 2;
    pen.artifact(() => {
      if (block.marks === 'stop') pen.paint(stopMark([x, top], size));
      else if (block.marks === 'box') pen.paint(tickBox([x, top], size));
      else pen.paint([rectangle(x, top + size / 2 - 0.4, scale.body * 0.7, 0.9, { fill: QUIET })]);
    });
  };
  const gap = scale.body * (block.marks === 'dash' ? 0.2 : 0.35);
  return wholeWhenShort(besideMark(text, indent, gap, mark), 150);
}

export function listBox(block: Of<'list'>, width: number, parent: Tag, setting: Setting): Box {
  const list = tag('L', parent);
  const items = block.lines.map((_, index) => itemBox(block, index, width, list, setting));
  return wholeWhenShort(stack(items, setting.scale.body * 0.5));
}

/** Lines in a frame that are seen first: skin protection, what must be known before anything else. */
export function boxedBox(block: Of<'boxed'>, width: number, parent: Tag, setting: Setting): Box {
  const { scale, measure, voice } = setting;
  const edge = block.strong ? 2.5 : 1;
  const pad = scale.body * 0.7 + edge;
  const size = block.strong ? scale.lead : scale.body;
  const inner = stack(
    block.lines.map((said) =>
      textBox([run(voice.say(said), { size, weight: block.strong ? 'bold' : 'regular' })], measure, {
        tag: tag('P', parent),
        width: width - 2 * pad,
        leading: 1.25,
        gap: size * 0.25,
      }),
    ),
  );
  return framed(inner, { width, pad, edge, lift: size * 0.08, gap: scale.body });
}

interface FrameLook {
  readonly width: number;
  readonly pad: number;
  readonly edge: number;
  /** Type stands a little high in its line: the words move up by this much. */
  readonly lift: number;
  readonly gap: number;
}

/** A frame around words; on a page break each part has its own. */
function framed(inner: Box, look: FrameLook): Box {
  const { width, pad, edge, lift, gap } = look;
  const height = inner.height + 2 * pad - 2 * lift;
  return {
    height,
    gap,
    ...(height > 230
      ? {
          split(room: number) {
            const cut = inner.split?.(room - 2 * pad);
            if (!cut?.rest) return undefined;
            return { first: framed(cut.first, look), rest: framed(cut.rest, look) };
          },
        }
      : {}),
    draw(pen, x, y) {
      const stroke = { width: edge, ink: INK };
      pen.artifact(() => pen.paint([rectangle(x + edge / 2, y + edge / 2, width - edge, height - edge, { stroke })]));
      inner.draw(pen, x + pad, y + pad - lift);
    },
  };
}
