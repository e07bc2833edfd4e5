import type { SourceMark, Working } from '@slabwright/core';
import type { Terminal } from '../terminal.ts';

export type { Working };

const STYLES = {
  bold: '1',
  quiet: '2',
  go: '32',
  caution: '33',
  stop: '31;1',
  'not known': '35',
} as const;
export type Style = keyof typeof STYLES;

/** Colour only where the terminal has it; the words carry everything without. */
export const paint = (terminal: Terminal, style: Style, text: string): string =>
  terminal.colour && text !== '' ? `\u001b[${STYLES[style]}m${text}\u001b[0m` : text;

/** Width on screen: colour codes take none. */
export const widthOf = (text: string): number => {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape character opens a colour code
  const bare = text.replace(/\u001b\[[\d;]*m/g, '');
  return [...bare].length;
};

export const padEnd = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - widthOf(text)));

export const indent =
  (by: number) =>
  (line: string): string =>
    ' '.repeat(by) + line;

/** Breaks at blanks, never inside a number and its unit (those are tied by no-break spaces). */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const part of text.split(/[ \n]+/)) {
    if (line !== '' && widthOf(line) + 1 + widthOf(part) > Math.max(20, width)) {
      lines.push(line);
      line = part;
    } else {
      line = line === '' ? part : `${line} ${part}`;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** Rows of cells in aligned columns; cells named in `right` stand flush right. */
export function columns(
  rows: readonly (readonly string[])[],
  options: { readonly gap?: number; readonly indent?: number; readonly right?: readonly number[] } = {},
): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [i, cell] of row.entries()) widths[i] = Math.max(widths[i] ?? 0, widthOf(cell));
  }
  const gap = ' '.repeat(options.gap ?? 2);
  return rows.map((row) =>
    (
      ' '.repeat(options.indent ?? 0) +
      row
        .map((cell, i) => {
          const space = ' '.repeat(Math.max(0, (widths[i] ?? 0) - widthOf(cell)));
          return options.right?.includes(i) ? space + cell : cell + space;
        })
        .join(gap)
    ).trimEnd(),
  );
}

const MARKS: Record<SourceMark, string> = {
  READ: 'read in the source',
  MEM: 'from memory',
  CALC: 'own arithmetic',
  PRACTICE: 'common practice, no source',
};
export const word = (mark: SourceMark): string => MARKS[mark];
