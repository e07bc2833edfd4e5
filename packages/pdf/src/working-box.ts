import { ALL_FORMULAS, citedShort, type Working, workingOf } from '@slabwright/core';
import { type Box, stack } from './box.ts';
import { line } from './commands.ts';
import { QUIET } from './look.ts';
import { type Tag, tag } from './pen.ts';
import { HAIR } from './row.ts';
import type { Setting } from './setting.ts';
import { type Run, run, widthOf, wrap } from './text.ts';
import { linesBox, textBox } from './text-box.ts';

const SIZE = 9;
const LEADING = 1.22;
const bold = (text: string): Run => run(text, { size: SIZE, weight: 'bold' });
const plain = (text: string): Run => run(text, { size: SIZE });
const quiet = (text: string): Run => run(text, { size: SIZE, ink: QUIET });

/** What the formula says, its equation and where it comes from: once above all its figures. */
function headOf({ says, equation, sourceKey, locator }: Working, width: number, parent: Tag, setting: Setting): Box {
  const cited = sourceKey === undefined ? undefined : citedShort(sourceKey, locator);
  const source = cited ? setting.voice.say(cited) : (sourceKey ?? '');
  const runs = [
    ...(says ? [bold(`${says}. `)] : []),
    ...(equation ? [plain(`${equation} `)] : []),
    ...(source ? [quiet(`[${source}]`)] : []),
  ];
  return textBox(runs, setting.measure, { tag: tag('P', parent), width, leading: LEADING, keepNext: true });
}

/** One figure: its id with its numbers, the value at the right. */
function rowOf(working: Working, width: number, parent: Tag, setting: Setting): Box {
  const { measure, words, voice } = setting;
  const { id, value, band, numbers, equation, origin, where, when, outside } = working;
  const read = [origin, where, when].filter((part) => part !== undefined && part !== '').join(', ');
  const figure = [bold(value), ...(band ? [quiet(` (${band})`)] : [])];
  const valueWidth = Math.min(widthOf(figure, measure), width * 0.5);
  const left = width - valueWidth - 12;
  const how = [
    plain(id),
    ...(numbers && numbers !== equation ? [quiet(`\u00a0\u00a0 = ${numbers}`)] : []),
    ...(read ? [quiet(`\u00a0\u00a0 ${voice.plain(read)}`)] : []),
    ...(outside.length > 0 ? [bold(` ${words.outside}: ${outside.join('; ')}.`)] : []),
  ];
  const entry = tag('P', parent);
  const texts = linesBox(wrap(how, left, measure), { tag: entry, width: left, leading: LEADING });
  const values = linesBox(wrap(figure, valueWidth + 0.01, measure), {
    tag: entry,
    width: valueWidth,
    leading: LEADING,
    align: 'right',
  });
  return {
    height: Math.max(texts.height, values.height),
    gap: 1.5,
    draw(pen, x, y) {
      texts.draw(pen, x, y);
      values.draw(pen, x + width - valueWidth, y);
    },
  };
}

const ruled = (width: number): Box => ({
  height: 3,
  gap: 0,
  draw: (pen, x, y) => pen.artifact(() => pen.paint([line([x, y + 3], [x + width, y + 3], HAIR)])),
});

/** Figures of one formula under it. */
export function workingBox(ids: readonly string[], width: number, parent: Tag, setting: Setting): Box {
  const { voice } = setting;
  const workings = ids.map((id) => workingOf(voice.entry(id), voice, ALL_FORMULAS, false));
  const [first] = workings;
  if (!first) return { height: 0, gap: 0, draw: () => undefined };
  const rows = workings.map((working) => rowOf(working, width, parent, setting));
  return stack([headOf(first, width, parent, setting), ...rows, ruled(width)], 4);
}
