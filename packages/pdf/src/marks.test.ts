import { VERDICTS } from '@slabwright/core';
import { expect, test } from 'vitest';
import type { Command } from './commands.ts';
import { PAPER } from './look.ts';
import { verdictMark } from './marks.ts';
import { sectionCommands } from './section-drawing.ts';

const box = (command: Command): { readonly top: number; readonly bottom: number; readonly wide: number } => {
  if (command.draw !== 'lines') throw new Error('a way through is a rectangle');
  const points = command.rings.flat();
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { top: Math.min(...ys), bottom: Math.max(...ys), wide: Math.max(...xs) - Math.min(...xs) };
};
const cutOf = (commands: readonly Command[]) => {
  const cut = commands.find((command) => command.draw === 'lines' && command.fill === PAPER);
  if (!cut) throw new Error('the mark has no way through');
  return box(cut);
};

test('the way through tells the marks apart without colour', () => {
  const go = cutOf(verdictMark('go', [0, 0], 100));
  const caution = cutOf(verdictMark('caution', [0, 0], 100));
  const stop = cutOf(verdictMark('stop', [0, 0], 100));
  expect([go.top <= 0, go.bottom >= 100]).toEqual([true, true]);
  expect([caution.top <= 0, caution.bottom > 40, caution.bottom < 80]).toEqual([true, true, true]);
  expect(stop.wide).toBeGreaterThan(stop.bottom - stop.top);
  expect([stop.top > 0, stop.bottom < 100]).toEqual([true, true]);
});

test('every verdict has a mark of its own', () => {
  const drawn = VERDICTS.map((word) => JSON.stringify(verdictMark(word, [0, 0], 20)));
  expect(new Set(drawn).size).toBe(VERDICTS.length);
});

test('layers of a cut stand on each other from the concrete up and fill its height', () => {
  const commands = sectionCommands(
    [
      { kind: 'concrete', height: 90 },
      { kind: 'film', height: 30 },
      { kind: 'broadcast', height: 30 },
      { kind: 'film', height: 28 },
    ],
    140,
  );
  const filled = commands.flatMap((command) =>
    command.draw === 'lines' && command.fill && !command.stroke ? [box(command)] : [],
  );
  expect(filled.map(({ top }) => Math.round(top / 10))).toEqual([9, 6, 3, 0]);
  expect(Math.max(...filled.map(({ bottom }) => bottom))).toBe(178);
});
