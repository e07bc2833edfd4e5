import type { JobFile } from '@slabwright/core';
import { expect, test } from 'vitest';
import type { AreaDrawing, Dot } from '../worker/api.ts';
import { doorAt, exitIn, moveDoor, stepDoor } from './doors.ts';

const outline: readonly Dot[] = [
  [0, 0],
  [6, 0],
  [6, 4],
  [0, 4],
];
const area = { id: 'room', outline } as unknown as AreaDrawing;
const file = (): JobFile =>
  ({
    areas: [{ id: 'room', exits: [{ id: 'door', from: ['1 m', '0 m'], to: ['2 m', '0 m'] }] }],
  }) as unknown as JobFile;

test('a door follows a hand along the wall, round the corner to the next, and never past its end', () => {
  expect(doorAt(outline, 1, [3, 0.4])).toEqual([
    [2.5, 0],
    [3.5, 0],
  ]);
  expect(doorAt(outline, 1, [5.7, 2])).toEqual([
    [6, 1.5],
    [6, 2.5],
  ]);
  expect(doorAt(outline, 1, [-1, -2])).toEqual([
    [0, 0],
    [1, 0],
  ]);
  expect(doorAt(outline, 7, [3, 0])).toBeNull();
});

test('what is written is what a tape reads, and the width stays', () => {
  const job = file();
  moveDoor(job, area, 'door', [6.2, 3], 'metric');
  expect(exitIn(job, 'room', 'door')).toMatchObject({ from: ['6 m', '2.5 m'], to: ['6 m', '3.5 m'] });
});

test('a press moves it along its wall and stops at the corner', () => {
  const job = file();
  stepDoor(job, area, 'door', 0.3, 'metric');
  expect(exitIn(job, 'room', 'door')?.from).toEqual(['1.3 m', '0 m']);
  for (let i = 0; i < 20; i++) stepDoor(job, area, 'door', -0.3, 'metric');
  expect(exitIn(job, 'room', 'door')?.from).toEqual(['0 m', '0 m']);
});
