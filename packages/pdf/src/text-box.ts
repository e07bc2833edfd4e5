import type { Box } from './box.ts';
import { DESCENT } from './fonts.ts';
import type { Tag } from './pen.ts';
import { heightOf, type Line, type Measure, type Run, wrap } from './text.ts';

export interface TextOptions {
  readonly tag: Tag;
  readonly width: number;
  readonly leading: number;
  readonly gap?: number;
  readonly align?: 'left' | 'right';
  readonly keepNext?: boolean;
}

/** Where the baseline stands in a line of this leading: the type sits in the middle of its line. */
export const baselineOf = (size: number, leading: number): number => size * ((leading - 1.1) / 2 + 1.1 - DESCENT);

/** Lines already broken, drawn as one piece of text. Cut so that no page holds a single line of several. */
export function linesBox(lines: readonly Line[], options: TextOptions): Box {
  const { tag, width, leading, gap = 0, align = 'left', keepNext } = options;
  return {
    height: heightOf(lines, leading),
    gap,
    ...(keepNext ? { keepNext } : {}),
    draw(pen, x, y) {
      if (lines.length === 0) return;
      pen.marked(tag, () => {
        let top = y;
        for (const line of lines) {
          const at = align === 'right' ? x + width - line.width : x;
          pen.line(line, at, top + baselineOf(line.size, leading));
          top += line.size * leading;
        }
      });
    },
    split(room) {
      let fit = 0;
      while (fit < lines.length && heightOf(lines.slice(0, fit + 1), leading) <= room) fit += 1;
      const count = Math.min(fit, lines.length - 2);
      if (count < 2) return undefined;
      return {
        first: linesBox(lines.slice(0, count), options),
        rest: linesBox(lines.slice(count), { ...options, gap: 0 }),
      };
    },
  };
}

export const textBox = (runs: readonly Run[], measure: Measure, options: TextOptions): Box =>
  linesBox(wrap(runs, options.width, measure), options);
