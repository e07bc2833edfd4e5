import { describe, expect, test } from 'vitest';
import { atLength, helped, onWall } from './snap.ts';

const help = { step: 0.1, rightAngles: true, near: 0.2 };

describe('right-angle help', () => {
  test('a wall that is nearly square becomes square, its length a whole step', () => {
    expect(helped([4.07, 0.12], [[0, 0]], [[0, 0]], help).map((v) => Number(v.toFixed(9)))).toEqual([4.1, 0]);
  });
  test('a wall that is meant oblique stays oblique', () => {
    const [x, y] = helped([3, 2], [[0, 0]], [[0, 0]], help);
    expect([x, y].map((v) => Number(v.toFixed(9)))).toEqual([3, 2]);
  });
  test('the last corner lines up with the first', () => {
    const ring = [
      [0, 0],
      [4, 0],
      [4, 3],
    ] as const;
    expect(helped([0.13, 3.05], [[4, 3]], ring, help)).toEqual([0, 3]);
  });
  test('a room turned by 30 degrees keeps its right angles', () => {
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const ring = [
      [0, 0],
      [4 * c, 4 * s],
    ] as const;
    const rough = [4 * c - 3 * s + 0.05, 4 * s + 3 * c - 0.02] as const;
    const [x, y] = helped(rough, [ring[1]], ring, help);
    const dot = (x - ring[1][0]) * c + (y - ring[1][1]) * s;
    expect(Math.abs(dot)).toBeLessThan(1e-9);
  });
  test('without help nothing is pulled', () => {
    expect(helped([4.07, 0.12], [[0, 0]], [[0, 0]], { ...help, rightAngles: false, step: 0 })).toEqual([4.07, 0.12]);
  });
});

test('a typed length holds whatever the hand pointed at', () => {
  const [x, y] = atLength([1, 1], [1, 9], 2.5);
  expect([x, y]).toEqual([1, 3.5]);
});

test('an exit goes onto the nearest wall', () => {
  const ring = [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ] as const;
  expect(onWall([2, 0.4], ring)).toEqual([2, 0]);
  expect(onWall([5, 4], ring)).toEqual([4, 3]);
});
