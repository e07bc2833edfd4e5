import { expect, test } from 'vitest';
import type { AreaDrawing } from '../worker/api.ts';
import type { Coat } from './coats.ts';
import { HERE, inRoom, joinedDrawing, onFloor, placedIn } from './joined.ts';

const room = (id: string, joint: string): AreaDrawing => ({
  id,
  name: id,
  outline: [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ],
  holes: [],
  exits: [],
  joints: [
    {
      id: joint,
      kind: 'contraction',
      along: [
        [1, 0],
        [1, 3],
      ],
    },
  ],
  cracks: [],
  spots: [],
  points: [],
  sun: [],
  width: '',
  depth: '',
});

/** The second room turned a quarter to the left and moved. */
const quarter = { cos: 0, sin: 1, dx: 7, dy: 1 };
const coat = {
  areas: ['a', 'b'],
  joined: {
    outline: [
      [0, 0],
      [7, 0],
      [7, 5],
      [0, 5],
    ],
    holes: [],
    rooms: [
      { area: 'a', placed: HERE, outline: [] },
      { area: 'b', placed: quarter, outline: [] },
    ],
    doorways: [
      {
        door: 'gap',
        along: [
          [4, 1],
          [4, 2],
        ],
      },
    ],
    exits: [],
  },
} as unknown as Coat;

test('what lies in a room is drawn where the room lies; a place goes there and back', () => {
  const drawn = joinedDrawing(coat, [room('a', 'one'), room('b', 'two')], 'metric');
  expect(drawn?.joints.map(({ id }) => id)).toEqual(['one', 'two', 'gap']);
  // (1, 0) and (1, 3) turned to the left about the origin: (0, 1) and (-3, 1); moved by (7, 1)
  expect(drawn?.joints[1]?.along).toEqual([
    [7, 2],
    [4, 2],
  ]);
  expect(drawn?.width).toBe('7 m');
  expect(inRoom(quarter, onFloor(quarter, [1.5, 2]))).toEqual([1.5, 2]);
});

test('a room by itself lies where it is', () => {
  expect(placedIn(null, 'a')).toBe(HERE);
  expect(joinedDrawing({ ...coat, joined: undefined } as unknown as Coat, [room('a', 'one')], 'metric')).toBeNull();
});
