import { describe, expect, test } from 'vitest';
import { jobOf, prepare } from '../testing/small-job.ts';

describe('profile depth', () => {
  test('measured as typed; else the assumed depth of the class read, else of the target, with its band', () => {
    const measured = prepare(
      jobOf((job) => {
        if (job.areas[0]) job.areas[0].profileDepth = { value: '0.10 mm', low: '0.08 mm', high: '0.14 mm' };
      }),
    );
    expect(measured.plan.profileDepth.room).toMatchObject({ value: 0.0001, origin: 'reading' });
    const assumed = prepare(jobOf());
    const depth = assumed.plan.profileDepth.room;
    expect(depth?.band?.map((end) => Math.round(end * 1e6))).toEqual([80, 150]);
    expect(depth).toMatchObject({ origin: 'assumed', says: 'preparation-assumed-void-depth' });
    expect(depth?.causes?.profile).toBeGreaterThan(0);
  });

  test('above class 6 nothing is assumed: held', () => {
    const rough = (profile: number) =>
      prepare(
        jobOf((job) => {
          if (job.survey.afterPreparation) job.survey.afterPreparation.profiles = [{ where: 'a', profile }];
        }),
      ).plan;
    expect(rough(6).profileDepth.room).toBeDefined();
    expect(rough(7).profileDepth.room).toBeUndefined();
    expect(rough(7).missing).toContainEqual(
      expect.objectContaining({ path: 'areas[0].profileDepth', meanwhile: 'held' }),
    );
  });
});
