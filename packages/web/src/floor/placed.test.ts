import { layOut, placedPoint } from '@slabwright/core';
import { expect, test } from 'vitest';
import type { AreaDrawing, Dot } from '../worker/api.ts';
import { frameFor } from './geometry.ts';
import { placedArea, placedDot, roomFrame } from './placed.ts';

const ring: readonly Dot[] = [
  [0, 0],
  [3, 0],
  [3, 4],
  [0, 4],
];
const laid = layOut(
  [
    { id: 'hall', outline: ring },
    { id: 'store', outline: ring },
  ],
  [
    {
      id: 'd',
      sides: [
        { area: 'hall', from: [3, 1], to: [3, 2] },
        { area: 'store', from: [1, 0], to: [2, 0] },
      ],
      wall: 0.1,
    },
  ],
);
const store = laid.rooms.find(({ area }) => area === 'store');
if (!store) throw new Error('the store was not placed');

test('a room is drawn where the core puts it, with all that lies in it', () => {
  const blank: AreaDrawing = {
    id: 'store',
    name: 'Store',
    outline: ring,
    holes: [],
    exits: [],
    joints: [],
    cracks: [{ id: 'c', along: [[1, 1]] }],
    spots: [],
    points: [],
    sun: [],
    width: '',
    depth: '',
  };
  const drawn = placedArea(blank, store);
  expect(drawn.outline).toEqual(store.outline);
  expect(drawn.cracks[0]?.along[0]).toEqual(placedPoint(store, [1, 1]));
});

test('a layer of one room lands on the same pixels as the placed room', () => {
  const frame = frameFor({ least: [0, 0], most: [8, 8] }, 400, 400, { left: 0, top: 0, right: 0, bottom: 0 });
  const own = roomFrame(frame, store, ring);
  expect(own.at([1, 2])).toEqual(frame.at(placedDot(store, [1, 2])));
  expect(own.right - own.left).toBeCloseTo(4 * frame.scale, 9);
});
