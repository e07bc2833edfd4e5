import { expect, test } from 'vitest';
import { dotAt, holds, roomAround, scaledExtent, viewFrame } from './view.ts';

test('a pixel goes back to the place it shows', () => {
  const extent = roomAround(
    [
      [0, 0],
      [6, 4],
    ],
    [8, 6],
  );
  const frame = viewFrame(extent, 390, 300);
  const [x, y] = dotAt(frame, extent, frame.at([2.5, 1.25]));
  expect(x).toBeCloseTo(2.5, 9);
  expect(y).toBeCloseTo(1.25, 9);
});

test('nothing drawn shows an empty room; one corner is no division by zero', () => {
  expect(roomAround([], [8, 6]).most).toEqual([8, 6]);
  const one = roomAround([[1, 1]], [8, 6]);
  expect(one.most[0]).toBeGreaterThan(one.least[0]);
});

test('more around holds what was there', () => {
  const extent = roomAround(
    [
      [0, 0],
      [6, 4],
    ],
    [8, 6],
  );
  expect(holds(scaledExtent(extent, 1.5), [extent.least, extent.most])).toBe(true);
  expect(holds(extent, [[20, 0]])).toBe(false);
});
