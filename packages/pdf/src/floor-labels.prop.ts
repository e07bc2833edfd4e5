import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeLabels } from './floor-labels.ts';
import { cross } from './geometry.ts';

const COLUMN = { edge: 210, left: 240, top: 0, bottom: 300, track: 5, between: 3 };

const wishes = fc.uniqueArray(
  fc.record({
    anchor: fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 300 })),
    height: fc.integer({ min: 11, max: 44 }),
  }),
  { maxLength: 12, selector: ({ anchor }) => anchor[0] },
);

const placed = (made: readonly { anchor: [number, number]; height: number }[]) =>
  placeLabels(
    made.map(({ anchor, height }) => ({ anchor, height, arrives: 5.5 })),
    COLUMN,
  );

test('labels never lie on each other and begin inside the column', () => {
  fc.assert(
    fc.property(wishes, (made) => {
      const labels = placed(made);
      labels.forEach((label, place) => {
        expect(label.top).toBeGreaterThanOrEqual(COLUMN.top - 1e-9);
        const next = labels[place + 1];
        const height = made[label.index]?.height ?? 0;
        if (next) expect(next.top).toBeGreaterThanOrEqual(label.top + height + COLUMN.between - 1e-9);
      });
    }),
  );
});

test('labels stay in the column while they fit it', () => {
  fc.assert(
    fc.property(wishes, (made) => {
      const whole = made.reduce((sum, { height }) => sum + height + COLUMN.between, -COLUMN.between);
      fc.pre(whole <= COLUMN.bottom);
      for (const { index, top } of placed(made)) {
        expect(top + (made[index]?.height ?? 0)).toBeLessThanOrEqual(COLUMN.bottom + 1e-9);
      }
    }),
  );
});

test('leaders never cross each other', () => {
  fc.assert(
    fc.property(wishes, (made) => {
      const leaders = placed(made).map(({ leader }) => leader);
      const parts = leaders.map((leader) => leader.slice(1).map((point, at) => [leader[at] ?? point, point] as const));
      parts.forEach((one, index) => {
        for (const other of parts.slice(index + 1)) {
          for (const [a, b] of one) for (const [c, d] of other) expect(cross(a, b, c, d)).toBe(false);
        }
      });
    }),
  );
});

test('every leader begins at its mark and ends at its own label', () => {
  fc.assert(
    fc.property(wishes, (made) => {
      const labels = placed(made);
      expect(labels.map(({ index }) => index).sort((a, b) => a - b)).toEqual(made.map((_, index) => index));
      for (const { index, leader, top } of labels) {
        expect(leader[0]).toEqual(made[index]?.anchor);
        expect(leader[leader.length - 1]).toEqual([COLUMN.left, top + 5.5]);
      }
    }),
  );
});
