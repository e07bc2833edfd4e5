import type { ClimateReading } from '../../job.ts';
import type { Figure, Given, Known } from '../../kernel/entry.ts';
import { epochOf, type Instant, instantIn } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField, type OptionContext } from '../context.ts';
import type { SurveyPlan } from '../results.ts';

/** Readings further than this from the start of a coat say nothing about its air and dew point. */
export const NEAR = 2 * 3600_000;

/** One climate reading with its margin, its numbers recorded when somebody asks for them. */
export class Reading {
  readonly at: Instant;
  readonly epoch: number;
  readonly where: string;
  readonly slab: Known<'°C'> | undefined;
  readonly margin: Figure<'K'> | undefined;
  private readonly read: ClimateReading;
  private readonly trace: Trace;
  private airKnown: Given<'°C'> | undefined;
  private humidityKnown: Given<'1'> | undefined;

  constructor(read: ClimateReading, judged: SurveyPlan['margins'][number] | undefined, trace: Trace) {
    this.at = read.at;
    this.epoch = epochOf(read.at);
    this.where = read.where ?? '';
    this.slab = judged?.slab;
    this.margin = judged?.margin;
    this.read = read;
    this.trace = trace;
  }

  get air(): Given<'°C'> {
    this.airKnown ??= givenField(this.trace, 'air', this.read.air, 'reading', this.parts());
    return this.airKnown;
  }

  get humidity(): Given<'1'> {
    this.humidityKnown ??= givenField(this.trace, 'humidity', this.read.humidity, 'reading', this.parts());
    return this.humidityKnown;
  }

  private parts() {
    return { when: this.at, ...(this.where ? { where: this.where } : {}) };
  }
}

/** All readings of the job in order of time, each with the margin that the survey found for it. */
export function readingsOf(ctx: OptionContext, surveyed: SurveyPlan, trace: Trace): readonly Reading[] {
  const margins = [...surveyed.margins];
  const take = (read: ClimateReading): SurveyPlan['margins'][number] | undefined => {
    if (!read.slab) return undefined;
    const i = margins.findIndex(({ at, slab }) => at === read.at && slab.value === read.slab?.value);
    return i < 0 ? undefined : margins.splice(i, 1)[0];
  };
  return (ctx.job.survey.climate ?? [])
    .map((read, i) => new Reading(read, take(read), trace.within('reading').within(`${i}`)))
    .sort((a, b) => a.epoch - b.epoch);
}

/** Readings with slab and margin at the moment before and the moment after a start, none further away than `NEAR`. */
export function around(readings: readonly Reading[], start: number): readonly Reading[] {
  const usable = readings.filter((one) => one.margin !== undefined && Math.abs(one.epoch - start) <= NEAR);
  const before = usable.filter(({ epoch }) => epoch <= start).at(-1)?.epoch;
  // A reading at the start itself needs no second one beside it.
  const after = before === start ? undefined : usable.find(({ epoch }) => epoch > start)?.epoch;
  return usable.filter(({ epoch }) => epoch === before || epoch === after);
}

/** The reading with the least of something. */
export function leastOf(
  readings: readonly Reading[],
  of: (reading: Reading) => Known | undefined,
): { readonly reading: Reading; readonly known: Known } | undefined {
  let found: { readonly reading: Reading; readonly known: Known } | undefined;
  for (const reading of readings) {
    const known = of(reading);
    if (known && (!found || known.value < found.known.value)) found = { reading, known };
  }
  return found;
}

/** `2026-05-13 11:45`, in the zone of the job. */
export const clock = (ctx: OptionContext, epoch: number): string =>
  instantIn(epoch, ctx.job.place.zone).slice(0, 16).replace('T', ' ');
