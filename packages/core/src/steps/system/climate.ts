import type { Field } from '../../fields.ts';
import type { Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenField, type OptionContext } from '../context.ts';
import type { SurveyPlan } from '../results.ts';
import { type Coat, type Found, join, sheetSilent } from './coat.ts';
import { above, below } from './limits.ts';

type Limits = NonNullable<Coat['product']['climate']>;
type Breaks = (value: number, limit: number) => boolean;

interface Checked {
  readonly limit: Exclude<keyof Limits, 'onlyFalling'>;
  readonly name: string;
  readonly of: 'slab' | 'air' | 'humidity' | 'margin';
  readonly breaks: Breaks;
}

const CHECKS: readonly Checked[] = [
  { limit: 'slabLeast', name: 'slab-cold', of: 'slab', breaks: below },
  { limit: 'slabMost', name: 'slab-hot', of: 'slab', breaks: above },
  { limit: 'airLeast', name: 'air-cold', of: 'air', breaks: below },
  { limit: 'airMost', name: 'air-hot', of: 'air', breaks: above },
  { limit: 'humidityLeast', name: 'air-dry', of: 'humidity', breaks: below },
  { limit: 'humidityMost', name: 'air-humid', of: 'humidity', breaks: above },
  { limit: 'dewMargin', name: 'dew-close', of: 'margin', breaks: below },
];

/** Every reading of the room by what it reads, recorded once for all coats. */
export type RoomReadings = Readonly<Record<Checked['of'], readonly Known[]>>;

export function roomReadings(ctx: OptionContext, surveyed: SurveyPlan, trace: Trace): RoomReadings {
  const t = trace.within('climate');
  const read = ctx.job.survey.climate ?? [];
  const record = <U extends Unit>(name: string, field: Field<U> | undefined, i: number): readonly Given<U>[] => {
    if (!field) return [];
    const { where, at } = read[i] as (typeof read)[number];
    return [givenField(t, `${name}.${i + 1}`, field, 'reading', { when: at, ...(where ? { where } : {}) })];
  };
  return {
    slab: read.flatMap((one, i) => record('slab', one.slab, i)),
    air: read.flatMap((one, i) => record('air', one.air, i)),
    humidity: read.flatMap((one, i) => record('humidity', one.humidity, i)),
    margin: surveyed.margins.map((one) => one.margin),
  };
}

/**
 * Limits of the sheet against the readings of the room. This is the first look: the gate of the hour decides on the
 * day. Outside at every reading is a stop, at some a caution, and nothing read is not known.
 */
export function climateFit(coats: readonly Coat[], readings: RoomReadings): Found {
  const silent = coats.filter((coat) => !coat.product.climate || Object.keys(coat.product.climate).length === 0);
  const stated = coats.filter((coat) => !silent.includes(coat));
  const unstated = silent.map((coat) => sheetSilent(coat, 'system-climate-unstated', 'climate'));
  if (stated.length > 0 && readings.air.length === 0) {
    const code = 'system-climate-not-read';
    return join([
      ...unstated,
      {
        reasons: [{ code, verdict: 'not known' }],
        missing: [
          { path: 'survey.climate', fact: { code }, changes: { code: 'system-climate-changes' }, meanwhile: 'held' },
        ],
      },
    ]);
  }
  const reasons = stated.flatMap((coat) => CHECKS.flatMap((check) => one(coat, check, readings[check.of]) ?? []));
  return join([...unstated, { reasons }]);
}

function one(coat: Coat, { limit: key, name, of, breaks }: Checked, readings: readonly Known[]): Reason | undefined {
  const field = (coat.product.climate as Limits)[key];
  if (!field) return undefined;
  const limit = givenField<Unit>(coat.trace, `limit.${name}`, field, 'data sheet', { where: coat.sheet });
  const names = { layer: coat.name };
  if (readings.length === 0) {
    const unread = { code: `system-climate-${of}-unread`, figures: { limit: limit.id }, names };
    return { ...unread, verdict: 'not known', source: limit.id };
  }
  const outside = readings.filter((reading) => breaks(reading.value, limit.value));
  const [first] = outside;
  if (!first) return undefined;
  const worst = outside.reduce((far, next) => (breaks(next.value, far.value) ? next : far), first);
  const always = outside.length === readings.length;
  const figures = { reading: worst.id, limit: limit.id };
  if (!always)
    return { code: `system-climate-${name}-sometimes`, verdict: 'caution', figures, names, source: limit.id };
  const lift = { code: `system-climate-${name}-lift`, figures: { limit: limit.id }, names };
  return { code: `system-climate-${name}-always`, verdict: 'stop', figures, names, source: limit.id, lift };
}
