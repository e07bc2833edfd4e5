import table from '../../data/rates.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { Fact } from '../../fields.ts';
import type { Job } from '../../job.ts';
import type { Figure, Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import { givenCount, givenFact, givenField, type StepContext } from '../context.ts';
import { patchRate, timeFromArea, timeFromCount, timeFromLength } from '../formulas/preparation.ts';
import { causesOfRate } from '../pace-of-crew.ts';

/** A rate of work as it was found: by area, by length, or a time for the whole task. */
export type RateFound =
  | { readonly by: 'area'; readonly rate: Known<'m²/s'> }
  | { readonly by: 'length'; readonly rate: Known<'m/s'> }
  | { readonly by: 'whole'; readonly rate: Known<'s'> };

/** What a patch of each removal times. */
const PATCHED = {
  tile: 'remove-tile',
  'levelling coat': 'remove-levelling',
  oil: 'oil-treat',
} as const satisfies Readonly<Record<NonNullable<Job['survey']['removalPatches']>[number]['what'], string>>;

/**
 * Rates of one option, each recorded once. This floor's own test patch goes before the firm's rate, the firm's rate
 * before the table of defaults. The spread of a rate is a cause of its own name: two tasks at one rate err together.
 */
export class RateBook {
  private readonly ctx: StepContext;
  private readonly trace: Trace;
  private readonly found = new Map<string, RateFound | undefined>();
  /** Work that the test patch timed, if any. */
  private readonly patchWork: string | undefined;

  constructor(ctx: StepContext, trace: Trace, patchWork?: string) {
    this.ctx = ctx;
    this.trace = trace;
    this.patchWork = patchWork;
  }

  rate(work: string): RateFound | undefined {
    if (!this.found.has(work)) this.found.set(work, this.ownPatch(work) ?? this.firms(work) ?? this.fromTable(work));
    return this.found.get(work);
  }

  private ownPatch(work: string): RateFound | undefined {
    const patch = this.patchOf(work);
    if (!patch) return undefined;
    const parts = { when: patch.on, ...(patch.where ? { where: patch.where } : {}) };
    const name = work === this.patchWork ? 'patch' : `patch.${work}`;
    const area = givenField(this.trace, `${name}.area`, patch.area, 'own test', parts);
    const time = givenField(this.trace, `${name}.time`, patch.time, 'own test', parts);
    return { by: 'area', rate: this.trace.figure(`rate.${work}`, patchRate, { area, time }) };
  }

  /** The patch that timed a work. Of several the last entered holds: the crew has learnt. */
  private patchOf(work: string) {
    const { testPatch, removalPatches = [] } = this.ctx.job.survey;
    if (work === this.patchWork) return testPatch;
    return removalPatches.findLast(({ what }) => PATCHED[what] === work);
  }

  private firms(work: string): RateFound | undefined {
    const rate = this.ctx.catalogue.rates?.find(({ task }) => task === work);
    if (!rate) return undefined;
    if ('area' in rate) return { by: 'area', rate: this.firmsRate(work, 'area', rate.area) };
    if ('length' in rate) return { by: 'length', rate: this.firmsRate(work, 'length', rate.length) };
    return { by: 'whole', rate: this.firmsRate(work, 'whole', rate.whole) };
  }

  private firmsRate<U extends Unit>(work: string, counts: 'area' | 'length' | 'whole', fact: Fact<U>): Given<U> {
    const name = `rate.${work}`;
    if (fact.low === undefined && fact.high === undefined) return givenFact(this.trace, name, fact);
    const band = [fact.low ?? fact.value, fact.high ?? fact.value] as const;
    return this.trace.given<U>(name, {
      value: fact.value,
      unit: fact.unit,
      origin: fact.origin,
      typed: fact.typed,
      ...(fact.where ? { where: fact.where } : {}),
      ...(fact.when ? { when: fact.when } : {}),
      ...(fact.shows ? { shows: fact.shows } : {}),
      band,
      causes: causesOfRate(work, counts, band),
    });
  }

  private fromTable(work: string): RateFound | undefined {
    const row = table.rates.find(({ task }) => task === work);
    if (!row) return undefined;
    const given = <U extends 'm²/s' | 'm/s'>(unit: U): Given<U> => {
      const band = [tabled(row.low, unit), tabled(row.high, unit)] as const;
      return this.trace.given<U>(`rate.${work}`, {
        value: tabled(row.typical, unit),
        unit,
        origin: 'table',
        where: row.locator,
        typed: row.typical,
        source: table.source,
        says: 'preparation-assumed-rate',
        band,
        causes: causesOfRate(work, unit === 'm²/s' ? 'area' : 'length', band),
        shows: unit === 'm²/s' ? 'area-rate' : 'length-rate',
      });
    };
    return /²/.test(row.typical) ? { by: 'area', rate: given('m²/s') } : { by: 'length', rate: given('m/s') };
  }
}

/** What a task counts: an area, a length, or the task as a whole where the rate is a time. */
export interface Amount {
  readonly area?: Known<'m²'>;
  readonly length?: Known<'m'>;
}

export interface Timed {
  readonly quantity: Known;
  readonly rate: Known;
  readonly time: Figure<'s'>;
}

/** Person-time of a task under `name.time`; undefined when its rate counts something the task does not have. */
export function timeOf(trace: Trace, name: string, { area, length }: Amount, found: RateFound): Timed | undefined {
  if (found.by === 'area') {
    if (!area) return undefined;
    const time = trace.figure(`${name}.time`, timeFromArea, { area, rate: found.rate });
    return { quantity: area, rate: found.rate, time };
  }
  if (found.by === 'length') {
    if (!length) return undefined;
    const time = trace.figure(`${name}.time`, timeFromLength, { length, rate: found.rate });
    return { quantity: length, rate: found.rate, time };
  }
  const count = givenCount(trace, `${name}.count`, 1, 'chosen');
  const time = trace.figure(`${name}.time`, timeFromCount, { count, each: found.rate });
  return { quantity: count, rate: found.rate, time };
}
