import { ALL_FORMULAS, workingOf } from '@slabwright/core';

import type { Box } from './box.ts';

import { line } from './commands.ts';
import { QUIET } from './look.ts';
import { type Tag, tag } from './pen.ts';
import { HAIR } from './row.ts';
import type { Setting } from './setting.ts';
import { type Run, run, widthOf, wrap } from './text.ts';
import { linesBox } from './text-box.ts';

/** Two lines an entry: what it is and its value; how it was worked out or read, and where that comes from. */
export function workingBox(id: string, width: number, parent: Tag, setting: Setting): Box {
  const { voice, measure, words } = setting;
  const size = 9;
  const working = workingOf(voice.entry(id), voice, ALL_FORMULAS);
  const bold = (text: string): Run => run(text, { size, weight: 'bold' });
  const plain = (text: string): Run => run(text, { size });
  const quiet = (text: string): Run => run(text, { size, ink: QUIET });
  const value = [bold(working.value), ...(working.band ? [quiet(` (${working.band})`)] : [])];
  const valueWidth = Math.min(widthOf(value, measure), width * 0.5);
  const left = width - valueWidth - 12;
  const origin = [
    working.origin,
    working.where && voice.plain(working.where),
    working.when && voice.plain(working.when),
    working.typed ? `${words.typed} “${working.typed}”` : undefined,
  ].filter((part) => part !== undefined && part !== '');
  const source = [working.sourceKey, working.locator].filter((part) => part).join(', ');
  const outside = working.outside.length > 0 ? bold(` ${words.outside}: ${working.outside.join('; ')}.`) : undefined;
  const how: Run[] = [
    ...(working.equation ? [plain(working.equation)] : []),
    ...(working.numbers && working.numbers !== working.equation ? [plain(` → ${working.numbers}`)] : []),
    ...(origin.length > 0 ? [plain(origin.join(', '))] : []),
    ...(source ? [quiet(`\u00a0\u00a0 [${source}]`)] : []),
    ...(outside ? [outside] : []),
  ];
  const title = [bold(id), ...(working.says ? [plain(`\u00a0\u00a0 ${working.says}`)] : [])];
  const leading = 1.22;
  const entry = tag('P', parent);
  const titles = linesBox(wrap(title, left, measure), { tag: entry, width: left, leading });
  const values = linesBox(wrap(value, valueWidth + 0.01, measure), {
    tag: entry,
    width: valueWidth,
    leading,
    align: 'right',
  });
  const below = linesBox(wrap(how, width, measure), { tag: entry, width, leading });
  const head = Math.max(titles.height, values.height);
  const height = head + below.height + 4;
  return {
    height,
    gap: 3,
    draw(pen, x, y) {
      titles.draw(pen, x, y);
      values.draw(pen, x + width - valueWidth, y);
      below.draw(pen, x, y + head);
      pen.artifact(() => pen.paint([line([x, y + height], [x + width, y + height], HAIR)]));
    },
  };
}
