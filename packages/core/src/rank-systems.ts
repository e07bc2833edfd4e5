import type { JobOption } from './job.ts';
import type { Entry, Known } from './kernel/entry.ts';
import { epochOf, type Instant } from './kernel/instant.ts';
import { FormulaRefused } from './kernel/refusal.ts';
import type { Said } from './kernel/said.ts';
import { Trace } from './kernel/trace.ts';
import { type Reason, severity } from './kernel/verdict.ts';
import type { PlanInput } from './plan.ts';
import type { OptionContext, StepContext } from './steps/context.ts';
import { beatenBy } from './steps/fits/front.ts';
import { LightRecorder } from './steps/fits/light-recorder.ts';
import { marginsOf, type Weakest, weakestOf } from './steps/fits/margins.ts';
import { Shared } from './steps/fits/shared.ts';
import { type Use, untilUse, useOf } from './steps/fits/until-use.ts';
import { hoursAlone } from './steps/hours/index.ts';
import { clock } from './steps/hours/readings.ts';
import { price } from './steps/price/index.ts';
import { quantities } from './steps/quantities/index.ts';
import type { SurveyPlan, SystemPlan } from './steps/results.ts';
import { survey } from './steps/survey/index.ts';
import { system } from './steps/system/index.ts';

/** One system of the catalogue on this slab. */
export interface SystemRanked {
  readonly system: string;
  readonly name: string;
  readonly fits: 'yes' | 'no' | 'not known';
  /** The one reason against it, or the one unknown, with the change that would admit it. */
  readonly reason?: Reason;
  /** Further reasons of the same weight. */
  readonly also: readonly Reason[];
  /** Cautions of the sheets: the system may be laid, but the use asks for more. */
  readonly cautions: readonly Reason[];
  /** No other system is at least as good in price, hours, days and margin, and better in one. */
  readonly front: boolean;
  readonly beatenBy?: string;
  readonly price?: Known<'money'>;
  /** Why there is no price. */
  readonly priceWhy?: Said;
  /** Work on site, person-time. */
  readonly hours?: Known<'s'>;
  readonly untilUse?: Known<'s'>;
  readonly untilUseWhy?: Said;
  readonly weakest?: Weakest;
}

export interface SystemsRanked {
  readonly job: string;
  /** Option whose areas, people and preparation every system is tried with. */
  readonly option: string;
  readonly currency?: string;
  readonly use: Use;
  /** The front by price first, then what it beats, what is not known, and what does not fit. */
  readonly systems: readonly SystemRanked[];
  /** What stands against every system alike: the slab itself. */
  readonly common: readonly Reason[];
  /** Every number behind the ranking; without bands, since only values are compared. */
  readonly entries: readonly Entry[];
}

/**
 * Every system of the catalogue on the slab of this job, by the same steps as a plan. What cannot be laid says the one
 * reason and the change that would admit it; the rest stand on a front of price, hours, days until use and margin of
 * the weakest need, and are never added up into one score. Without an option in the job there is nothing to try them
 * with, and the answer is nothing.
 */
export function rankSystems(input: PlanInput): SystemsRanked | undefined {
  const { job, catalogue, priceBook, now, seed = 1 } = input;
  const base = job.options.find(({ accepted }) => accepted) ?? job.options[0];
  if (!base) return undefined;
  const record = new LightRecorder();
  const root = new Trace(record, '', false);
  const step: StepContext = { job, catalogue, now, seed, ...(priceBook ? { priceBook } : {}) };
  const surveyed = survey(step, root.within('survey'));
  const products = new Map(catalogue.products.map((one) => [one.id, one]));
  const shared = new Shared(surveyed);
  const start = (base.starts ?? []).map(({ at }) => at).sort((a, b) => epochOf(a) - epochOf(b))[0] ?? now;
  const option = asTried(base);
  const tried = catalogue.systems.map((one) => {
    const ctx: OptionContext = { ...step, option: { ...option, system: one.id }, system: one, products };
    return tryOut(ctx, surveyed, shared, start, root.within('fits').within(one.id));
  });
  const able = tried.filter(({ fits }) => fits !== 'no');
  const beaten = beatenBy(able.map(comparedOf));
  const systems = tried.map((one): SystemRanked => {
    const by = beaten.get(one.system);
    return { ...one, front: one.fits !== 'no' && by === undefined, ...(by === undefined ? {} : { beatenBy: by }) };
  });
  return {
    job: job.id,
    option: base.id,
    ...(priceBook ? { currency: priceBook.currency } : {}),
    use: useOf({ ...step, option, products, system: catalogue.systems[0] as OptionContext['system'] }),
    systems: systems.sort(inOrder),
    common: surveyed.verdict.reasons.filter(({ verdict }) => verdict === 'stop' || verdict === 'not known'),
    entries: record.list,
  };
}

/** The option without what belongs to its own system: layers, starts, thinner, hours and changes agreed for it. */
function asTried({
  starts: _,
  thinner: __,
  paidHours: ___,
  changes: ____,
  accepted: _____,
  ...rest
}: JobOption): JobOption {
  return rest;
}

type Tried = Omit<SystemRanked, 'front' | 'beatenBy'>;

