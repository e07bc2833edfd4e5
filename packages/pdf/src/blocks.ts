import type { Block } from '@slabwright/core';
import { bigFiguresBox } from './big-figures.ts';
import { type Box, beside, stack } from './box.ts';
import { line } from './commands.ts';
import { floorBox, sectionBox } from './drawing-blocks.ts';
import { factsBox } from './facts.ts';
import { frameBox, signaturesBox } from './hand-blocks.ts';
import { EDGE, INK } from './look.ts';
import type { Tag } from './pen.ts';
import type { Setting } from './setting.ts';
import { tableBox } from './table.ts';
import { boxedBox, headingBox, headlineBox, listBox, paragraphBox } from './text-blocks.ts';
import { verdictBox } from './verdict-box.ts';
import { workingBox } from './working-box.ts';

export interface Room {
  readonly width: number;
  /** Height of the page between head and foot: no drawing grows past a part of it. */
  readonly height: number;
}

const GUTTER = 26;
const MANY_LABELS = 12;

function sideBySide(left: Box, right: Box, widthOfLeft: number, gap: number): Box {
  return beside(
    [
      { x: 0, box: left },
      { x: widthOfLeft + GUTTER, box: right },
    ],
    gap,
  );
}

function boxOf(block: Block, room: Room, parent: Tag, setting: Setting): Box {
  const { width } = room;
  const { scale } = setting;
  switch (block.kind) {
    case 'headline':
      return headlineBox(block, width, parent, setting);
    case 'heading':
      return headingBox(block, width, parent, setting);
    case 'paragraph':
      return paragraphBox(block, width, parent, setting);
    case 'boxed':
      return boxedBox(block, width, parent, setting);
    case 'verdict':
      return verdictBox(block, width, parent, setting);
    case 'facts':
      return factsBox(block, width, parent, scale.body * 0.5, setting);
    case 'big-figures':
      return bigFiguresBox(block, width, parent, setting);
    case 'table':
      return tableBox(block, width, parent, scale.body * 0.8, setting);
    case 'list':
      return listBox(block, width, parent, setting);
    case 'floor': {
      const most = room.height * 0.42;
      if (!block.beside || block.beside.length === 0) {
        return floorBox(block.drawing, width, most, parent, setting);
      }
      // A hall with a long legend needs the whole width; what belongs beside it stands below.
      if (block.drawing.marks.filter((mark) => mark.label).length > MANY_LABELS) {
        const floor = floorBox(block.drawing, width, most, parent, setting);
        return stack([floor, ...boxesOf(block.beside, room, parent, setting)], scale.body);
      }
      // The crew reads the floor first; its words are large and stand in a narrower column.
      const own = (width - GUTTER) * (scale.body > 12 ? 0.57 : 0.54);
      const other = width - GUTTER - own;
      const floor = floorBox(block.drawing, own, most, parent, setting);
      const words = stack(boxesOf(block.beside, { ...room, width: other }, parent, setting));
      return sideBySide(floor, words, own, scale.body);
    }
    case 'section':
      return sectionBox(block, width, parent, setting);
    case 'frame':
      return frameBox(block, width, parent, setting);
    case 'signatures':
      return signaturesBox(block, width, parent, setting);
    case 'columns': {
      const half = (width - GUTTER) / 2;
      const inside = { ...room, width: half };
      const left = stack(boxesOf(block.left, inside, parent, setting));
      const right = stack(boxesOf(block.right, inside, parent, setting));
      return sideBySide(left, right, half, scale.body);
    }
    case 'working':
      return workingBox(block.entries, width, parent, setting);
    case 'page-break':
      return { height: 0, gap: 0, draw: () => undefined };
  }
}

/** Boxes of blocks, one above the other. */
export const boxesOf = (blocks: readonly Block[], room: Room, parent: Tag, setting: Setting): readonly Box[] =>
  blocks.map((block) => boxOf(block, room, parent, setting));

const opensPart = (block: Block): boolean =>
  block.kind === 'heading' || (block.kind === 'columns' && block.left[0]?.kind === 'heading');

/** Kinds that end in a rule of their own, or stand so near to what follows that a rule would part them. */
const ENDS_IN_RULE: readonly Block['kind'][] = ['big-figures', 'headline'];

/** Blocks of a page: where a part begins, a rule parts it from the one before. */
export function partsOf(blocks: readonly Block[], room: Room, parent: Tag, setting: Setting): readonly Box[] {
  return blocks.map((block, index): Box => {
    const own = boxOf(block, room, parent, setting);
    const next = blocks[index + 1]?.kind;
    // Nobody signs a page with nothing on it, and a line that opens a list or a table of facts stands with it.
    const held = next === 'signatures' || (block.kind === 'paragraph' && (next === 'list' || next === 'facts'));
    const box = held ? { ...own, keepNext: true } : own;
    const before = blocks[index - 1];
    if (block.kind === 'working' && before && before.kind !== 'working') return { ...box, gap: setting.scale.body };
    if (!opensPart(block) || !before) return box;
    const gap = setting.scale.body * 1.9;
    if (ENDS_IN_RULE.includes(before.kind)) return { ...box, gap };
    return {
      ...box,
      gap,
      between: (pen, x, y) => {
        const at = y - setting.scale.body * 0.85;
        pen.artifact(() => pen.paint([line([x, at], [x + room.width, at], { width: EDGE, ink: INK })]));
      },
    };
  });
}
