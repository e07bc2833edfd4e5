import { expect, test } from 'vitest';
import { scaled, single } from './scale.ts';

test('bars begin at nothing and the longest fills its row', () => {
  expect(scaled([single(2), single(4), null])).toEqual([[0.5, 0.5], [1, 1], null]);
});

test('a range keeps both of its ends', () => {
  expect(scaled([[1, 2], single(4)])).toEqual([
    [0.25, 0.5],
    [1, 1],
  ]);
});

test('numbers on both sides of nothing get no bars', () => {
  expect(scaled([single(-1), single(4)])).toEqual([null, null]);
});

test('nothing but nothing gets no bars', () => {
  expect(scaled([single(0), single(undefined)])).toEqual([null, null]);
});
