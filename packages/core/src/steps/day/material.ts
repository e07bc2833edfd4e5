import type { Product } from '../../catalogue.ts';
import type { Job } from '../../job.ts';
import type { Given } from '../../kernel/entry.ts';
import { epochOf } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenField, sheetOf } from '../context.ts';
import { shortOf } from '../formulas/day.ts';

/** A reading of the resin counts for batches mixed this long after it: later the pail has taken another temperature, ms. */
const COUNTS_FOR = 4 * 3_600_000;
/** Deviation of a thermometer in a pail, K: an assumption. */
const THERMOMETER = 1;

/** The resin in its pail as somebody read it. */
export interface MaterialRead {
  readonly from: number;
  readonly until: number;
  readonly value: Given<'°C'>;
}

/** Readings of the resin before mixing, in order of time; each recorded once. */
export function materialRead(job: Job, trace: Trace): readonly MaterialRead[] {
  const reads = (job.survey.climate ?? []).flatMap(({ at, material, where }, i) => {
    if (!material) return [];
    const value = trace.given(`${i}.material`, {
      value: material.value,
      unit: '°C',
      origin: 'reading',
      typed: material.typed,
      when: at,
      ...(where ? { where } : {}),
      shows: 'temperature',
      causes: { 'thermometer in the pail': THERMOMETER },
    });
    return [{ from: epochOf(at), value }];
  });
  reads.sort((a, b) => a.from - b.from);
  return reads.map(({ from, value }, i) => ({
    from,
    until: Math.min(from + COUNTS_FOR, reads[i + 1]?.from ?? Number.POSITIVE_INFINITY),
    value,
  }));
}

/** The reading that tells of a batch mixed at a moment. */
export const materialAt = (reads: readonly MaterialRead[], at: number): Given<'°C'> | undefined =>
  reads.find(({ from, until }) => at >= from && at < until)?.value;

/** Resin outside the temperatures its sheet allows it to be mixed at. */
export function materialReasons(
  product: Product,
  read: Given<'°C'> | undefined,
  trace: Trace,
  names: Readonly<Record<string, string>>,
): readonly Reason[] {
  if (!read) return [];
  const { materialLeast: least, materialMost: most } = product.climate ?? {};
  const cold = least !== undefined && read.value < least.value;
  const limit = cold ? least : most;
  if (!limit || !(cold || read.value > limit.value)) return [];
  const what = cold ? 'cold' : 'hot';
  const bound = givenField(trace, `material-${what}`, limit, 'data sheet', { where: sheetOf(product) });
  const by = trace.taken(`material-${what}-by`, shortOf, {
    value: Math.abs(read.value - limit.value),
    unit: 'K',
    shows: 'difference',
    inputs: { value: read.id, bound: bound.id },
  });
  return [
    {
      verdict: 'stop',
      code: `day-material-${what}`,
      figures: { value: read.id, bound: bound.id },
      names,
      source: bound.id,
      lift: { code: `day-material-${what}-lift`, figures: { by: by.id } },
    },
  ];
}
