import { expect, test } from 'vitest';
import { bandOf } from '../../kernel/band.ts';
import { jobOf, surveyOf } from '../testing/small-job.ts';

test('net area, edge without the door and all edges of a plain room (own arithmetic)', () => {
  const { plan, entries } = surveyOf(jobOf());
  const [room] = plan.areas;
  expect(room?.net.value).toBe(50);
  expect(room?.perimeter.value).toBe(30);
  expect(room?.edge.value).toBe(29);
  expect(plan.total.value).toBe(50);
  // Half a per cent of each length, twice in an area, one shared cause.
  expect(room?.net.causes?.tape).toBeCloseTo(0.5, 12);
  expect(room?.edge.causes?.tape).toBeCloseTo(0.15, 12);
  expect(room?.net.band).toEqual(bandOf(50, { tape: 0.5 }));
  expect(entries.get('survey.room.tape-error')).toMatchObject({ origin: 'assumed', value: 0.005 });
  expect(plan.notes.map(({ code }) => code)).toContain('survey-assumed-tape-error');
});

test('the tape is one cause: two rooms err together, so the sum of areas errs by the sum', () => {
  const { plan } = surveyOf(
    jobOf((job) => {
      const [room] = job.areas;
      if (room) job.areas.push({ ...room, id: 'other', name: 'Other' });
    }),
  );
  expect(plan.total.value).toBe(100);
  expect(plan.total.causes?.tape).toBeCloseTo(1, 9);
});

test('columns are holes: out of the floor, into the edge; outlines run counter-clockwise', () => {
  const { plan } = surveyOf(
    jobOf((job) => {
      const [room] = job.areas;
      if (!room?.outline) throw new Error('no outline');
      room.outline.reverse();
      room.holes = [
        {
          id: 'column',
          outline: [
            ['2 m', '2 m'],
            ['2.4 m', '2 m'],
            ['2.4 m', '2.4 m'],
            ['2 m', '2.4 m'],
          ],
        },
      ];
    }),
  );
  const [room] = plan.areas;
  expect(room?.net.value).toBeCloseTo(49.84, 12);
  expect(room?.edge.value).toBeCloseTo(29 + 1.6, 12);
  const [a, b, c] = room?.outline ?? [];
  if (!a || !b || !c) throw new Error('no outline');
  expect((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])).toBeGreaterThan(0);
});

test('stem walls, coves and steps: face, length and fill', () => {
  const { plan } = surveyOf(
    jobOf((job) => {
      const [room] = job.areas;
      if (!room) throw new Error('no room');
      room.stemWalls = [{ id: 'stem', length: '10 m', height: '150 mm' }];
      // Fill 4.459 gal and face 26.18 ft² of 1 in radius over 200 ft of cove: worked by hand in the shape laws.
      room.coves = [{ id: 'cove', length: '200 ft', radius: '1 in' }];
      room.steps = [{ id: 'flight', risers: 3, riser: '180 mm', tread: '300 mm', width: '1 m' }];
    }),
  );
  const [stem, cove, flight] = plan.areas[0]?.verticals ?? [];
  expect(stem?.face.value).toBeCloseTo(1.5, 12);
  expect(cove?.face.value).toBeCloseTo(26.18 * 0.09290304, 3);
  expect(flight?.length.value).toBe(3);
  expect(flight?.face.value).toBeCloseTo(3 * 0.18 + 2 * 0.3, 12);
  expect(flight?.fill).toBeUndefined();
});

