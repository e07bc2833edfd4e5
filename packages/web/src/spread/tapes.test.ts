import type { JobFile } from '@slabwright/core';
import { expect, test } from 'vitest';
import type { AreaDrawing, Dot } from '../worker/api.ts';
import { placeAt } from './place-under.ts';
import { addTape, moveTape, removeTape, tapesOf, within } from './tapes.ts';

const AREA = {
  id: 'hall',
  outline: [
    [0, 0],
    [6, 0],
    [6, 4],
    [0, 4],
  ],
} as unknown as AreaDrawing;
const fresh = (): JobFile => ({ options: [{ id: 'one' }] }) as unknown as JobFile;

test('a new line lies across the middle and can be moved and removed', () => {
  const file = fresh();
  addTape(file, 'one', AREA, 'metric');
  addTape(file, 'one', AREA, 'metric');
  expect(tapesOf(file, 'one', 'hall').map(({ id, from, to }) => [id, from, to])).toEqual([
    ['tape-1', [0, 2], [6, 2]],
    ['tape-2', [0, 2], [6, 2]],
  ]);
  moveTape(file, 'one', 1, 'to', ['6 m', 'wide']);
  expect(tapesOf(file, 'one', 'hall')[1]?.to).toBeNull();
  removeTape(file, 'one', 0);
  expect(tapesOf(file, 'one', 'hall').map(({ id, index }) => [id, index])).toEqual([['tape-2', 0]]);
  addTape(file, 'one', AREA, 'metric');
  expect(tapesOf(file, 'one', 'hall').map(({ id }) => id)).toEqual(['tape-2', 'tape-3']);
  removeTape(file, 'one', 1);
  removeTape(file, 'one', 0);
  expect(file.options[0]).toEqual({ id: 'one' });
});

test('a pixel is the place it was drawn from, held inside the walls', () => {
  const at = ([x, y]: Dot): Dot => [10 + x * 50, 300 - y * 50];
  expect(placeAt(at, at([2.5, 3]))).toEqual([2.5, 3]);
  const turned = ([x, y]: Dot): Dot => [10 + y * 50, 300 + x * 50];
  expect(placeAt(turned, turned([2.5, 3]))).toEqual([2.5, 3]);
  expect(within(AREA, [7, -1])).toEqual([6, 0]);
});
