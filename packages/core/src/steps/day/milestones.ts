import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { MILESTONES, type MilestoneName, type ProductCure } from '../../science/cure/index.ts';
import { type Candidate, type Conditions, clockOn } from '../../science/windows/index.ts';
import { leastOf } from '../formulas/day.ts';
import type { CoatMilestone, SitePlan } from '../results.ts';
import { spanOf, spoken } from './instants.ts';
import { extremesBetween } from './series-values.ts';

/** Stages that are told for the metre laid first and the one laid last. */
const TOLD: readonly MilestoneName[] = MILESTONES;

/** From the slab's own hours ahead: when each stage is reached, and down to which temperature that holds. */
export function milestonesOfCoat(
  conditions: Conditions,
  cure: ProductCure,
  candidate: Candidate,
  site: SitePlan,
  zone: string,
  trace: Trace,
): readonly CoatMilestone[] {
  return TOLD.flatMap((what): readonly CoatMilestone[] => {
    const law = cure.film[what];
    if (!law) return [];
    const clock = clockOn(conditions, law);
    const first = clock(candidate.start);
    const last = clock(candidate.laid);
    if (!first || !last) return [];
    const { least } = extremesBetween(conditions, conditions.surface, candidate.start, last.at);
    const warm = trace.taken(`${what.replaceAll(' ', '-')}.warm`, leastOf, {
      value: least,
      unit: '°C',
      shows: 'temperature',
      inputs: { values: site.slab.id },
    });
    const holds: readonly Said[] = [
      { code: 'day-holds-if-as-warm', figures: { warm: warm.id }, names: { at: spoken(last.at, zone) } },
      ...[...new Set([...first.cautions, ...last.cautions])].map((code) => ({ code })),
    ];
    return [{ what, first: spanOf(first, zone), last: spanOf(last, zone), warm, holds }];
  });
}