function tryOut(ctx: OptionContext, surveyed: SurveyPlan, shared: Shared, start: Instant, trace: Trace): Tried {
  const head = { system: ctx.system.id, name: ctx.system.name };
  try {
    return { ...head, ...weighed(ctx, surveyed, shared, start, trace) };
  } catch (trouble) {
    // A law that refuses a number says so for this system; the others go on.
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    const { formula, input = '', code } = trouble.refusal;
    const reason: Reason = { code: 'formula-refused', verdict: 'not known', names: { formula, input, why: code } };
    return { ...head, fits: 'not known', reason, also: [], cautions: [] };
  }
}

function weighed(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  shared: Shared,
  start: Instant,
  trace: Trace,
): Omit<Tried, 'system' | 'name'> {
  const fitted = system(ctx, surveyed, trace.within('system'));
  const needed = shared.needs(ctx, trace.within('needs'));
  const use = useOf(ctx);
  const until = untilUse(ctx, surveyed, use, trace);
  const by = wantedBy(ctx, use);
  const wanted = until.ok && by ? { start, by, takes: until.time } : undefined;
  const late = wanted ? tooLate(ctx, wanted, use) : [];
  const reasons = [...fitted.verdict.reasons, ...needed.verdict.reasons, ...late];
  const judged = { ...judge(reasons), ...(until.ok ? { untilUse: until.time } : { untilUseWhy: until.why }) };
  // What cannot be laid needs no price; what would admit it is worth more than a number nobody may use.
  if (judged.fits === 'no') return judged;
  return {
    ...judged,
    ...costed(ctx, surveyed, shared, fitted, trace),
    ...weakest(ctx, surveyed, fitted, wanted, trace),
  };
}

function judge(reasons: readonly Reason[]): Pick<Tried, 'fits' | 'reason' | 'also' | 'cautions'> {
  const of = (word: Reason['verdict']): readonly Reason[] => reasons.filter(({ verdict }) => verdict === word);
  const cautions = of('caution');
  for (const [word, fits] of [
    ['stop', 'no'],
    ['not known', 'not known'],
  ] as const) {
    const [reason, ...also] = of(word);
    if (reason) return { fits, reason, also, cautions };
  }
  return { fits: 'yes', also: [], cautions };
}

function costed(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  shared: Shared,
  fitted: SystemPlan,
  trace: Trace,
): Pick<Tried, 'price' | 'priceWhy' | 'hours'> {
  const prepared = shared.preparation(ctx, trace.within('preparation'));
  const quantified = quantities(ctx, surveyed, prepared, fitted, trace.within('quantities'));
  const timed = hoursAlone(shared.withoutDay(ctx), surveyed, prepared, fitted, quantified, trace.within('hours'));
  const priced = price(ctx, surveyed, quantified, timed, trace.within('price'));
  const total = priced.total ?? priced.price;
  const [why] = [...priced.verdict.reasons].sort((a, b) => severity(a.verdict) - severity(b.verdict));
  return {
    ...(timed.personTime ? { hours: timed.personTime } : {}),
    ...(total ? { price: total } : why ? { priceWhy: why } : {}),
  };
}

function weakest(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  fitted: SystemPlan,
  wanted: Parameters<typeof marginsOf>[3],
  trace: Trace,
): Pick<Tried, 'weakest'> {
  const found = weakestOf(marginsOf(ctx, surveyed, fitted, wanted, trace), trace);
  return found ? { weakest: found } : {};
}

const wantedBy = (ctx: OptionContext, use: Use): Instant | undefined =>
  use === 'foot' ? ctx.job.use?.footBy : ctx.job.use?.vehicleBy;

/** Ready after the floor is wanted: the change that admits the system is a later day. */
function tooLate(
  ctx: OptionContext,
  { start, by, takes }: { readonly start: Instant; readonly by: Instant; readonly takes: Known<'s'> },
  use: Use,
): readonly Reason[] {
  const ready = epochOf(start) + takes.value * 1000;
  if (ready <= epochOf(by)) return [];
  const names = { use: `@fits-use-${use}`, ready: clock(ctx, ready), by: clock(ctx, epochOf(by)) };
  const figures = { takes: takes.id };
  const lift: Said = { code: 'fits-too-late-lift', figures, names };
  return [{ code: 'fits-too-late', verdict: 'stop', figures, names, source: takes.id, lift }];
}

const comparedOf = ({ system: id, fits, price: p, hours: h, untilUse: u, weakest: w }: Tried) => ({
  id,
  known: fits === 'yes',
  ...(p ? { price: p.value } : {}),
  ...(h ? { hours: h.value } : {}),
  ...(u ? { untilUse: u.value } : {}),
  ...(w ? { margin: w.margin.value } : {}),
});

const GROUP = { yes: 0, 'not known': 2, no: 4 } as const;

/** Front before beaten within each group, then the lower price, then the id. */
function inOrder(a: SystemRanked, b: SystemRanked): number {
  const group = ({ fits, front }: SystemRanked): number => GROUP[fits] + (front ? 0 : 1);
  const cost = ({ price: p }: SystemRanked): number => p?.value ?? Number.MAX_SAFE_INTEGER;
  return group(a) - group(b) || cost(a) - cost(b) || (a.system < b.system ? -1 : 1);
}
