import type { Catalogue } from '../catalogue.ts';
import type { Job } from '../job.ts';
import { checkMark } from '../kernel/canonical.ts';
import { answered, type Plan } from '../plan.ts';
import type { Language } from '../words/messages.ts';
import { annex } from './annex.ts';
import { buyingList } from './buying-list.ts';
import type { PaperContext } from './context.ts';
import { crewSheet } from './crew-sheet/index.ts';
import type { Issued } from './paper.ts';
import { proposal } from './proposal/index.ts';
import { safetySheet } from './safety-sheet/index.ts';

export type * from './paper.ts';
export { PAPER_KINDS } from './paper.ts';
export { paperText } from './text.ts';

export interface PaperOptions {
  /** Crew sheet and safety sheet follow it; the other papers are English. */
  readonly language: Language;
  /** The accepted option, else the first, when left out. */
  readonly optionId?: string;
  /** Running number of the issue, so that a newer sheet is told from an older one. */
  readonly issue?: string;
}

/** Short mark of everything a paper shows: the same plan gives the same mark, whenever it was made. */
const markOf = ({ survey, options, entries }: Plan): string => checkMark({ survey, options, entries });

/**
 * The papers of one option as data, in the order they are needed. `job` and `catalogue` are those the plan was made
 * from.
 * @throws when the option is not in the plan, or the files are not those of the plan.
 */
export function papersOf(plan: Plan, job: Job, catalogue: Catalogue, options: PaperOptions): readonly Issued[] {
  const wanted = options.optionId;
  const option = wanted
    ? plan.options.find(({ id }) => id === wanted)
    : (plan.options.find(({ accepted }) => accepted) ?? plan.options[0]);
  if (!option) throw new Error(`the plan has no option ${wanted ?? ''}`);
  const chosen = job.options.find(({ id }) => id === option.id);
  const system = catalogue.systems.find(({ id }) => id === option.systemId);
  if (!chosen || !system)
    throw new Error(`the job or catalogue is not the one the option ${option.id} was planned from`);
  const ctx: PaperContext = {
    plan,
    job,
    catalogue,
    option,
    chosen,
    system,
    ...(answered(plan.survey) ? { survey: plan.survey } : {}),
    language: options.language,
    issue: options.issue ?? '1',
    mark: markOf(plan),
  };
  return [proposal(ctx), crewSheet(ctx), buyingList(ctx), safetySheet(ctx), annex(ctx)];
}
