import { expect, test } from 'vitest';
import { voice } from '../../words/index.ts';
import { catalogueOf, jobOf, NOW } from '../testing/small-job.ts';
import { checkJob, WARNINGS } from './job.ts';

type Draft = Parameters<NonNullable<Parameters<typeof jobOf>[0]>>[0];
type Pt = [string, string];
type Side = { area: string; from: Pt; to: Pt };

/** The room of 10 m × 5 m and a store of 4 m × 5 m behind its right wall. */
const joined =
  (change: (door: { one: Side; other: Side }, job: Draft) => void = () => {}) =>
  (job: Draft): void => {
    const corners: Pt[] = [
      ['0 m', '0 m'],
      ['4 m', '0 m'],
      ['4 m', '5 m'],
      ['0 m', '5 m'],
    ];
    job.areas.push({ id: 'store', name: 'Store', outline: corners });
    const one: Side = { area: 'room', from: ['10 m', '1 m'], to: ['10 m', '2 m'] };
    const other: Side = { area: 'store', from: ['0 m', '3 m'], to: ['0 m', '4 m'] };
    change({ one, other }, job);
    job.doors = [{ id: 'gap', name: 'wide door', sides: [one, other] }, ...(job.doors ?? [])];
  };
const issues = (change: (job: Draft) => void) => checkJob(jobOf(change), catalogueOf(), NOW);

test('a sound door, and two floors no door joins, have no issue', () => {
  expect(issues(joined())).toEqual([]);
  expect(
    issues((job) => {
      joined()(job);
      delete job.doors;
    }),
  ).toEqual([]);
});

test.each([
  [
    'an unknown area, with the nearest',
    ({ other }: { other: Side }) => {
      other.area = 'stoer';
    },
    'check-area-unknown',
    'store',
  ],
  [
    'off the wall',
    ({ one }: { one: Side }) => {
      one.from = ['9.9 m', '1 m'];
    },
    'check-door-off-the-wall',
    'wide door',
  ],
  [
    'round a corner',
    ({ one }: { one: Side }) => {
      one.to = ['9.5 m', '0 m'];
    },
    'check-door-off-the-wall',
    'Room',
  ],
  [
    'two widths',
    ({ other }: { other: Side }) => {
      other.to = ['0 m', '4.06 m'];
    },
    'check-door-widths',
    '1.06',
  ],
  [
    'too narrow',
    ({ one }: { one: Side }) => {
      one.to = ['10 m', '1.4 m'];
    },
    'check-door-narrow',
    '0.4',
  ],
  [
    'into its own room',
    ({ other }: { other: Side }) => {
      other.area = 'room';
    },
    'check-door-to-itself',
    'Room',
  ],
] as const)('%s', (_, change, code, says) => {
  const [issue, ...rest] = issues(joined(change as never));
  expect(rest).toEqual([]);
  expect(issue?.code).toBe(code);
  expect(issue && JSON.stringify(issue)).toContain(says);
});

test('5 cm of difference is the tape, 6 cm is not', () => {
  const wide = (to: string) =>
    issues(
      joined(({ other }) => {
        other.to = ['0 m', to];
      }),
    ).map(({ code }) => code);
  expect(wide('4.05 m')).toEqual([]);
  expect(wide('4.06 m')).toEqual(['check-door-widths']);
});

test('rooms on top of each other are refused; a second door that misses only warns', () => {
  const found = issues(
    joined((_, job) => {
      job.doors = [
        {
          id: 'second',
          sides: [
            { area: 'room', from: ['10 m', '3.5 m'], to: ['10 m', '4.5 m'] },
            { area: 'store', from: ['0 m', '0.2 m'], to: ['0 m', '1.2 m'] },
          ],
        },
      ];
    }),
  );
  expect(found.map(({ code }) => code)).toEqual(['check-doors-disagree']);
  expect(WARNINGS.has('check-doors-disagree')).toBe(true);
  const over = issues(
    joined((_, job) => {
      job.areas.push({
        id: 'den',
        name: 'Den',
        outline: [
          ['0 m', '0 m'],
          ['4 m', '0 m'],
          ['4 m', '5 m'],
          ['0 m', '5 m'],
        ],
      });
      job.doors = [
        {
          id: 'den-door',
          sides: [
            { area: 'room', from: ['10 m', '2.5 m'], to: ['10 m', '3.5 m'] },
            { area: 'den', from: ['0 m', '2 m'], to: ['0 m', '3 m'] },
          ],
        },
      ];
    }),
  );
  expect(over.map(({ code }) => code)).toEqual(['check-rooms-overlap']);
});

test('two doors over each other in one wall are named', () => {
  const found = issues(
    joined((_, job) => {
      job.doors = [
        {
          id: 'over',
          name: 'second door',
          sides: [
            { area: 'room', from: ['10 m', '1.5 m'], to: ['10 m', '2.5 m'] },
            { area: 'store', from: ['0 m', '3.5 m'], to: ['0 m', '4.5 m'] },
          ],
        },
      ];
    }),
  );
  expect(found.map(({ code, value }) => `${code} ${value}`)).toEqual(['check-doors-overlap second door']);
});

test('every issue of a door has its words', () => {
  const found = issues(
    joined(({ other }) => {
      other.to = ['0 m', '4.06 m'];
    }),
  );
  const { sayIssue } = voice('en', { locale: 'en-US', units: 'metric' }, {});
  for (const issue of found) expect(sayIssue(issue)).toContain('Measure it again');
});
