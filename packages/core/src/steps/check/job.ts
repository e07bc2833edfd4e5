import type { Catalogue } from '../../catalogue.ts';
import type { Job } from '../../job.ts';
import type { Instant } from '../../kernel/instant.ts';
import type { Issue } from '../../kernel/issue.ts';
import { doorIssues } from './doors.ts';
import { needIssues } from './evidence.ts';
import { duplicates } from './ids.ts';
import { outlineIssues } from './outline-sense.ts';
import { dateIssues, valueIssues } from './readings.ts';
import { referenceIssues } from './references.ts';
import { tapeIssues } from './tape-sense.ts';

/** Issues that only warn: the drawing may still be planned with them. */
export const WARNINGS: ReadonlySet<string> = new Set([
  'exit-off-the-wall',
  'check-off-the-floor',
  'check-doors-disagree',
]);

function areaIssues(job: Job): readonly Issue[] {
  return job.areas.flatMap((area, i) => {
    const path = ['areas', i];
    const lists = ['holes', 'exits', 'joints', 'cracks', 'spots', 'points', 'stemWalls', 'coves', 'steps'] as const;
    return [
      ...lists.flatMap((list) => duplicates(area[list], [...path, list])),
      ...outlineIssues(area, path, job.reader.units),
      ...tapeIssues(area, path),
    ];
  });
}

function acceptedIssues(job: Job): readonly Issue[] {
  const accepted = job.options.flatMap(({ accepted: yes, id }, i) => (yes ? [{ id, i }] : []));
  return accepted.slice(1).map(({ id, i }) => ({
    code: 'check-two-accepted',
    path: ['options', i, 'accepted'],
    value: id,
    names: { first: accepted[0]?.id ?? '' },
  }));
}

/**
 * Sense of a job that its schema cannot see: sizes no room has, outlines that cross, ids that name nothing, readings
 * from the future. `now` is the clock of the caller; without it dates are not judged.
 */
export function checkJob(job: Job, catalogue: Catalogue, now?: Instant): Issue[] {
  const { survey } = job;
  return [
    ...duplicates(job.areas, ['areas']),
    ...areaIssues(job),
    ...duplicates(job.doors, ['doors']),
    ...doorIssues(job),
    ...duplicates(job.options, ['options']),
    ...duplicates(survey.onFloor, ['survey', 'onFloor']),
    ...duplicates(survey.moisture?.tests, ['survey', 'moisture', 'tests']),
    ...duplicates(survey.pullOffs, ['survey', 'pullOffs']),
    ...acceptedIssues(job),
    ...referenceIssues(job, catalogue),
    ...valueIssues(job),
    ...needIssues(job),
    ...(now === undefined ? [] : dateIssues(job, now)),
  ];
}
