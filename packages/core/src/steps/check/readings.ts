import type { Job, MoistureTest } from '../../job.ts';
import { daysBetween, epochOf, type Instant, isInstant } from '../../kernel/instant.ts';
import type { Issue } from '../../kernel/issue.ts';
import { hasValue } from '../survey/moisture-rules.ts';
import type { Path } from './ids.ts';

/** Fields that hold the number of a method; joined ones belong together. */
const NEEDS: Readonly<Record<MoistureTest['method'], readonly string[]>> = {
  'ASTM F2170': ['humidity'],
  'BS 8203 hood': ['humidity'],
  'ASTM F1869': ['emission', 'massGain + dishArea + wait'],
  carbide: ['content'],
  'ASTM D4263': ['sheet'],
  meter: ['humidity', 'content'],
};

/** Readings without the number they were made for. */
export function valueIssues(job: Job): readonly Issue[] {
  const tests = (job.survey.moisture?.tests ?? []).flatMap((test, i): readonly Issue[] => {
    if (hasValue(test)) return [];
    const path = ['survey', 'moisture', 'tests', i];
    const names = { method: test.method };
    return [{ code: 'moisture-without-a-value', path, value: test.id, limits: NEEDS[test.method], names }];
  });
  const pulls = (job.survey.pullOffs ?? []).flatMap((pull, i): readonly Issue[] =>
    pull.stress || (pull.force && pull.dolly)
      ? []
      : [{ code: 'pull-off-without-a-value', path: ['survey', 'pullOffs', i], value: pull.id }],
  );
  const cuts = (job.survey.onFloor ?? []).flatMap((cover, i): readonly Issue[] => {
    const { tried, failed } = cover.crossCuts ?? { tried: 0, failed: 0 };
    if (failed <= tried) return [];
    const path = ['survey', 'onFloor', i, 'crossCuts', 'failed'];
    return [{ code: 'check-more-failed-than-tried', path, value: `${failed}`, limits: ['0', `${tried}`] }];
  });
  return [...tests, ...pulls, ...cuts];
}

/** A reading cannot have been taken later than now. A plan for later days belongs to the weather and the starts. */
const later = (when: string, now: Instant): boolean =>
  isInstant(when) ? epochOf(when) > epochOf(now) : daysBetween(now, when) > 0;

/** Dates of readings that lie ahead of now, and years that have not come. */
export function dateIssues(job: Job, now: Instant): readonly Issue[] {
  const { survey } = job;
  const dated: (readonly [Path, string | undefined])[] = [
    [['survey', 'on'], survey.on],
    [['survey', 'slab', 'cast'], survey.slab?.cast],
    [['survey', 'moisture', 'wetSince'], survey.moisture?.wetSince],
    [['survey', 'afterPreparation', 'on'], survey.afterPreparation?.on],
    [['survey', 'testPatch', 'on'], survey.testPatch?.on],
    ...(survey.moisture?.tests ?? []).map(({ on }, i) => [['survey', 'moisture', 'tests', i, 'on'], on] as const),
    ...(survey.pullOffs ?? []).map(({ on }, i) => [['survey', 'pullOffs', i, 'on'], on] as const),
    ...(survey.openTimeTests ?? []).map(({ on }, i) => [['survey', 'openTimeTests', i, 'on'], on] as const),
    ...(survey.removalPatches ?? []).map(({ on }, i) => [['survey', 'removalPatches', i, 'on'], on] as const),
    ...(job.overrides ?? []).map(({ on }, i) => [['overrides', i, 'on'], on] as const),
    ...job.areas.flatMap((area, a) =>
      (area.cracks ?? []).flatMap((crack, c) =>
        crack.widths.map(({ on }, w) => [['areas', a, 'cracks', c, 'widths', w, 'on'], on] as const),
      ),
    ),
  ];
  const today = now.slice(0, 10);
  const dates = dated.flatMap(([path, value]): readonly Issue[] =>
    value !== undefined && later(value, now) ? [{ code: 'check-date-ahead', path, value, limits: ['', today] }] : [],
  );
  const thisYear = Number(now.slice(0, 4));
  const years = [
    [['survey', 'building', 'year'] as Path, survey.building?.year] as const,
    ...(survey.onFloor ?? []).map(({ since }, i) => [['survey', 'onFloor', i, 'since'] as Path, since] as const),
  ].flatMap(([path, year]): readonly Issue[] =>
    year !== undefined && year > thisYear
      ? [{ code: 'check-date-ahead', path, value: `${year}`, limits: ['', `${thisYear}`] }]
      : [],
  );
  return [...dates, ...years];
}
