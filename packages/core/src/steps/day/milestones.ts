import type { Product } from '../../catalogue.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { MILESTONES, type MilestoneName, type ProductCure } from '../../science/cure/index.ts';
import { type Candidate, type Conditions, clockOn } from '../../science/windows/index.ts';
import { leastOf } from '../formulas/day.ts';
import type { CoatMilestone, SitePlan } from '../results.ts';
import { spanOf, spoken } from './instants.ts';
import { inAir } from './moist-air.ts';
import { extremesBetween } from './series-values.ts';

/** Stages that are told for the metre laid first and the one laid last. */
const TOLD: readonly MilestoneName[] = MILESTONES;

/** From the slab's own hours ahead: when each stage is reached, and down to which temperature that holds. */
export function milestonesOfCoat(
  conditions: Conditions,
  cure: ProductCure,
  candidate: Candidate,
  site: SitePlan,
  product: Product,
  zone: string,
  trace: Trace,
): readonly CoatMilestone[] {
  return TOLD.flatMap((what): readonly CoatMilestone[] => {
    const law = cure.film[what];
    if (!law) return [];
    const clock = clockOn(conditions, law);
    const dryFirst = clock(candidate.start);
    const dryLast = clock(candidate.laid);
    if (!dryFirst || !dryLast) return [];
    const moist = what === 'open' ? inAir(conditions, product, candidate.start, site, trace) : undefined;
    const first = moist ? moist.of(dryFirst, candidate.start) : dryFirst;
    const last = moist ? moist.of(dryLast, candidate.laid) : dryLast;
    const { least } = extremesBetween(conditions, conditions.surface, candidate.start, last.at);
    const warm = trace.taken(`${what.replaceAll(' ', '-')}.warm`, leastOf, {
      value: least,
      unit: '°C',
      shows: 'temperature',
      inputs: { values: site.slab.id },
    });
    const holds: readonly Said[] = [
      { code: 'day-holds-if-as-warm', figures: { warm: warm.id }, names: { at: spoken(last.at, zone) } },
      ...(moist?.holds ?? []),
      ...[...new Set([...dryFirst.cautions, ...dryLast.cautions])].map((code) => ({ code })),
    ];
    return [{ what, first: spanOf(first, zone), last: spanOf(last, zone), warm, holds }];
  });
}
