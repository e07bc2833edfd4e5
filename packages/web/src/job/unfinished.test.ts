import { checkJob, type JobFile, jobFrom } from '@slabwright/core';
import { expect, test } from 'vitest';
import { isUnfinished, unfinishedRooms } from './unfinished.ts';

const job = (area: object): JobFile =>
  ({
    schema: 'slabwright.job/1',
    id: 'new',
    title: 'New',
    place: { zone: 'America/Denver' },
    reader: { units: 'imperial', paper: 'letter' },
    areas: [{ id: 'main', name: 'Floor', ...area }],
    survey: {},
    options: [],
  }) as unknown as JobFile;

function issuesOf(file: JobFile) {
  const read = jobFrom(file);
  if (!read.ok) return read.issues;
  return checkJob(read.value, { products: [], systems: [] } as never, '2026-05-12T18:00:00-06:00');
}

test.each([
  ['nothing drawn', {}],
  [
    'two corners',
    {
      outline: [
        ['0 ft', '0 ft'],
        ['4 ft', '0 ft'],
      ],
    },
  ],
  ['a measure still empty', { tape: { corners: ['a', 'b', 'c'], measures: [{ from: 'a', to: 'b', length: '' }] } }],
])('%s waits without alarm', (_what, area) => {
  const issues = issuesOf(job(area));
  expect(issues.length).toBeGreaterThan(0);
  expect(issues.filter((issue) => !isUnfinished(issue))).toEqual([]);
  expect(unfinishedRooms(issues)).toEqual([0]);
});

test('a length in kilograms is a mistake', () => {
  const issues = issuesOf(
    job({
      outline: [
        ['0 ft', '0 ft'],
        ['4 ft', '5 kg'],
        ['4 ft', '4 ft'],
      ],
    }),
  );
  expect(issues.some((issue) => !isUnfinished(issue))).toBe(true);
});
