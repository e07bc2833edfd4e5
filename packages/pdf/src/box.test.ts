import { describe, expect, test } from 'vitest';
import { type Box, beside, pagesOf, rowsThatFit, stack, wholeWhenShort } from './box.ts';

const block = (height: number, more: Partial<Box> = {}): Box => ({ height, gap: 0, draw: () => undefined, ...more });
const heights = (boxes: readonly Box[], room: number): readonly number[] =>
  pagesOf(boxes, () => room).map((page) => page.height);

describe('pages', () => {
  test('fill up to the last point and no further', () => {
    expect(heights([block(50), block(50)], 100)).toEqual([100]);
    expect(heights([block(50), block(51)], 100)).toEqual([50, 51]);
  });

  test('the gap above a box is dropped where a page begins', () => {
    expect(heights([block(60), block(60, { gap: 10 })], 100)).toEqual([60, 60]);
    expect(heights([block(40), block(40, { gap: 10 })], 100)).toEqual([90]);
  });

  test('a heading goes over with what follows it', () => {
    expect(heights([block(70), block(20, { keepNext: true }), block(30)], 100)).toEqual([70, 50]);
  });

  test('a box taller than a page stands alone, and the rest goes on', () => {
    expect(heights([block(20), block(150), block(30)], 100)).toEqual([20, 150, 30]);
  });

  test('a heading before a box taller than a page does not push it past the foot twice', () => {
    expect(heights([block(20, { keepNext: true }), block(150)], 100)).toEqual([20, 150]);
  });
});

test('columns go on beside each other on the next page', () => {
  const column = (count: number): Box => stack(Array.from({ length: count }, () => block(30)));
  const pages = pagesOf(
    [
      beside(
        [
          { x: 0, box: column(5) },
          { x: 100, box: column(2) },
        ],
        0,
      ),
    ],
    () => 100,
  );
  expect(pages.map((page) => page.height)).toEqual([90, 60]);
});

test('a break leaves no single last row', () => {
  const rows = Array.from({ length: 5 }, () => block(10));
  expect(rowsThatFit(rows, 40)).toBe(3);
  expect(rowsThatFit(rows, 50)).toBe(5);
  expect(rowsThatFit(rows, 9)).toBe(0);
});

test('what is short is not cut', () => {
  const cuttable = stack([block(50), block(50)]);
  expect(cuttable.split?.(60)).toBeDefined();
  expect(wholeWhenShort(cuttable).split).toBeUndefined();
});
