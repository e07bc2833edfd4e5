import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { after, homography, IDENTITY, mapped, plainFour, scaled } from './homography.ts';

const SQUARE = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

describe('a photo straightened by four points', () => {
  test('four points go exactly where they belong', () => {
    const seen = [
      [120, 400],
      [510, 380],
      [430, 150],
      [190, 160],
    ] as const;
    const floor = [
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ] as const;
    const map = homography(seen, floor);
    if (!map) throw new Error('a map was expected');
    seen.forEach((dot, i) => {
      const [x, y] = mapped(map, dot) ?? [Number.NaN, Number.NaN];
      expect(x).toBeCloseTo(floor[i]?.[0] ?? Number.NaN, 9);
      expect(y).toBeCloseTo(floor[i]?.[1] ?? Number.NaN, 9);
    });
  });

  // Own arithmetic: in a trapezium the diagonals of the square cross where those of the trapezium do.
  test('the middle of a square seen obliquely lies where its diagonals cross', () => {
    const trapezium = [
      [0, 0],
      [4, 0],
      [3, 2],
      [1, 2],
    ] as const;
    const map = homography(SQUARE, trapezium);
    if (!map) throw new Error('a map was expected');
    const [x, y] = mapped(map, [0.5, 0.5]) ?? [0, 0];
    expect(x).toBeCloseTo(2, 12);
    expect(y).toBeCloseTo(4 / 3, 12);
  });

  test('points on a line or crossed over are refused', () => {
    expect(
      homography(
        [
          [0, 0],
          [1, 0],
          [2, 0],
          [0, 1],
        ],
        SQUARE,
      ),
    ).toBeNull();
    expect(
      plainFour([
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
      ]),
    ).toBe(false);
    expect(homography(SQUARE.slice(0, 3), SQUARE)).toBeNull();
  });

  test('there and back is no change, whatever plain four points', () => {
    const place = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(fc.array(place, { minLength: 8, maxLength: 8 }), place, place, (shift, px, py) => {
        const four = SQUARE.map(([x, y], i) => [x + (shift[2 * i] ?? 0), y + (shift[2 * i + 1] ?? 0)] as const);
        fc.pre(plainFour(four));
        const [out, home] = [homography(SQUARE, four), homography(four, SQUARE)];
        if (!out || !home) return;
        const both = after(home, out);
        const [x, y] = mapped(both, [0.5 + px, 0.5 + py]) ?? [Number.NaN, Number.NaN];
        expect(x).toBeCloseTo(0.5 + px, 5);
        expect(y).toBeCloseTo(0.5 + py, 5);
      }),
      { numRuns: 100 },
    );
  });
});

test('a plan set to scale by one known length', () => {
  const map = scaled(
    [
      [100, 700],
      [500, 700],
    ],
    8,
  );
  if (!map) throw new Error('a scale was expected');
  expect(mapped(map, [500, 700])).toEqual([8, 0]);
  const [x, y] = mapped(map, [100, 500]) ?? [Number.NaN, Number.NaN];
  expect([x, y].map((value) => Number(value.toFixed(9)))).toEqual([0, 4]);
  expect(
    scaled(
      [
        [1, 1],
        [1, 1],
      ],
      8,
    ),
  ).toBeNull();
  expect(mapped(IDENTITY, [3, 4])).toEqual([3, 4]);
});
