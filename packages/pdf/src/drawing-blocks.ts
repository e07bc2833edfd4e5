import { type Block, type FloorDrawing, type FloorMark, showValue } from '@slabwright/core';
import { type Box, stack } from './box.ts';
import { type Command, line } from './commands.ts';
import { plainText, runsOf } from './content.ts';
import { floorSheet } from './floor-sheet.ts';
import { boundsOf } from './geometry.ts';
import { HAIRLINE, INK, QUIET } from './look.ts';
import { type Pen, type Tag, tag } from './pen.ts';
import { sectionCommands } from './section-drawing.ts';
import type { Setting } from './setting.ts';

import { textBox } from './text-box.ts';

/** Moves a drawing made from its own corner to its place on the sheet. */
export function moved(commands: readonly Command[], dx: number, dy: number): readonly Command[] {
  const at = ([x, y]: readonly [number, number]): readonly [number, number] => [x + dx, y + dy];
  return commands.map((command): Command => {
    if (command.draw === 'text' || command.draw === 'ellipse') return { ...command, at: at(command.at) };
    const rings = command.rings.map((ring) => ring.map(at));
    return command.draw === 'clip'
      ? { ...command, rings, inside: moved(command.inside, dx, dy) }
      : { ...command, rings };
  });
}

type Labelled = FloorMark & { readonly label: NonNullable<FloorMark['label']> };

/** The floor plan with its words, as large as the width and the page allow. */
export function floorBox(drawing: FloorDrawing, width: number, most: number, parent: Tag, setting: Setting): Box {
  const { voice, scale, measure, words } = setting;
  const bounds = boundsOf(drawing.outline);
  const length = (metres: number): string => showValue(metres, 'm', voice.reader, { shows: 'length' });
  const labelled = drawing.marks.filter((mark): mark is Labelled => mark.label !== undefined);
  const net = voice.show(drawing.net);
  const sheet = floorSheet(
    drawing,
    {
      name: drawing.name,
      net,
      wide: length(bounds.right - bounds.left),
      deep: length(bounds.bottom - bounds.top),
      labels: labelled.map((mark) => ({
        mark,
        runs: runsOf(mark.label, { size: scale.small, figures: 'bold' }, setting),
      })),
    },
    { width, height: most, size: scale.small, leading: 1.2 },
    measure,
  );
  const alt = [
    `${words.floorPlan(drawing.name)}, ${net}`,
    ...labelled.map(({ label }) => plainText(label, setting)),
  ].join('; ');
  const figure = tag('Figure', parent, { alt });
  return {
    height: sheet.height,
    gap: scale.body,
    draw: (pen, x, y) => pen.marked(figure, () => pen.paint(moved(sheet.commands, x, y))),
  };
}

/** The cut through the floor with the words of each layer beside it. */
export function sectionBox(
  block: Extract<Block, { kind: 'section' }>,
  width: number,
  parent: Tag,
  setting: Setting,
): Box {
  const { scale, measure, words } = setting;
  const drawn = Math.min(140, width * 0.36);
  const gutter = 18;
  const inside = width - drawn - gutter;
  const tagged = tag('Figure', parent, {
    alt: `${words.section}: ${[...block.layers]
      .reverse()
      .map((layer) => plainText(layer.title, setting))
      .join('; ')}`,
  });
  const parts = block.layers.map((layer) => {
    const texts = stack([
      textBox(runsOf(layer.title, { size: scale.body, weight: 'bold' }, setting), measure, {
        tag: tag('P', parent),
        width: inside,
        leading: 1.22,
      }),
      ...(layer.note
        ? [
            textBox(runsOf(layer.note, { size: scale.small, ink: QUIET }, setting), measure, {
              tag: tag('P', parent),
              width: inside,
              leading: 1.25,
            }),
          ]
        : []),
    ]);
    const least = layer.kind === 'concrete' ? 96 : 27;
    return { kind: layer.kind, texts, height: Math.max(least, texts.height + 6) };
  });
  const height = parts.reduce((sum, part) => sum + part.height, 0);
  const drawing = sectionCommands(parts, drawn);
  return {
    height,
    gap: scale.body,
    draw(pen: Pen, x, y) {
      pen.marked(tagged, () => pen.paint(moved(drawing, x, y)));
      let bottom = y + height;
      const placed = parts.map((part) => {
        bottom -= part.height;
        return { part, top: bottom };
      });
      // Read from the top, as the eye reads the drawing.
      for (const { part, top } of placed.reverse()) {
        const middle = top + (part.kind === 'concrete' ? 12 : Math.max(0, (part.height - part.texts.height) / 2));
        const level = middle + scale.body * 0.62;
        const stroke = { width: HAIRLINE, ink: INK };
        pen.artifact(() => pen.paint([line([x + drawn - 6, level], [x + drawn + gutter - 4, level], stroke)]));
        part.texts.draw(pen, x + drawn + gutter, middle);
      }
    },
  };
}
