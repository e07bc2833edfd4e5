import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalText } from '../../kernel/canonical.ts';
import { jobOf, prepare, surveyOf } from '../testing/small-job.ts';

/** Laws any survey keeps. Runs are few: each plans a job. */
const RUNS = { numRuns: 30 };

const side = fc.integer({ min: 20, max: 400 }).map((tenths) => tenths / 10);
const metres = (value: number): string => `${value} m`;

type Draft = Parameters<NonNullable<Parameters<typeof jobOf>[0]>>[0];
const shaped =
  (width: number, depth: number, turn = 0, scale = 1) =>
  (job: Draft): void => {
    const [room] = job.areas;
    if (!room) throw new Error('no room');
    const corners: [string, string][] = [
      [metres(0), metres(0)],
      [metres(width * scale), metres(0)],
      [metres(width * scale), metres(depth * scale)],
      [metres(0), metres(depth * scale)],
    ];
    room.outline = [...corners.slice(turn), ...corners.slice(0, turn)];
    delete room.exits;
  };

test('where the drawing begins changes nothing; twice the lengths is four times the floor', () => {
  fc.assert(
    fc.property(side, side, fc.integer({ min: 0, max: 3 }), (width, depth, turn) => {
      const area = surveyOf(jobOf(shaped(width, depth))).plan.total;
      const turned = surveyOf(jobOf(shaped(width, depth, turn))).plan.total;
      const doubled = surveyOf(jobOf(shaped(width, depth, 0, 2))).plan.total;
      expect(turned.value).toBeCloseTo(area.value, 9);
      expect(doubled.value / area.value).toBeCloseTo(4, 9);
      expect((doubled.causes?.tape ?? 0) / (area.causes?.tape ?? 1)).toBeCloseTo(4, 9);
    }),
    RUNS,
  );
});

test('the order of areas does not change totals', () => {
  fc.assert(
    fc.property(side, side, (width, depth) => {
      const two = (job: Draft): void => {
        shaped(width, depth)(job);
        const [room] = job.areas;
        if (room) job.areas.push({ ...room, id: 'other', name: 'Other', outline: [...(room.outline ?? [])] });
        const [other] = job.areas.slice(1);
        if (other?.outline?.[1] && other.outline[2]) {
          other.outline[1] = [metres(7), metres(0)];
          other.outline[2] = [metres(7), metres(depth)];
        }
      };
      const forward = surveyOf(jobOf(two)).plan.total;
      const backward = surveyOf(
        jobOf((job) => {
          two(job);
          job.areas.reverse();
        }),
      ).plan.total;
      expect(backward.value).toBeCloseTo(forward.value, 9);
    }),
    RUNS,
  );
});

test('one more reading never lowers the highest, and the mean never enters', () => {
  const percent = fc.integer({ min: 40, max: 99 });
  fc.assert(
    fc.property(fc.array(percent, { minLength: 1, maxLength: 6 }), percent, (readings, more) => {
      const highest = (values: readonly number[]): number | undefined =>
        surveyOf(
          jobOf((job) => {
            const template = job.survey.moisture?.tests?.[0];
            if (!template || !job.survey.moisture) throw new Error('no test');
            job.survey.moisture.tests = values.map((humidity, i) => ({
              ...template,
              id: `t${i}`,
              humidity: `${humidity} %`,
            }));
          }),
        ).plan.moisture.highest[0]?.value.value;
      expect(highest(readings)).toBeCloseTo(Math.max(...readings) / 100, 12);
      expect(highest([...readings, more])).toBeCloseTo(Math.max(...readings, more) / 100, 12);
    }),
    RUNS,
  );
});

const seen = fc.constantFrom('yes', 'no', 'not known', undefined);
const facts = fc.record({
  saltLine: seen,
  seepage: seen,
  tendons: seen,
  cables: seen,
  grade: fc.constantFrom('on ground', 'below grade', 'suspended', 'not known', undefined),
  cover: fc.constantFrom('bare concrete', 'tile', 'paint', 'not known', 'sealer', undefined),
  year: fc.option(fc.integer({ min: 1900, max: 2026 }), { nil: undefined }),
  tape: fc.constantFrom('clean', 'dusty', undefined),
  profile: fc.option(fc.integer({ min: 1, max: 10 }), { nil: undefined }),
  slabRead: fc.boolean(),
});

const without = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as T;

test('whatever was found, a plan comes out: no number is not finite, nothing negative, the same twice', () => {
  fc.assert(
    fc.property(facts, ({ saltLine, seepage, tendons, cables, grade, cover, year, tape, profile, slabRead }) => {
      const job = jobOf((draft) => {
        const { survey } = draft;
        survey.building = without({ ...survey.building, year }) as NonNullable<typeof survey.building>;
        survey.services = without({ tendons, cables }) as NonNullable<typeof survey.services>;
        survey.slab = without({ ...survey.slab, grade }) as NonNullable<typeof survey.slab>;
        if (survey.moisture) {
          survey.moisture.signs = without({ saltLine, seepage }) as NonNullable<typeof survey.moisture.signs>;
        }
        if (!slabRead) delete survey.climate;
        survey.onFloor = cover ? [{ id: 'cover', what: cover }] : [];
        survey.afterPreparation = {
          ...(tape ? { dustTape: tape } : {}),
          ...(profile ? { profiles: [{ where: 'a', profile }] } : {}),
        };
      });
      const first = prepare(job);
      for (const entry of first.entries.values()) {
        const values = entry.kind === 'list' || entry.kind === 'series' ? entry.values : [entry.value];
        for (const value of values) expect(Number.isFinite(value), entry.id).toBe(true);
      }
      for (const { time } of first.plan.tasks) expect(time.value).toBeGreaterThanOrEqual(0);
      // A fact that may never be assumed keeps the verdict from more than "not known".
      const open = first.surveyed.missing.some(({ meanwhile }) => meanwhile === 'held');
      if (open) expect(['stop', 'not known']).toContain(first.surveyed.verdict.word);
      if (saltLine === 'yes' || seepage === 'yes') expect(first.surveyed.verdict.word).toBe('stop');
      if (first.surveyed.removal === 'held') {
        expect(first.plan.tasks.some(({ work }) => /grind|edge|remove|second/.test(work))).toBe(false);
      }
      if (first.surveyed.cutting === 'held') {
        expect(first.plan.tasks.some(({ work }) => work === 'crack-fill' || work === 'joint-fill')).toBe(false);
      }
      const again = prepare(job);
      expect(canonicalText({ e: [...again.entries], p: again.plan })).toBe(
        canonicalText({ e: [...first.entries], p: first.plan }),
      );
    }),
    { numRuns: 60 },
  );
});

test('twice the floor takes twice the hours of grinding; a quicker rate never takes longer', () => {
  fc.assert(
    fc.property(side, side, (width, depth) => {
      const hours = (scaleWidth: number): number =>
        prepare(jobOf(shaped(width * scaleWidth, depth))).hours('grind') ?? Number.NaN;
      expect(hours(2) / hours(1)).toBeCloseTo(2, 9);
    }),
    RUNS,
  );
});
