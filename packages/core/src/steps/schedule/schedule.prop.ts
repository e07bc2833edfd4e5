import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Task } from '../results.ts';
import { type Coated, coated, layingOf } from './coats.ts';
import { coatBlock, layout, type Segment } from './layout.ts';
import { isRolled } from './phases.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const START = Date.parse('2026-05-11T00:00:00Z');
/** Ten hours a day for sixty days. */
const hours = Array.from({ length: 60 }, (_, i) => ({
  from: START + i * DAY + 8 * HOUR,
  to: START + i * DAY + 18 * HOUR,
}));

const task = (id: string, work: string, seconds: number, after: readonly string[] = []): Task =>
  ({ id, work, after, time: { value: seconds } }) as unknown as Task;

const works = fc.constantFrom('set-up', 'grind', 'edge', 'vacuum', 'crack-fill');
/** Each task waits for some of those before it. */
const tasks = fc
  .array(fc.record({ work: works, minutes: fc.integer({ min: 2, max: 900 }), back: fc.integer({ min: 0, max: 3 }) }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((list) =>
    list.map(({ work, minutes, back }, i) =>
      task(`t${i}`, work, minutes * 60, back > 0 && i >= back ? [`t${i - back}`] : []),
    ),
  );
const people = fc.integer({ min: 1, max: 6 });

const inside = ({ from, to }: Segment): boolean => hours.some((one) => from >= one.from && to <= one.to);

function neverTwoAtOnce(segments: readonly Segment[]): void {
  for (const hand of new Set(segments.map((one) => one.hand))) {
    const sorted = segments.filter((one) => one.hand === hand).sort((a, b) => a.from - b.from);
    for (const [i, each] of sorted.entries()) expect(each.from).toBeGreaterThanOrEqual(sorted[i - 1]?.to ?? 0);
  }
}

describe('tasks laid out for a crew', () => {
  test('in working hours, one task a hand, after what it waits for, all the work done', () => {
    fc.assert(
      fc.property(tasks, people, (list, crew) => {
        const laid = layout(list, crew, hours, START);
        expect(laid.unfinished).toBe(false);
        neverTwoAtOnce(laid.segments);
        for (const segment of laid.segments) {
          expect(inside(segment)).toBe(true);
          expect(segment.hand).toBeLessThan(crew);
          for (const id of segment.task.after) {
            const before = laid.segments.filter((one) => one.task.id === id);
            for (const one of before) expect(segment.from).toBeGreaterThanOrEqual(one.to);
          }
        }
        for (const one of list) {
          const done = laid.segments.filter((s) => s.task.id === one.id).reduce((sum, s) => sum + s.to - s.from, 0);
          // Whole seconds, and nothing shorter than half a minute is told.
          expect(Math.abs(done / 1000 - one.time.value)).toBeLessThan(31 * crew + 60);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('more hands are never slower', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 2000 }), fc.integer({ min: 1, max: 5 }), (minutes, crew) => {
        const one = [task('a', 'vacuum', minutes * 60)];
        expect(layout(one, crew + 1, hours, START).end).toBeLessThanOrEqual(layout(one, crew, hours, START).end);
      }),
      { numRuns: 40 },
    );
  });
});

describe('coats in their windows', () => {
  const coatTasks = fc.record({
    roll: fc.integer({ min: 5, max: 200 }),
    squeegee: fc.integer({ min: 5, max: 200 }),
    mix: fc.integer({ min: 1, max: 100 }),
    scrape: fc.integer({ min: 0, max: 120 }),
  });

  test('a schedule never breaks a window it was given', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(coatTasks, fc.integer({ min: 0, max: 40 })), { minLength: 1, maxLength: 4 }),
        people,
        (list, crew) => {
          let at = START + 9 * HOUR;
          const coats: Coated[] = list.map(([work, quarters], i) => {
            const floor = [
              task(`r${i}`, 'back-roll', work.roll * 60),
              task(`s${i}`, 'squeegee', work.squeegee * 60),
              task(`m${i}`, 'mix', work.mix * 60),
            ];
            const start = at + quarters * 900_000;
            const laid = start + layingOf(floor, crew);
            const opens = laid + 2 * HOUR;
            at = opens + 20 * HOUR;
            const after = work.scrape > 0 ? [task(`x${i}`, 'scrape', work.scrape * 60)] : [];
            return { phase: { layer: `l${i}`, before: [], floor, walls: [], after }, start, laid, opens };
          });
          const done = coated(coats, { people: crew, hours }, START, [task('end', 'pack-and-hand-over', 1800)]);
          neverTwoAtOnce(done.segments);
          for (const [i, { phase, start, laid, opens }] of coats.entries()) {
            const floor = done.segments.filter(({ task: { id } }) => phase.floor.some((one) => one.id === id));
            if (floor.length === 0) {
              // A coat that has no place stops everything after it.
              expect(done.stuck).toBeDefined();
              continue;
            }
            for (const segment of floor) {
              expect(segment.from).toBeGreaterThanOrEqual(start as number);
              expect(segment.to).toBeLessThanOrEqual(laid as number);
            }
            const scraped = done.segments.filter(({ task: { id } }) => id === `x${i}`);
            for (const segment of scraped) expect(segment.from).toBeGreaterThanOrEqual(opens as number);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('the work of a coat fits its stretch exactly', () => {
    fc.assert(
      fc.property(coatTasks, people, (work, crew) => {
        const floor = [task('r', 'back-roll', work.roll * 60), task('s', 'squeegee', work.squeegee * 60)];
        const length = layingOf(floor, crew);
        const block = coatBlock(
          floor.filter(isRolled),
          floor.filter((t) => !isRolled(t)),
          crew,
          START,
          START + length,
        );
        neverTwoAtOnce(block);
        const done = block.reduce((sum, { from, to }) => sum + to - from, 0) / 1000;
        expect(done).toBeCloseTo((work.roll + work.squeegee) * 60, 6);
      }),
      { numRuns: 60 },
    );
  });
});
