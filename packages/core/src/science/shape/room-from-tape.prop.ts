import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaOf, cornerAt, type Ring } from './polygon.ts';
import { roomFromTape } from './room-from-tape.ts';
import type { TapeMeasure } from './tape-measures.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Corners around a point at distances that stay within a factor of two: plain rooms, some corners turning inwards. */
const room = fc.array(real(4, 8), { minLength: 3, maxLength: 9 }).map(
  (radii): Ring =>
    radii.map((radius, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    }),
);

const taped = (plan: Ring, from: number, to: number, slip = 0): TapeMeasure => {
  const [a, b] = [cornerAt(plan, from), cornerAt(plan, to)];
  return { kind: 'distance', from, to, length: Math.hypot(a[0] - b[0], a[1] - b[1]) + slip, deviation: 0.004 };
};
const pairs = (count: number): readonly (readonly [number, number])[] =>
  Array.from({ length: count }, (_, i) => i).flatMap((from) =>
    Array.from({ length: count - from - 1 }, (_, j) => [from, from + 1 + j] as const),
  );

describe('a room from a tape', () => {
  test('exact measures give the room back from a rough sketch', () => {
    fc.assert(
      fc.property(room, fc.array(real(-0.3, 0.3), { minLength: 18, maxLength: 18 }), (plan, shake) => {
        const sketch: Ring = plan.map(([x, y], i) => [
          2 * x + (shake[2 * i] as number),
          2 * y + (shake[2 * i + 1] as number),
        ]);
        const measures = pairs(plan.length).map(([from, to]) => taped(plan, from, to));
        const result = roomFromTape({ cornerCount: plan.length, measures, sketch });
        if (!result.ok) throw new Error(result.trouble.code);
        expect(Math.abs(result.room.area - areaOf(plan))).toBeLessThan(1e-6);
        expect(result.room.weighedSquares).toBeLessThan(1e-9);
      }),
    );
  });

  test('the diagonals asked for are the ones missing: taped, they fix the room', () => {
    fc.assert(
      fc.property(room, (plan) => {
        const count = plan.length;
        const sides = plan.map((_, i) => taped(plan, i, (i + 1) % count));
        const loose = roomFromTape({ cornerCount: count, measures: sides, sketch: plan });
        if (loose.ok) {
          expect(count).toBe(3);
          return;
        }
        if (loose.trouble.code !== 'tape-room-is-loose') throw new Error(loose.trouble.code);
        expect(loose.trouble.missing).toBe(count - 3);
        const measures = [...sides, ...loose.trouble.diagonals.map(([from, to]) => taped(plan, from, to))];
        const fixed = roomFromTape({ cornerCount: count, measures, sketch: plan });
        if (!fixed.ok) throw new Error(fixed.trouble.code);
        expect(fixed.room.redundancy).toBe(0);
        expect(fixed.room.area).toBeCloseTo(areaOf(plan), 6);
      }),
    );
  });

  test('a slip of 10 cm in a well-taped room is found where it was made', () => {
    fc.assert(
      fc.property(
        room.filter((plan) => plan.length >= 5),
        fc.nat(1000),
        (plan, pick) => {
          const all = pairs(plan.length);
          const slip = pick % all.length;
          const measures = all.map(([from, to], i) => taped(plan, from, to, i === slip ? 0.1 : 0));
          const result = roomFromTape({ cornerCount: plan.length, measures, sketch: plan });
          if (!result.ok) throw new Error(result.trouble.code);
          expect(result.room.beyondChance).toBe(true);
          expect(result.room.suspects).toContain(slip);
        },
      ),
    );
  });
});

test('the stated deviation of the area is the one repeated taping shows', () => {
  const plan: Ring = [
    [0, 0],
    [7, 0],
    [9, 4],
    [5, 7],
    [0, 6],
  ];
  // Sums of twelve uniform numbers less six: normal enough, with a fixed seed.
  let state = 20_260_513;
  const uniform = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const normal = (): number => Array.from({ length: 12 }, uniform).reduce((sum, u) => sum + u, -6);
  const areas: number[] = [];
  let stated = 0;
  for (let round = 0; round < 600; round++) {
    const measures = pairs(5)
      .slice(0, 9)
      .map(([from, to]) => taped(plan, from, to, 0.004 * normal()));
    const result = roomFromTape({ cornerCount: 5, measures, sketch: plan });
    if (!result.ok) throw new Error(result.trouble.code);
    areas.push(result.room.area);
    stated = result.room.areaDeviation;
  }
  const mean = areas.reduce((sum, a) => sum + a, 0) / areas.length;
  const seen = Math.sqrt(areas.reduce((sum, a) => sum + (a - mean) ** 2, 0) / (areas.length - 1));
  // A deviation from 600 draws is itself known to 3 %; three of those are allowed.
  expect(Math.abs(seen / stated - 1)).toBeLessThan(0.09);
  expect(Math.abs(mean - areaOf(plan))).toBeLessThan((4 * stated) / Math.sqrt(600));
});
