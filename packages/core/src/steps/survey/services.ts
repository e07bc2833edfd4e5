import type { Survey } from '../../job.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Reason } from '../../kernel/verdict.ts';

export interface Services {
  readonly cutting: 'may be planned' | 'held';
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
}

const HIDDEN = ['heatingPipes', 'tendons', 'cables'] as const;
const ALL = [...HIDDEN, 'drains'] as const;
type Service = (typeof ALL)[number];

const KEYS: Readonly<Record<Service, string>> = {
  heatingPipes: '@survey-service-heating-pipes',
  tendons: '@survey-service-tendons',
  cables: '@survey-service-cables',
  drains: '@survey-service-drains',
};

/**
 * What runs in the slab. Drilling, chasing and sawing wait until each kind is answered; where one is there, until its
 * runs are found and marked. A drain is seen from above, so it only asks for care.
 */
export function lookInSlab(survey: Survey): Services {
  const answers = survey.services;
  const open = ALL.filter((service) => answers?.[service] === undefined || answers[service] === 'not known');
  const there = HIDDEN.filter((service) => answers?.[service] === 'yes');
  const reasons: Reason[] = there.map((service) => ({
    verdict: 'caution',
    code: 'survey-service-in-slab',
    names: { service: KEYS[service] },
    lift: { code: 'survey-service-in-slab-lift' },
  }));
  if (answers?.drains === 'yes') reasons.push({ verdict: 'caution', code: 'survey-drains-in-slab' });
  reasons.push(
    ...open.map(
      (service): Reason => ({
        verdict: 'not known',
        code: 'survey-service-not-known',
        names: { service: KEYS[service] },
        lift: { code: 'survey-service-not-known-lift' },
      }),
    ),
  );
  const missing = open.map(
    (service): Missing => ({
      path: `survey.services.${service}`,
      fact: { code: 'survey-missing-service', names: { service: KEYS[service] } },
      changes: { code: 'survey-missing-service-changes' },
      meanwhile: 'held',
    }),
  );
  return { cutting: open.length > 0 || there.length > 0 ? 'held' : 'may be planned', reasons, missing };
}
