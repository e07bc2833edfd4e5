import {
  catalogueFrom,
  checkCatalogue,
  checkJob,
  type Issue,
  isInstant,
  jobFrom,
  type Plan,
  plan,
  priceBookFrom,
  type Result,
  WARNINGS,
  weatherFrom,
} from '@slabwright/core';
import { Refused } from './trouble.ts';

/** Files a job is planned from, as they were sent or stored. */
export interface PlanFiles {
  readonly job: unknown;
  readonly catalogue: unknown;
  readonly priceBook?: unknown;
  readonly weather?: unknown;
  readonly now: string;
  readonly seed?: number;
  readonly spread?: 'none' | 'quick';
}

export interface PlanMade {
  readonly plan: Plan;
  /** What looks odd but stops nothing. */
  readonly warnings: readonly Issue[];
}

const within = (field: string, issues: readonly Issue[]): Issue[] =>
  issues.map((issue) => ({ ...issue, path: [field, ...issue.path] }));

/** A file that does not read well is the caller's to put right: every issue names the file and the place in it. */
function read<T>(field: string, result: Result<T>): T {
  if (!result.ok) throw new Refused(422, within(field, result.issues));
  return result.value;
}

/** Reads and checks all files, then plans. @throws Refused with every issue found in the first file that has any. */
export function planFiles({ now, seed, spread, ...files }: PlanFiles): PlanMade {
  if (!isInstant(now)) {
    throw new Refused(422, [{ code: 'instant-malformed', path: ['now'], value: now }]);
  }
  const job = read('job', jobFrom(files.job));
  const catalogue = read('catalogue', catalogueFrom(files.catalogue));
  const odd = checkCatalogue(catalogue);
  if (odd.length > 0) throw new Refused(422, within('catalogue', odd));
  const priceBook = files.priceBook === undefined ? undefined : read('priceBook', priceBookFrom(files.priceBook));
  const weather = files.weather === undefined ? undefined : read('weather', weatherFrom(files.weather));
  const found = checkJob(job, catalogue, now);
  const wrong = found.filter(({ code }) => !WARNINGS.has(code));
  if (wrong.length > 0) throw new Refused(422, within('job', wrong));
  const warnings = within(
    'job',
    found.filter(({ code }) => WARNINGS.has(code)),
  );
  const input = {
    job,
    catalogue,
    now,
    ...(priceBook ? { priceBook } : {}),
    ...(weather ? { weather } : {}),
    ...(seed === undefined ? {} : { seed }),
    ...(spread === undefined ? {} : { spread }),
  };
  return { plan: plan(input), warnings };
}
