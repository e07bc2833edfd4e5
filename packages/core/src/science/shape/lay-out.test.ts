import { expect, test } from 'vitest';
import { doorOnWall } from './door-on-wall.ts';
import { type DoorShape, layOut, placedPoint, pointInRoom, type RoomShape } from './lay-out.ts';
import type { Point, Ring } from './polygon.ts';

const rectangle = (width: number, depth: number): Ring => [
  [0, 0],
  [width, 0],
  [width, depth],
  [0, depth],
];
const room = (id: string, outline: Ring): RoomShape => ({ id, outline });
const door = (id: string, one: [string, Point, Point], other: [string, Point, Point], wall?: number): DoorShape => ({
  id,
  sides: [
    { area: one[0], from: one[1], to: one[2] },
    { area: other[0], from: other[1], to: other[2] },
  ],
  ...(wall === undefined ? {} : { wall }),
});
const near = (points: Ring | undefined): readonly (readonly number[])[] =>
  (points ?? []).map(([x, y]) => [Math.round(x * 1e6) / 1e6 + 0, Math.round(y * 1e6) / 1e6 + 0]);

// The places are worked out on paper: two rectangles side by side, one of them drawn lying on its side (own arithmetic).
test('two rooms side by side, the second measured from its own corner and turned a quarter', () => {
  const a = room('a', rectangle(4, 3));
  // as seen from its own door wall: 2 m wide, 5 m deep, its door in the wall along x
  const b = room('b', rectangle(2, 5));
  const laid = layOut([a, b], [door('d', ['a', [4, 1], [4, 2]], ['b', [0.5, 0], [1.5, 0]], 0.2)]);
  expect(near(laid.rooms[0]?.outline)).toEqual([
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ]);
  expect(near(laid.rooms[1]?.outline)).toEqual([
    [4.2, 2.5],
    [4.2, 0.5],
    [9.2, 0.5],
    [9.2, 2.5],
  ]);
  expect(near(laid.doors[0]?.threshold)).toEqual([
    [4.1, 1],
    [4.1, 2],
  ]);
  expect(laid.doors[0]?.gap).toBe(0);
  expect(laid.overlaps).toEqual([]);
});

test('the order of the ends and the way round an outline change nothing', () => {
  const b = rectangle(2, 5);
  const plain = layOut(
    [room('a', rectangle(4, 3)), room('b', b)],
    [door('d', ['a', [4, 1], [4, 2]], ['b', [0, 2], [0, 3]])],
  );
  const other = layOut(
    [room('a', [...rectangle(4, 3)].reverse()), room('b', [...b].reverse())],
    [door('d', ['a', [4, 2], [4, 1]], ['b', [0, 2], [0, 3]])],
  );
  const sorted = (ring: Ring | undefined) => near(ring).map(String).sort();
  expect(sorted(other.rooms[1]?.outline)).toEqual(sorted(plain.rooms[1]?.outline));
});

test('a loop of doors: what the thickness of the walls makes up is no gap, what the tape missed is one', () => {
  // four rooms round a crossing of walls 0.2 m thick
  const rooms = ['a', 'b', 'c', 'd'].map((id) => room(id, rectangle(4, 4)));
  const loop = (wrong: number): DoorShape[] => [
    door('ab', ['a', [4, 1], [4, 2]], ['b', [0, 1], [0, 2]], 0.2),
    door('bc', ['b', [1, 4], [2, 4]], ['c', [1, 0], [2, 0]], 0.2),
    door('cd', ['c', [0, 1], [0, 2]], ['d', [4, 1], [4, 2]], 0.2),
    door('da', ['d', [1 + wrong, 0], [2 + wrong, 0]], ['a', [1, 4], [2, 4]], 0.2),
  ];
  const sound = layOut(rooms, loop(0));
  expect(sound.doors.every(({ gap }) => gap < 1e-9)).toBe(true);
  const missed = layOut(rooms, loop(0.3));
  // the loop closes at the room that is reached from both sides
  expect(Math.max(...missed.doors.map(({ gap }) => gap))).toBeCloseTo(0.3, 9);
});

test('rooms that lie over each other are named with the floor they share', () => {
  // the store stands in the corner of the hall it opens into: its door was put on the wrong side of the wall
  const rooms = [room('hall', rectangle(6, 6)), room('store', rectangle(3, 3)), room('bay', rectangle(3, 3))];
  const laid = layOut(rooms, [
    door('one', ['hall', [6, 0], [6, 1]], ['store', [0, 0], [0, 1]]),
    door('two', ['hall', [6, 2], [6, 3]], ['bay', [0, 0], [0, 1]]),
  ]);
  // store y 0–3, bay y 2–5, both x 6–9
  expect(laid.overlaps).toEqual([{ areas: ['store', 'bay'], area: expect.closeTo(3, 6) }]);
});

test('rooms no door joins stand apart; a door on no wall or into its own room is told', () => {
  const laid = layOut(
    [room('a', rectangle(4, 3)), room('b', rectangle(2, 2))],
    [
      door('floating', ['a', [2, 1], [3, 1]], ['b', [0, 0], [1, 0]]),
      door('self', ['a', [0, 1], [0, 2]], ['a', [4, 1], [4, 2]]),
    ],
  );
  expect(laid.unplaced).toEqual(['floating', 'self']);
  expect(laid.rooms.map(({ group }) => group)).toEqual([0, 1]);
  expect(near(laid.rooms[1]?.outline)[0]).toEqual([6, 0]);
});

test('there and back again', () => {
  const placed = { cos: 0.6, sin: 0.8, dx: 3, dy: -2 };
  const [x, y] = pointInRoom(placed, placedPoint(placed, [1.25, 7]));
  expect(x).toBeCloseTo(1.25, 12);
  expect(y).toBeCloseTo(7, 12);
});

test('a door a tape’s slack off its wall stands in it; one across a corner stands in none', () => {
  const ring = rectangle(4, 3);
  expect(doorOnWall(ring, [1, 0.04], [2, -0.03])).toEqual({ start: [1, 0], end: [2, 0], wall: 0, width: 1 });
  expect(doorOnWall(ring, [1, 0.06], [2, 0])).toBeUndefined();
  expect(doorOnWall(ring, [3.5, 0], [4, 0.5])).toBeUndefined();
});
