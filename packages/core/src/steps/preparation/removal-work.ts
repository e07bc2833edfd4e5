import type { Cover, Job } from '../../job.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact } from '../context.ts';
import type { AreaMeasure } from '../results.ts';

/** Work that takes a cover off. Tile and levelling coats are another trade than a film: they have rates of their own. */
const WORK: Readonly<Record<Cover['what'], string | undefined>> = {
  'bare concrete': undefined,
  paint: 'remove-film',
  'old coating': 'remove-film',
  sealer: 'remove-film',
  'curing compound': 'remove-film',
  tile: 'remove-tile',
  'black adhesive': 'remove-film',
  'yellow adhesive': 'remove-film',
  'levelling coat': 'remove-levelling',
  'not known': undefined,
};

export interface Removal {
  readonly work: string;
  /** The rate it is timed by: its own, or the method chosen to take a film off. */
  readonly by: string;
  readonly area: Known<'m²'>;
  /** True when it covers the whole area. */
  readonly whole: boolean;
}

/** A film that another method than grinding takes off is timed by that method. */
export const workOf = (work: string, method: string | undefined): string =>
  work === 'remove-film' && method !== undefined && method !== 'grind' ? method : work;

const liesOn = (cover: Cover, area: string): boolean => cover.areas === undefined || cover.areas.includes(area);

/** True when something lies on this area that is to come off. */
export const hasRemoval = (job: Job, area: string): boolean =>
  (job.survey.onFloor ?? []).some((cover) => WORK[cover.what] !== undefined && liesOn(cover, area));

/**
 * What is to be taken off one area, by kind of work. A stated extent holds where the cover lies in this area alone;
 * an extent over several areas names no place, so each counts whole. Covers in layers share one film pass: the largest.
 */
export function removalsOf(job: Job, trace: Trace, area: AreaMeasure, method?: string): readonly Removal[] {
  const found = new Map<string, Removal>();
  for (const cover of job.survey.onFloor ?? []) {
    const work = WORK[cover.what];
    if (!work || !liesOn(cover, area.id)) continue;
    const alone = job.areas.filter(({ id }) => liesOn(cover, id)).length === 1;
    const stated = alone && cover.extent && cover.extent.value < area.net.value ? cover.extent : undefined;
    const before = found.get(work);
    const size = stated?.value ?? area.net.value;
    if (before && before.area.value >= size) continue;
    const extent = stated ? givenFact(trace.within(`cover.${cover.id}`), `${area.id}.extent`, stated) : area.net;
    found.set(work, { work, by: workOf(work, method), area: extent, whole: stated === undefined });
  }
  return [...found.values()];
}
