import type { VerdictWord } from '@slabwright/core';
import { type Command, disc, type Point, polygon, rectangle } from './commands.ts';
import { INK, PAPER } from './look.ts';
import { run } from './text.ts';

/**
 * Verdict marks: solid shapes cut by a way through, told apart in black and white, small, and through dust.
 * Drawn in a square of `size` points whose top left corner is `at`.
 */
export function verdictMark(word: VerdictWord, at: Point, size: number): readonly Command[] {
  const [x, y] = at;
  const middle = x + size / 2;
  const way = size * 0.16;
  const through = (height: number): Command => rectangle(middle - way / 2, y - 0.5, way, height + 0.5, { fill: PAPER });
  if (word === 'go') return [disc([middle, y + size / 2], size / 2, { fill: INK }), through(size + 0.5)];
  if (word === 'caution') {
    const triangle = polygon(
      [
        [middle, y],
        [x + size, y + size],
        [x, y + size],
      ],
      { fill: INK },
    );
    return [triangle, through(size * 0.62)];
  }
  if (word === 'stop') return stopMark(at, size);
  const frame = size * 0.1;
  const question = run('?', { size: size * 0.78, weight: 'bold' });
  return [
    rectangle(x + frame / 2, y + frame / 2, size - frame, size - frame, { stroke: { width: frame, ink: INK } }),
    // The sign is 0.52 em wide in the bold face; a drawing does not ask the font for one glyph.
    { draw: 'text', at: [middle - size * 0.78 * 0.25, y + size * 0.77], run: question },
  ];
}

/** Solid square with a bar across: no way through. */
export function stopMark([x, y]: Point, size: number): readonly Command[] {
  const bar = size * 0.2;
  return [
    rectangle(x, y, size, size, { fill: INK }),
    rectangle(x + size * 0.18, y + (size - bar) / 2, size * 0.64, bar, { fill: PAPER }),
  ];
}

/** Open square to tick by hand. */
export const tickBox = ([x, y]: Point, size: number): readonly Command[] => [
  rectangle(x + 0.5, y + 0.5, size - 1, size - 1, { stroke: { width: 1, ink: INK } }),
];
