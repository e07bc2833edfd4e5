import type { Product } from '../../catalogue.ts';
import type { Job } from '../../job.ts';
import { epochOf } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { CoatMilestone } from '../results.ts';
import { spoken } from './instants.ts';

/** Until the film is hard: feet at the late side, else the next coat, else the end of its tackiness. */
function hardAt(milestones: readonly CoatMilestone[]): string | undefined {
  const found = ['foot', 'recoat opens', 'touch'].map((stage) => milestones.find(({ what }) => what === stage));
  const last = found.find((stage) => stage !== undefined)?.last;
  return last && (last.high ?? last.at);
}

/**
 * A burner without a flue gives water and carbon dioxide to the air of the room; an amine-cured film takes both into
 * its surface, which blushes and bonds no more. So none burns until the film is hard.
 */
export function burnerReasons(
  job: Job,
  product: Product,
  milestones: readonly CoatMilestone[],
  layer: string,
): { readonly reasons: readonly Reason[]; readonly notes: readonly Said[] } {
  const { exposure } = job.survey;
  const hard = hardAt(milestones);
  const inside = exposure?.kind !== 'patio';
  if (product.amine !== true || !inside || hard === undefined) return { reasons: [], notes: [] };
  const names = { layer, until: spoken(epochOf(hard), job.place.zone) };
  if (exposure?.heater === undefined) return { reasons: [], notes: [{ code: 'day-no-burner-until', names }] };
  if (exposure.heater !== 'unvented flame') return { reasons: [], notes: [] };
  const reason: Reason = {
    verdict: 'stop',
    code: 'day-unvented-burner',
    names,
    source: 'amine-bloom-help-page',
    lift: { code: 'day-unvented-burner-lift' },
  };
  return { reasons: [reason], notes: [] };
}
