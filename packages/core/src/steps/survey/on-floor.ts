import hazards from '../../data/hazard-covers.json' with { type: 'json' };
import type { Cover, Job } from '../../job.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Reason } from '../../kernel/verdict.ts';

export interface OnFloor {
  readonly removal: 'nothing to remove' | 'may be planned' | 'held';
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
  readonly notes: readonly Said[];
}

const SUBSTANCES = ['asbestos', 'lead'] as const;
type Substance = (typeof SUBSTANCES)[number];

export const coverKey = (what: Cover['what']): string =>
  what === 'not known' ? '@survey-cover-not-known-thing' : `@survey-cover-${what.replaceAll(' ', '-')}`;

/** What a cover of this age may hold until a test says otherwise. An unknown year counts as old. */
export function suspected(cover: Cover, buildingYear: number | undefined): readonly Substance[] {
  const row = hazards.covers.find(({ what }) => what === cover.what);
  if (!row) return [];
  const since = cover.since ?? buildingYear;
  const old = (before: number | undefined): boolean => before !== undefined && (since === undefined || since < before);
  return SUBSTANCES.filter((substance) => old(substance === 'asbestos' ? row.asbestosBefore : row.leadBefore));
}

function judge(cover: Cover, year: number | undefined): readonly Reason[] {
  const names = { cover: coverKey(cover.what) };
  if (cover.what === 'not known') {
    const lift = { code: 'survey-cover-not-known-lift' };
    return [{ verdict: 'not known', code: 'survey-cover-not-known', source: 'survey-common-practice', lift }];
  }
  return SUBSTANCES.flatMap((substance): readonly Reason[] => {
    const tested = cover[substance];
    const named = { ...names, substance: `@survey-substance-${substance}` };
    if (tested === 'found') {
      const lift = { code: 'survey-hazard-found-lift', names: named };
      return [{ verdict: 'stop', code: 'survey-hazard-found', names: named, source: 'survey-common-practice', lift }];
    }
    if (tested === 'none found') return [];
    if (!suspected(cover, year).includes(substance)) return [];
    const lift = { code: 'survey-hazard-not-tested-lift', names: named };
    return [{ verdict: 'not known', code: 'survey-hazard-not-tested', names: named, source: hazards.source, lift }];
  });
}

/** An old film that fails even one cross-cut holds no new one; it comes off whole. */
function crossCutsSaid({ what, crossCuts }: Cover): readonly Said[] {
  if (!crossCuts || crossCuts.failed === 0) return [];
  const names = { cover: coverKey(what), failed: `${crossCuts.failed}`, tried: `${crossCuts.tried}` };
  return [{ code: 'survey-cross-cuts-failed', names }];
}

/**
 * What lies on the floor and whether it may be ground off. Nothing said is not the same as bare: an old floor nobody
 * looked at holds every hour of removal back, and the sheet says who may test it.
 */
export function lookAtFloor(job: Job): OnFloor {
  const covers = job.survey.onFloor ?? [];
  const notes = covers.flatMap(crossCutsSaid);
  // A cover that names no area lies on all of them; an area nobody described is one nobody looked at.
  const described = (area: string): boolean => covers.some(({ areas }) => areas === undefined || areas.includes(area));
  const unseen = job.areas.filter(({ id }) => !described(id));
  if (unseen.length > 0) {
    const names = { areas: unseen.map(({ name }) => name).join(', ') };
    return {
      removal: 'held',
      reasons: [
        {
          verdict: 'not known',
          code: 'survey-floor-not-described',
          names,
          lift: { code: 'survey-cover-not-known-lift' },
        },
      ],
      missing: [
        {
          path: 'survey.onFloor',
          fact: { code: 'survey-missing-on-floor', names },
          changes: { code: 'survey-missing-on-floor-changes' },
          meanwhile: 'held',
        },
      ],
      notes,
    };
  }
  const year = job.survey.building?.year;
  const reasons = covers.flatMap((cover) => judge(cover, year));
  if (reasons.length > 0) return { removal: 'held', reasons, missing: [], notes };
  const something = covers.some(({ what }) => what !== 'bare concrete');
  return { removal: something ? 'may be planned' : 'nothing to remove', reasons, missing: [], notes };
}