test('a taped room carries the deviation of its area as the cause tape, and a bad reading is named', () => {
  const tape = (last: string) => ({
    corners: ['a', 'b', 'c', 'd'],
    measures: [
      { from: 'a', to: 'b', length: '4 m' },
      { from: 'b', to: 'c', length: '3 m' },
      { from: 'c', to: 'd', length: '4 m' },
      { from: 'd', to: 'a', length: '3 m' },
      { from: 'a', to: 'c', length: '5 m' },
      { from: 'b', to: 'd', length: last },
    ],
    error: '5 mm',
  });
  const judged = (last: string) =>
    surveyOf(
      jobOf((job) => {
        job.areas = [{ id: 'room', name: 'Room', tape: tape(last) }];
      }),
    );
  const good = judged('5 m');
  expect(good.plan.areas[0]?.net.value).toBeCloseTo(12, 9);
  const taped = good.plan.areas[0]?.net.causes?.tape ?? 0;
  expect(taped).toBeGreaterThan(0.005);
  expect(taped).toBeLessThan(0.05);
  expect(good.codes).not.toContain('survey-tape-disagrees');
  const bad = judged('5.2 m');
  expect(bad.codes.some((code) => code === 'survey-tape-disagrees' || code === 'survey-tape-suspect')).toBe(true);
});

test('sides alone do not fix a room: it is not measured, and the diagonal to tape is named', () => {
  const { plan } = surveyOf(
    jobOf((job) => {
      const [room] = job.areas;
      if (!room) throw new Error('no room');
      const sides = [
        ['a', 'b'],
        ['b', 'c'],
        ['c', 'd'],
        ['d', 'a'],
      ] as const;
      job.areas.push({
        id: 'loose',
        name: 'Loose',
        tape: { corners: ['a', 'b', 'c', 'd'], measures: sides.map(([from, to]) => ({ from, to, length: '4 m' })) },
      });
    }),
  );
  expect(plan.areas.map(({ id }) => id)).toEqual(['room']);
  const reason = plan.verdict.reasons.find(({ code }) => code === 'survey-tape-loose');
  expect(reason?.verdict).toBe('not known');
  expect(reason?.lift?.names?.diagonals).toBe('a–c');
});

test('an area that cannot be measured is named and left out; the others go on', () => {
  const { plan } = surveyOf(
    jobOf((job) => {
      job.areas.push({ id: 'nothing', name: 'Nothing' });
      job.areas.push({
        id: 'bow',
        name: 'Bow',
        outline: [
          ['0 m', '0 m'],
          ['4 m', '4 m'],
          ['4 m', '0 m'],
          ['0 m', '4 m'],
        ],
      });
    }),
  );
  expect(plan.areas.map(({ id }) => id)).toEqual(['room']);
  expect(plan.verdict.word).toBe('not known');
  expect(
    plan.verdict.reasons
      .filter(({ code }) => code === 'survey-area-not-measured')
      .map(({ names }) => [names?.area, names?.why]),
  ).toEqual([
    ['Nothing', '@survey-why-no-drawing'],
    ['Bow', '@survey-why-outline-crosses-itself'],
  ]);
});

// 0.05 mm between two readings is an assumption without a source.
test.each([
  [undefined, ['0.30 mm', '0.34 mm'], 'not known'],
  [undefined, ['0.30 mm', '0.36 mm'], 'yes'],
  [undefined, ['0.30 mm'], 'not known'],
  ['no', ['0.30 mm', '0.50 mm'], 'no'],
  ['yes', ['0.30 mm'], 'yes'],
  ['not known', ['0.30 mm', '0.50 mm'], 'yes'],
] as const)('a crack said to move: %s, read at %s', (said, widths, moves) => {
  const { plan } = surveyOf(
    jobOf((job) => {
      const [room] = job.areas;
      if (!room) throw new Error('no room');
      room.cracks = [
        {
          id: 'crack',
          along: [
            ['1 m', '1 m'],
            ['4 m', '5 m'],
          ],
          widths: widths.map((width) => ({ width, on: '2026-06-01' })),
          ...(said ? { moves: said } : {}),
        },
      ];
    }),
  );
  const crack = plan.areas[0]?.cracks[0];
  expect(crack?.moves).toBe(moves);
  expect(crack?.length.value).toBe(5);
  expect(crack?.width?.value).toBeCloseTo(Math.max(...widths.map((w) => Number.parseFloat(w))) / 1000, 12);
});
