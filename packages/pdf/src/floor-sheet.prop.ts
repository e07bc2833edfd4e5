import type { FloorMark } from '@slabwright/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MOST_LABELS } from './floor-legend.ts';
import { allApart, floorSheet } from './floor-sheet.ts';
import { overlap } from './geometry.ts';
import { measureWith, run } from './text.ts';

const measure = measureWith((text) => [...text].length * 0.55);

/** Rooms of an L shape, with joints, cracks, doors and readings anywhere on them. */
const floors = fc
  .record({
    wide: fc.double({ min: 2, max: 40, noNaN: true }),
    deep: fc.double({ min: 2, max: 40, noNaN: true }),
    places: fc.array(
      fc.record({
        kind: fc.constantFrom('joint', 'crack', 'reading', 'spot', 'exit'),
        x: fc.double({ min: 0.05, max: 0.55, noNaN: true }),
        y: fc.double({ min: 0.05, max: 0.55, noNaN: true }),
        words: fc.stringMatching(/^[a-z]{1,9}( [a-z]{1,9}){0,6}$/),
      }),
      { maxLength: 11 },
    ),
  })
  .map(({ wide, deep, places }) => {
    const outline: readonly (readonly [number, number])[] = [
      [0, 0],
      [wide, 0],
      [wide, deep * 0.6],
      [wide * 0.6, deep * 0.6],
      [wide * 0.6, deep],
      [0, deep],
    ];
    const labels = places.map(({ kind, x, y, words }) => {
      const at = [x * wide, y * deep] as const;
      const mark: FloorMark =
        kind === 'reading'
          ? { kind, at }
          : kind === 'spot'
            ? { kind, at, radius: 0.3, what: 'oil' }
            : kind === 'exit'
              ? { kind, from: [0, at[1]], to: [0, at[1] + 0.2], shut: true }
              : kind === 'joint'
                ? {
                    kind,
                    along: [
                      [0, at[1]],
                      [wide * 0.6, at[1]],
                    ],
                  }
                : { kind: 'crack', along: [at, [at[0] + wide * 0.04, at[1] + deep * 0.04]] };
      return { mark, runs: [run(words, { size: 9 })] };
    });
    const marks = labels.map(({ mark }) => mark);
    return { drawing: { area: 'a', name: 'Room', outline, holes: [], net: 'n', marks, dimensions: true }, labels };
  });

const sheetOf = ({
  drawing,
  labels,
}: {
  drawing: Parameters<typeof floorSheet>[0];
  labels: Parameters<typeof floorSheet>[1]['labels'];
}) =>
  floorSheet(
    drawing,
    { name: 'Room', net: '435 ft²', wide: '20 ft', deep: '24 ft', labels },
    { width: 300, height: 260, size: 9, leading: 1.2 },
    measure,
  );

test('words never lie on each other, on the floor or past the edge of the drawing', () => {
  fc.assert(
    fc.property(floors, (made) => {
      const sheet = sheetOf(made);
      expect(sheet.labels).toHaveLength(made.labels.length);
      expect(allApart(sheet.labels)).toBe(true);
      for (const label of sheet.labels) {
        expect(overlap(label, sheet.floor)).toBe(false);
        expect(label.right).toBeLessThanOrEqual(sheet.width + 0.01);
        expect(label.bottom).toBeLessThanOrEqual(sheet.height + 0.01);
      }
    }),
  );
});

test('more than five labels become numbers, the same ones in the legend', () => {
  fc.assert(
    fc.property(floors, (made) => {
      const sheet = sheetOf(made);
      const texts = sheet.commands.flatMap((command) => (command.draw === 'text' ? [command.run.text] : []));
      const count = made.labels.length;
      if (count <= MOST_LABELS) expect(sheet.leaders).toHaveLength(count);
      else {
        expect(sheet.leaders).toHaveLength(0);
        for (let number = 1; number <= count; number += 1) {
          expect(texts.filter((text) => text === String(number)).length).toBe(2);
        }
      }
    }),
  );
});

test('the drawing is to scale: both dimensions shrink alike', () => {
  fc.assert(
    fc.property(floors, (made) => {
      const { floor } = sheetOf(made);
      const [wide, deep] = [made.drawing.outline[1]?.[0] ?? 0, made.drawing.outline[5]?.[1] ?? 0];
      // The walls stand outside the outline, 4 points on each side.
      const [x, y] = [floor.right - floor.left - 8, floor.bottom - floor.top - 8];
      expect(x / y).toBeCloseTo(wide / deep, 6);
    }),
  );
});
