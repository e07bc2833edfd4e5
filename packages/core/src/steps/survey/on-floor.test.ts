import { describe, expect, test } from 'vitest';
import type { COVERS } from '../../job.ts';
import { jobOf, surveyOf } from '../testing/small-job.ts';

type What = (typeof COVERS)[number];
type Tested = 'none found' | 'found' | 'not tested';

const looked = (what: What, facts: { year?: number; since?: number; asbestos?: Tested; lead?: Tested }) =>
  surveyOf(
    jobOf((job) => {
      const { year, ...cover } = facts;
      job.survey.onFloor = [{ id: 'cover', what, ...cover }];
      if (!job.survey.building) throw new Error('no building');
      if (year === undefined) delete job.survey.building.year;
      else job.survey.building.year = year;
    }),
  );

describe('what lies on the floor', () => {
  test.each([
    ['bare concrete', { year: 1950 }, 'nothing to remove', []],
    ['sealer', { year: 1950 }, 'may be planned', []],
    ['curing compound', { year: 2020 }, 'may be planned', []],
    ['not known', { year: 2020 }, 'held', ['survey-cover-not-known']],
    // Years from memory, the later of several bans: both sides of each.
    ['tile', { year: 1999 }, 'held', ['survey-hazard-not-tested']],
    ['tile', { year: 2000 }, 'may be planned', []],
    ['black adhesive', { year: 1999 }, 'held', ['survey-hazard-not-tested']],
    ['yellow adhesive', { year: 1999 }, 'held', ['survey-hazard-not-tested']],
    ['levelling coat', { year: 1999 }, 'held', ['survey-hazard-not-tested']],
    ['paint', { year: 1992 }, 'held', ['survey-hazard-not-tested']],
    ['paint', { year: 1993 }, 'may be planned', []],
    ['old coating', { year: 1992 }, 'held', ['survey-hazard-not-tested']],
    // The year of the cover goes before the year of the building; neither known is old.
    ['tile', { year: 1950, since: 2010 }, 'may be planned', []],
    ['tile', { year: 2010, since: 1985 }, 'held', ['survey-hazard-not-tested']],
    ['tile', {}, 'held', ['survey-hazard-not-tested']],
    // A test answers; what it does not name stays open.
    ['tile', { year: 1970, asbestos: 'none found' }, 'may be planned', []],
    ['tile', { year: 1970, lead: 'none found' }, 'held', ['survey-hazard-not-tested']],
    ['tile', { year: 1970, asbestos: 'not tested' }, 'held', ['survey-hazard-not-tested']],
    ['tile', { year: 2020, asbestos: 'found' }, 'held', ['survey-hazard-found']],
    ['paint', { year: 1970, lead: 'found' }, 'held', ['survey-hazard-found']],
  ] as const)('%s %j', (what, facts, removal, expected) => {
    const { plan, codes } = looked(what, facts);
    expect(plan.removal).toBe(removal);
    expect(codes).toEqual(expected);
    expect(plan.verdict.word).toBe(
      expected.length === 0 ? 'go' : expected[0] === 'survey-hazard-found' ? 'stop' : 'not known',
    );
  });

  test('nothing said is not bare, and neither is an area no cover names', () => {
    const silent = surveyOf(
      jobOf((job) => {
        delete job.survey.onFloor;
      }),
    );
    expect(silent.plan.removal).toBe('held');
    expect(silent.codes).toEqual(['survey-floor-not-described']);
    const half = surveyOf(
      jobOf((job) => {
        const [room] = job.areas;
        if (room) job.areas.push({ ...room, id: 'other', name: 'Other room' });
        job.survey.onFloor = [{ id: 'bare', what: 'bare concrete', areas: ['room'] }];
      }),
    );
    expect(half.plan.removal).toBe('held');
    expect(half.plan.missing).toContainEqual(expect.objectContaining({ path: 'survey.onFloor', meanwhile: 'held' }));
    const reason = half.plan.verdict.reasons.find(({ code }) => code === 'survey-floor-not-described');
    expect(reason?.names?.areas).toBe('Other room');
  });

  test('a film that fails a cross-cut is said to come off', () => {
    const said = (failed: number) =>
      surveyOf(
        jobOf((job) => {
          job.survey.onFloor = [{ id: 'film', what: 'old coating', since: 2010, crossCuts: { tried: 9, failed } }];
        }),
      ).plan.notes.map(({ code }) => code);
    expect(said(5)).toContain('survey-cross-cuts-failed');
    expect(said(0)).not.toContain('survey-cross-cuts-failed');
  });
});

describe('what runs in the slab', () => {
  const SERVICES = ['heatingPipes', 'tendons', 'cables', 'drains'] as const;
  const answered = (service: (typeof SERVICES)[number], answer: 'yes' | 'no' | 'not known' | undefined) =>
    surveyOf(
      jobOf((job) => {
        if (!job.survey.services) throw new Error('no services');
        if (answer === undefined) delete job.survey.services[service];
        else job.survey.services[service] = answer;
      }),
    );

  test('all answered no: cutting may be planned', () => {
    expect(surveyOf(jobOf()).plan.cutting).toBe('may be planned');
  });

  test.each(SERVICES)('%s not known or never asked: held, not known', (service) => {
    for (const answer of ['not known', undefined] as const) {
      const { plan, codes } = answered(service, answer);
      expect(plan.cutting).toBe('held');
      expect(codes).toEqual(['survey-service-not-known']);
      expect(plan.missing.map(({ path }) => path)).toContain(`survey.services.${service}`);
    }
  });

  test.each(['heatingPipes', 'tendons', 'cables'] as const)('%s there: held with a caution', (service) => {
    const { plan, codes } = answered(service, 'yes');
    expect(plan.cutting).toBe('held');
    expect(codes).toEqual(['survey-service-in-slab']);
    expect(plan.verdict.word).toBe('caution');
  });

  test('a drain is seen from above: care, nothing held', () => {
    const { plan, codes } = answered('drains', 'yes');
    expect(plan.cutting).toBe('may be planned');
    expect(codes).toEqual(['survey-drains-in-slab']);
  });
});
