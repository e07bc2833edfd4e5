import { expect, test } from 'vitest';
import { lanesOf } from './lanes.ts';
import { joined } from './lines.ts';

const cells = (dots: readonly (readonly [number, number])[], pour: readonly number[]) => ({
  layer: 'base',
  areas: ['a'],
  begun: 0,
  size: 1,
  x: Float32Array.from(dots, ([x]) => x),
  y: Float32Array.from(dots, ([, y]) => y),
  minute: Float32Array.from(dots, (_, i) => i),
  pour: Uint16Array.from(pour),
  seams: [],
  ends: [],
});

test('to and fro are two lanes, the step between them is none', () => {
  const dots = [
    [0, 0],
    [1, 0],
    [2, 0],
    [2, 1],
    [1, 1],
    [0, 1],
    [9, 9],
  ] as const;
  expect(lanesOf(cells(dots, [0, 0, 0, 0, 0, 0, 1]), 0)).toEqual([
    [
      [0, 0],
      [2, 0],
    ],
    [
      [2, 1],
      [0, 1],
    ],
  ]);
});

test('a pour of two squares has no lane', () => {
  expect(
    lanesOf(
      cells(
        [
          [0, 0],
          [1, 0],
        ],
        [0, 0],
      ),
      0,
    ),
  ).toEqual([]);
});

test('neighbouring sides make one line, a gap parts them', () => {
  const side = (from: number) => ({ upright: true, line: 2, from });
  expect(joined([side(1), side(0), side(3)], 1)).toEqual([
    [
      [2, 0],
      [2, 2],
    ],
    [
      [2, 3],
      [2, 4],
    ],
  ]);
});
