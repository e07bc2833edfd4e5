import { jobFrom } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { setAt } from '../edit/path.ts';
import { draftDrawing } from './draft.ts';
import { FOOT } from './lengths.ts';
import { putDown } from './tools.ts';

/** What the job's own schema says about an area, for tests: codes with their places in the area. */
function areaSchemaOf(area: unknown): readonly string[] {
  const read = jobFrom({
    schema: 'slabwright.job/1',
    id: 'test',
    title: 'Test',
    place: { zone: 'UTC' },
    reader: { units: 'imperial', paper: 'letter' },
    areas: [area],
    survey: {},
    options: [],
  });
  return read.ok ? [] : read.issues.map(({ code, path }) => `${code} ${path.slice(2).join('.')}`);
}

const room = () => ({
  areas: [
    {
      id: 'main',
      name: 'Floor',
      outline: [
        ['0 ft', '0 ft'],
        ['20 ft', '0 ft'],
        ['20 ft', '10 ft'],
        ['0 ft', '10 ft'],
      ],
    } as Record<string, unknown>,
  ],
});
const path = ['areas', 0];

describe('the table of corners and the drawing are the same text', () => {
  test('what is typed is drawn', () => {
    const job = room();
    setAt(job, [...path, 'outline', 2, 1], '12 ft 6 in');
    const { outline, width, depth } = draftDrawing(job.areas[0], 'imperial', []);
    expect(outline[2]?.[1]).toBeCloseTo(12.5 * FOOT, 12);
    expect([width, depth]).toEqual(['20 ft', '12 ft 6 in']);
  });

  test('a taped room is drawn as it was solved', () => {
    const { outline } = draftDrawing({ id: 'a', name: 'A', tape: { corners: [] } }, 'metric', [
      [0, 0],
      [4, 0],
      [4, 3],
    ]);
    expect(outline).toHaveLength(3);
  });
});

describe('what is put down fits the job file', () => {
  const places = [
    [1, 0.2],
    [2, 0.2],
    [2, 1],
  ] as const;

  test('a door goes onto the wall', () => {
    const job = room();
    putDown(job, path, 'exit', places.slice(0, 2), 'metric');
    expect(job.areas[0]?.exits).toEqual([{ id: 'exit-1', from: ['1 m', '0 m'], to: ['2 m', '0 m'] }]);
  });

  test.each(['exit', 'hole', 'joint', 'crack', 'point'] as const)('a %s is whole as drawn', (tool) => {
    const job = room();
    putDown(job, path, tool, tool === 'hole' ? places : places.slice(0, tool === 'point' ? 1 : 2), 'imperial');
    expect(areaSchemaOf(job.areas[0])).toEqual([]);
  });

  test('a spot still asks how large it is: nobody said', () => {
    const job = room();
    putDown(job, path, 'spot', places.slice(0, 1), 'imperial');
    expect(areaSchemaOf(job.areas[0])).toEqual(['field-missing spots.0.area']);
  });
});
