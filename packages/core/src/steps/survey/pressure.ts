import type { Survey } from '../../job.ts';
import type { Reason } from '../../kernel/verdict.ts';

export interface Pressure {
  readonly answer: 'yes' | 'no' | 'not known';
  readonly reasons: readonly Reason[];
}

type Signs = NonNullable<NonNullable<Survey['moisture']>['signs']>;
const SIGNS = ['seepage', 'saltLine', 'oldFilmBlisters'] as const satisfies readonly (keyof Signs)[];

const SIGN_WORDS = {
  seepage: 'survey-sign-seepage',
  saltLine: 'survey-sign-salt-line',
  oldFilmBlisters: 'survey-sign-blisters',
} as const;

/**
 * Water pressed through the slab from below. No humidity test answers it: a wall that seeps in spring gives dry
 * readings in August. So its signs decide alone, whatever the probes say.
 */
export function pressureFromBelow(survey: Survey): Pressure {
  const signs = survey.moisture?.signs;
  const grade = survey.slab?.grade ?? 'not known';
  const seen = SIGNS.filter((sign) => signs?.[sign] === 'yes');
  if (seen.length > 0) {
    return {
      answer: 'yes',
      reasons: seen.map((sign) => ({
        verdict: 'stop',
        code: 'survey-pressure-from-below',
        names: { sign: `@${SIGN_WORDS[sign]}` },
        source: 'survey-common-practice',
        lift: { code: 'survey-pressure-from-below-lift' },
      })),
    };
  }
  // A slab with air under it has no ground water against it.
  if (grade === 'suspended') return { answer: 'no', reasons: [] };
  const open = SIGNS.filter((sign) => signs?.[sign] !== 'no');
  if (open.length > 0) {
    const reason: Reason = {
      verdict: 'not known',
      code: 'survey-signs-not-looked-for',
      source: 'survey-common-practice',
      lift: { code: 'survey-signs-not-looked-for-lift' },
    };
    return { answer: 'not known', reasons: [reason] };
  }
  if (grade === 'on ground') return { answer: 'no', reasons: [] };
  const below = grade === 'below grade';
  if (below && survey.slab?.membrane === 'yes') {
    return { answer: 'not known', reasons: [{ verdict: 'caution', code: 'survey-below-grade-with-membrane' }] };
  }
  const reason: Reason = {
    verdict: 'not known',
    code: below ? 'survey-below-grade' : 'survey-grade-not-known',
    source: 'survey-common-practice',
    lift: { code: below ? 'survey-below-grade-lift' : 'survey-grade-not-known-lift' },
  };
  return { answer: 'not known', reasons: [reason] };
}
