import { expect, test } from 'vitest';
import { joinRooms } from './join-rooms.ts';
import { type DoorShape, layOut } from './lay-out.ts';
import { areaOf, type Point, type Ring } from './polygon.ts';

const rectangle = (width: number, depth: number): Ring => [
  [0, 0],
  [width, 0],
  [width, depth],
  [0, depth],
];
const door = (id: string, one: [string, Point, Point], other: [string, Point, Point], wall = 0): DoorShape => ({
  id,
  sides: [
    { area: one[0], from: one[1], to: one[2] },
    { area: other[0], from: other[1], to: other[2] },
  ],
  wall,
});
const length = (walls: readonly (readonly [Point, Point])[]): number =>
  walls.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);

// Areas and lengths by hand: 4 × 3 and 5 × 3 m, a door 1 m wide (own arithmetic).
test.each([0, 0.2])('two rooms and the doorway between them are one floor, wall %d m', (wall) => {
  const areas = [
    { id: 'a', outline: rectangle(4, 3) },
    { id: 'b', outline: rectangle(5, 3) },
  ];
  const joined = joinRooms(layOut(areas, [door('d', ['a', [4, 1], [4, 2]], ['b', [0, 1], [0, 2]], wall)]));
  expect(areaOf(joined.outline)).toBeCloseTo(12 + 15 + wall, 9);
  expect(joined.doorways).toBeCloseTo(wall, 9);
  expect(joined.holes).toEqual([]);
  // both rooms less the door on both sides, and the two posts
  expect(length(joined.walls)).toBeCloseTo(14 + 16 - 2 + 2 * wall, 9);
});

test('a loop of doors leaves the wall it runs round as a hole; a shut door is wall', () => {
  const areas = ['a', 'b', 'c', 'd'].map((id) => ({ id, outline: rectangle(4, 4) }));
  const doors = [
    door('ab', ['a', [4, 1], [4, 2]], ['b', [0, 1], [0, 2]], 0.2),
    door('bc', ['b', [1, 4], [2, 4]], ['c', [1, 0], [2, 0]], 0.2),
    door('cd', ['c', [0, 1], [0, 2]], ['d', [4, 1], [4, 2]], 0.2),
    door('da', ['d', [1, 0], [2, 0]], ['a', [1, 4], [2, 4]], 0.2),
  ];
  const laid = layOut(areas, doors);
  const joined = joinRooms(laid);
  expect(joined.holes).toHaveLength(1);
  const inner = areaOf(joined.holes[0] as Ring);
  expect(areaOf(joined.outline) - inner).toBeCloseTo(4 * 16 + 4 * 0.2, 9);
  const apart = joinRooms(laid, new Set(['da']));
  expect(apart.holes).toEqual([]);
  expect(apart.open).toEqual(['ab', 'bc', 'cd']);
  expect(areaOf(apart.outline)).toBeCloseTo(4 * 16 + 3 * 0.2, 9);
});

test('two doors in one wall, and one that lies over another stays shut', () => {
  const areas = [
    { id: 'a', outline: rectangle(4, 6) },
    { id: 'b', outline: rectangle(4, 6) },
  ];
  const at = (id: string, low: number): DoorShape =>
    door(id, ['a', [4, low], [4, low + 1]], ['b', [0, low], [0, low + 1]], 0.2);
  const joined = joinRooms(layOut(areas, [at('low', 1), at('high', 4), at('over', 1.5)]));
  expect(joined.open).toEqual(['low', 'high']);
  expect(areaOf(joined.holes[0] as Ring)).toBeCloseTo(2 * 0.2, 9);
});

test('a doorway that reaches into the first corner of an outline', () => {
  const areas = [
    { id: 'a', outline: rectangle(4, 3) },
    { id: 'b', outline: rectangle(4, 3) },
  ];
  const joined = joinRooms(layOut(areas, [door('d', ['a', [0, 0], [0, 1]], ['b', [4, 0], [4, 1]], 0.2)]));
  expect(joined.open).toEqual(['d']);
  expect(areaOf(joined.outline)).toBeCloseTo(24 + 0.2, 9);
});
