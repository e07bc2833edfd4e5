import type { Paper } from '@slabwright/core';
import { line, rectangle } from './commands.ts';
import { sentence } from './content.ts';
import { EDGE, HAIRLINE, INK, QUIET, type Sheet } from './look.ts';
import { stopMark } from './marks.ts';
import type { Pen } from './pen.ts';
import type { Setting } from './setting.ts';
import { heightOf, type Line, run, widthOf, wrap } from './text.ts';
import { baselineOf } from './text-box.ts';

/** Something that stands on every page, outside the flow of the text. */
export interface Band {
  readonly height: number;
  draw(pen: Pen, x: number, y: number): void;
}

const write = (pen: Pen, lines: readonly Line[], x: number, y: number, leading: number, right?: number): void => {
  let top = y;
  for (const one of lines) {
    pen.line(one, right === undefined ? x : right - one.width, top + baselineOf(one.size, leading));
    top += one.size * leading;
  }
};

/** Head of the first page: firm large at the left, number and date at the right. Later pages carry one quiet line. */
export function pageHead(paper: Paper, sheet: Sheet, first: boolean, setting: Setting): Band {
  const { scale, measure } = setting;
  const width = sheet.right - sheet.left;
  const half = width / 2 - 10;
  const leading = 1.3;
  const size = first ? scale.body : scale.small;
  const names = first ? paper.head.left : paper.head.left.slice(0, 1);
  const left = names.flatMap((text, index) => {
    const look = index === 0 ? { size: first ? scale.lead : size, weight: 'bold' as const } : { size };
    return wrap([run(text, look)], half, measure);
  });
  // The running title takes what the name of the firm leaves.
  const room = first ? half : width - Math.max(0, ...left.map((one) => one.width)) - 16;
  const rights = first ? paper.head.right.map((content) => [content]) : [[{ say: paper.title }]];
  const right = rights.flatMap((contents) => wrap(sentence(contents, { size }, setting), room, measure));
  const content = Math.max(heightOf(left, leading), heightOf(right, leading));
  const under = first ? 6 : 3;
  return {
    height: content + under + EDGE + (first ? scale.body : scale.body * 0.7),
    draw(pen, x, y) {
      pen.pagination(() => {
        write(pen, left, x, y + content - heightOf(left, leading), leading);
        write(pen, right, x, y + content - heightOf(right, leading), leading, sheet.right);
        const at = y + content + under + EDGE / 2;
        pen.paint([line([x, at], [sheet.right, at], { width: EDGE, ink: INK })]);
      });
    },
  };
}

/** Every stop that somebody decided to go past, on every page. */
export function overrideBand(paper: Paper, width: number, setting: Setting): Band | undefined {
  if (paper.overrides.length === 0) return undefined;
  const { scale, measure, voice } = setting;
  const size = scale.small;
  const pad = 6;
  const mark = size;
  const lines = paper.overrides.map((said) =>
    wrap([run(voice.say(said), { size, weight: 'bold' })], width - 2 * pad - mark - 6, measure),
  );
  const leading = 1.25;
  const inner = lines.reduce((sum, one) => sum + heightOf(one, leading), 0);
  const height = inner + 2 * pad;
  return {
    height: height + scale.body * 0.8,
    draw(pen, x, y) {
      pen.pagination(() => {
        pen.paint([rectangle(x + 0.5, y + 0.5, width - 1, height - 1, { stroke: { width: 1, ink: INK } })]);
        let top = y + pad;
        for (const own of lines) {
          pen.paint(stopMark([x + pad, top + size * 0.12], mark));
          write(pen, own, x + pad + mark + 6, top, leading);
          top += heightOf(own, leading);
        }
      });
    },
  };
}

/** Foot: what the sheet is, its check mark, page n of m. */
export function pageFoot(paper: Paper, sheet: Sheet, page: number, pages: number, setting: Setting): Band {
  const { scale, measure, voice, words } = setting;
  const size = scale.small;
  const leading = 1.2;
  const foot = voice.say(paper.foot);
  const count = [
    // The paper's own foot often says its mark already.
    ...(foot.includes(paper.mark) ? [] : [run(`${words.check(paper.mark)}`, { size, weight: 'bold' })]),
    run(`\u00a0\u00a0\u00a0 ${words.page(page, pages)}`, { size }),
  ].map((one, index) => (index === 0 ? { ...one, text: one.text.trimStart() } : one));
  const countWidth = widthOf(count, measure) + 0.5;
  const width = sheet.right - sheet.left;
  const left = wrap([run(foot, { size, ink: QUIET })], width - countWidth - 16, measure);
  const right = wrap(count, countWidth, measure);
  const height = Math.max(heightOf(left, leading), heightOf(right, leading)) + 6;
  return {
    height,
    draw(pen, x, y) {
      pen.pagination(() => {
        pen.paint([line([x, y], [sheet.right, y], { width: HAIRLINE, ink: INK })]);
        write(pen, left, x, y + 6, leading);
        write(pen, right, x, y + 6, leading, sheet.right);
      });
    },
  };
}
