import { Z90 } from '../../kernel/band.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { ProductCure } from '../../science/cure/index.ts';
import type { Candidate, Conditions } from '../../science/windows/index.ts';
import { valueAt } from '../formulas/day.ts';
import type { BatchLife, SitePlan } from '../results.ts';
import { minute } from './instants.ts';
import { LawTimes } from './law-time.ts';
import { type MaterialRead, materialAt } from './material.ts';
import { valueNear } from './series-values.ts';

/** Batches told one by one; a coat of more is told by every so many. */
const MOST = 12;
/** Deviation of the material from the air over the floor, K: an assumption. */
const AS_WARM = 2;

/**
 * Pot life of each batch at its own hour, by the temperature read in its pail. Where nobody read one the material is
 * taken to be as warm as the air over the floor; a pail out of a van in the sun is warmer, and sets sooner.
 */
export function potsOf(
  conditions: Conditions,
  cure: ProductCure,
  candidate: Candidate,
  { batches, material: reads }: { readonly batches: number; readonly material: readonly MaterialRead[] },
  site: SitePlan,
  zone: string,
  where: string,
  trace: Trace,
): readonly BatchLife[] {
  if (!cure.pail || batches === 0) return [];
  const times = new LawTimes(cure.pail, trace, where);
  const every = Math.ceil(batches / MOST);
  const out: BatchLife[] = [];
  for (let i = 0; i < batches; i += every) {
    const at = candidate.start + ((candidate.laid - candidate.start) * i) / batches;
    const value = valueNear(conditions, conditions.air, at);
    const material =
      materialAt(reads, at) ??
      trace.taken(`${i}.material`, valueAt, {
        value,
        unit: '°C',
        shows: 'temperature',
        inputs: { before: site.air.id, after: site.air.id },
        band: [value - Z90 * AS_WARM, value + Z90 * AS_WARM],
        causes: { 'material as warm as the air': AS_WARM },
      });
    const time = times.at(`${i}.pot-life`, material);
    out.push({ batch: `${i + 1}`, at: minute(at, zone), material, ...(time ? { time } : {}) });
  }
  return out;
}
