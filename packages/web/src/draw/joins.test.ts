import { checkJob, type JobFile, jobFrom, layOut } from '@slabwright/core';
import { expect, test } from 'vitest';
import type { Dot } from '../worker/api.ts';
import { joinRooms, sideIn, wallStretch, withDoors } from './joins.ts';
import { FOOT } from './lengths.ts';

const ft = (x: number, y: number): Dot => [x * FOOT, y * FOOT];
const ring: readonly Dot[] = [ft(0, 0), ft(10, 0), ft(10, 12), ft(0, 12)];
const corners = (): [string, string][] => [
  ['0 ft', '0 ft'],
  ['10 ft', '0 ft'],
  ['10 ft', '12 ft'],
  ['0 ft', '12 ft'],
];

test('a stretch of wall is measured from its first corner', () => {
  expect(wallStretch(ring, 1, 2 * FOOT, 3 * FOOT)).toEqual([ft(10, 2), ft(10, 5)]);
  expect(wallStretch(ring, 1, 10 * FOOT, 3 * FOOT)).toBeNull();
  expect(wallStretch(ring, 1, -1, 3 * FOOT)).toBeNull();
});

test('a door put down between two rooms joins them for the core, and stands in the wall of each', () => {
  const draft = {
    schema: 'slabwright.job/1',
    id: 'two',
    title: 'Two rooms',
    place: { zone: 'America/Denver' },
    reader: { units: 'imperial', paper: 'letter' },
    areas: [
      { id: 'hall', name: 'Hall', outline: corners() },
      { id: 'store', name: 'Store', outline: corners() },
    ],
    survey: {},
    options: [],
  } as unknown as JobFile;
  const [hall, store] = [wallStretch(ring, 1, 2 * FOOT, 3 * FOOT), wallStretch(ring, 3, 4 * FOOT, 3 * FOOT)];
  if (!hall || !store) throw new Error('no wall');
  joinRooms(
    draft,
    { area: 'hall', from: hall[0], to: hall[1] },
    { area: 'store', from: store[0], to: store[1] },
    'imperial',
    '6 in',
  );
  const read = jobFrom(draft);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { catalogue } = { catalogue: { products: [], systems: [] } };
  const sense = checkJob(read.value, catalogue as never, '2026-05-12T18:00:00-06:00');
  expect(sense.filter(({ code }) => code.startsWith('check-door') || code.startsWith('check-rooms'))).toEqual([]);
  const laid = layOut(
    [
      { id: 'hall', outline: ring },
      { id: 'store', outline: ring },
    ],
    (read.value.doors ?? []).map(({ id, sides, wall }) => ({
      id,
      wall: wall?.value,
      sides: sides.map(({ area, from, to }) => ({
        area,
        from: [from[0].value, from[1].value] as const,
        to: [to[0].value, to[1].value] as const,
      })) as never,
    })),
  );
  expect(laid.overlaps).toEqual([]);
  // Own arithmetic: the store stands to the right, 6 in of wall away.
  expect(laid.rooms[1]?.dx).toBeCloseTo(10.5 * FOOT, 9);
  const [door] = draft.doors ?? [];
  expect(sideIn(door, 'store')).toMatchObject({ other: 'hall' });
  const blank = {
    id: 'store',
    name: 'Store',
    outline: ring,
    holes: [],
    exits: [],
    joints: [],
    cracks: [],
    spots: [],
    points: [],
    sun: [],
    width: '',
    depth: '',
  };
  expect(withDoors(blank, draft.doors ?? [], () => 'Hall').exits).toMatchObject([{ name: 'Hall', shut: false }]);
});
