import { expect, test } from 'vitest';
import { type CoverPack, leastCover, scoreOf } from './covering.ts';

const priced = (list: readonly (readonly [size: number, cost: number])[]): CoverPack[] =>
  list.map(([size, cost]) => ({ gives: [size * 1e4], cost, volume: size * 1e4 }));

test('kits of 3, 5 and 15 L for 23 L: one of each for 1,330 (Own, enumerated)', () => {
  const packs = priced([
    [3, 190],
    [5, 300],
    [15, 840],
  ]);
  const found = leastCover(packs, 23e4);
  expect(found?.counts).toEqual([1, 1, 1]);
  expect(scoreOf(packs, found?.counts ?? [])[0]).toBe(1330);
});

test('kits of 1.5 and 4.5 L for 11.2 L: two of each for 708 (Own, enumerated)', () => {
  const packs = priced([
    [1.5, 99],
    [4.5, 255],
  ]);
  expect(leastCover(packs, 11.2e4)?.counts).toEqual([2, 2]);
});

test('coins 1, 3, 4 for 6: two pieces, where taking the largest first needs three (textbook, from memory)', () => {
  const packs = priced([
    [1, 1],
    [3, 1],
    [4, 1],
  ]);
  expect(leastCover(packs, 6e4)?.counts).toEqual([0, 2, 0]);
});

test('packs of 6, 9 and 20: 43 cannot be met exactly, 44 to 49 can (textbook, from memory)', () => {
  const packs = priced([
    [6, 6],
    [9, 9],
    [20, 20],
  ]);
  const bought = (need: number): number => scoreOf(packs, leastCover(packs, need * 1e4)?.counts ?? [])[0];
  expect(bought(43)).toBe(44);
  for (const need of [44, 45, 46, 47, 48, 49]) expect(bought(need)).toBe(need);
});

test('ties: least volume, then fewest packs, then the pack listed first', () => {
  expect(
    leastCover(
      priced([
        [5, 10],
        [4, 10],
      ]),
      4e4,
    )?.counts,
  ).toEqual([0, 1]);
  expect(
    leastCover(
      priced([
        [2, 2],
        [4, 4],
      ]),
      8e4,
    )?.counts,
  ).toEqual([0, 2]);
  expect(
    leastCover(
      priced([
        [4, 4],
        [4, 4],
      ]),
      8e4,
    )?.counts,
  ).toEqual([2, 0]);
});

test('exact multiples need no further pack, on both sides of the break', () => {
  const packs = priced([[15, 1]]);
  expect(leastCover(packs, 30e4)?.counts).toEqual([2]);
  expect(leastCover(packs, 30e4 + 5, 5)?.counts).toEqual([2]);
  expect(leastCover(packs, 30e4 + 6, 5)?.counts).toEqual([3]);
  expect(leastCover(packs, 0)?.counts).toEqual([0]);
});

test('nothing covers a part that no pack holds', () => {
  expect(leastCover([{ gives: [1, 0], cost: 1, volume: 1 }], 5)).toBeUndefined();
  expect(leastCover([], 5)).toBeUndefined();
});

test('a cut-off search says so and still covers', () => {
  const packs = priced([
    [7, 7],
    [11, 11],
    [13, 13],
    [17, 17],
    [19, 19],
  ]);
  const found = leastCover(packs, 1009e4, 0, 3);
  expect(found?.proven).toBe(false);
  expect(scoreOf(packs, found?.counts ?? [])[1]).toBeGreaterThanOrEqual(1009e4);
});

test('a 20,000 m² floor from four pack sizes is proven within the effort', () => {
  const gallon = 37854118;
  const packs = [1, 2, 5, 50].map((n) => ({ gives: [n * gallon], cost: n * gallon, volume: n * gallon }));
  expect(leastCover(packs, 1333 * gallon + 17, 5000)?.proven).toBe(true);
  expect(leastCover(packs, 1333 * gallon + 17000, 5000)?.counts).toEqual([0, 2, 6, 26]);
});
