import { expect, test } from 'vitest';
import { closed, NOTHING_DRAWN, plannedNumber, retyped, swapped, undone, withCorner, without } from './drawn-store.ts';

const tapped = (...dots: readonly (readonly [number, number])[]) =>
  dots.reduce((drawing, dot) => withCorner(drawing, dot, 0.2), NOTHING_DRAWN);

test('a tap near the first corner closes a pour of three or more', () => {
  const three = tapped([0, 0], [2, 0], [2, 2]);
  expect(three).toMatchObject({
    pours: [],
    open: [
      [0, 0],
      [2, 0],
      [2, 2],
    ],
  });
  expect(withCorner(three, [0.1, 0.1], 0.2)).toMatchObject({
    pours: [
      [
        [0, 0],
        [2, 0],
        [2, 2],
      ],
    ],
    open: [],
  });
  expect(tapped([0, 0], [0.1, 0]).open).toHaveLength(2);
  expect(closed(tapped([0, 0], [1, 0])).pours).toEqual([]);
});

test('a step back takes the last corner, and a closed pour in hand again', () => {
  const done = closed(tapped([0, 0], [2, 0], [2, 2]));
  const back = undone(done);
  expect(back).toMatchObject({
    pours: [],
    open: [
      [0, 0],
      [2, 0],
    ],
  });
  expect(undone(undone(undone(back)))).toMatchObject({ pours: [], open: [] });
});

test('pours change places, go, and take a typed corner; what was judged is judged no more', () => {
  const ring = (x: number) =>
    [
      [x, 0],
      [x + 1, 0],
      [x + 1, 1],
    ] as const;
  const two = { ...NOTHING_DRAWN, pours: [ring(0), ring(5)], judged: { ok: true, breaks: [], figures: [] } };
  expect(swapped(two, 0, 1)).toMatchObject({ pours: [ring(5), ring(0)], judged: null });
  expect(without(two, 0).pours).toEqual([ring(5)]);
  expect(retyped(two, 1, 2, [6, 3]).pours[1]?.[2]).toEqual([6, 3]);
});

test('a planned pour keeps its number through other places, and loses it with the first corner that moves', () => {
  const [first, second] = [0, 5].map((x) => [[x, 0] as const, [x + 1, 0] as const, [x + 1, 1] as const]) as [
    [number, number][],
    [number, number][],
  ];
  const begun = { ...NOTHING_DRAWN, from: [first, null, second], pours: [first, second] };
  expect(plannedNumber(begun, second)).toBe(3);
  const moved = retyped(swapped(begun, 0, 1), 0, 2, [6, 3]);
  expect(moved.pours.map((ring) => plannedNumber(moved, ring))).toEqual([undefined, 1]);
  expect(plannedNumber(NOTHING_DRAWN, first)).toBeUndefined();
});
