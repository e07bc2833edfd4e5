import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measureWith, run, wrap, wrapEvenly } from './text.ts';

// Every sign half an em wide: what is tested is where lines turn, not the face.
const measure = measureWith((text) => [...text].length * 0.5);
const joined = (lines: ReturnType<typeof wrap>): string =>
  lines.map((line) => line.parts.map((part) => part.text).join('')).join(' ');

const runs = fc.array(
  fc.record({
    text: fc.stringMatching(/^[a-zé0-9 \u00a0½²/-]{0,60}$/),
    size: fc.constantFrom(9, 14),
    weight: fc.constantFrom('regular' as const, 'bold' as const),
    ink: fc.constant('#000000'),
  }),
  { maxLength: 6 },
);

test('no line is wider than its room, unless one sign is', () => {
  fc.assert(
    fc.property(runs, fc.double({ min: 4, max: 300, noNaN: true }), (texts, room) => {
      for (const line of wrap(texts, room, measure)) expect(line.width).toBeLessThanOrEqual(Math.max(room, 7) + 0.02);
    }),
  );
});

test('nothing is lost and nothing added', () => {
  fc.assert(
    fc.property(runs, fc.double({ min: 4, max: 300, noNaN: true }), (texts, room) => {
      const bare = (text: string): string => text.replace(/ /g, '');
      expect(bare(joined(wrap(texts, room, measure)))).toBe(bare(texts.map((one) => one.text).join('')));
    }),
  );
});

test('a figure is not parted from its unit while both fit one line', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 40 }), (figure, before) => {
      const words = `${'a '.repeat(before)}${figure}\u00a0ft² and more`;
      const lines = wrap([run(words, { size: 10 })], 60, measure);
      expect(lines.some((line) => line.parts.some((part) => part.text.includes(`${figure}\u00a0ft²`)))).toBe(true);
    }),
  );
});

test('even lines are as many as full lines', () => {
  fc.assert(
    fc.property(runs, fc.double({ min: 60, max: 300, noNaN: true }), (texts, room) => {
      expect(wrapEvenly(texts, room, measure).length).toBe(wrap(texts, room, measure).length);
    }),
  );
});
