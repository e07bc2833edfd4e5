import type { Known } from '../../kernel/entry.ts';
import { epochOf, type Instant, instantIn } from '../../kernel/instant.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, severity } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import { shortOf } from '../formulas/day.ts';
import { hoursAlone } from '../hours/index.ts';
import { clock } from '../hours/readings.ts';
import { price } from '../price/index.ts';
import { quantities } from '../quantities/index.ts';
import type { CrackPlan, HoursPlan, SurveyPlan, SystemPlan } from '../results.ts';
import { system } from '../system/index.ts';
import { type Margin, marginsOf, weakestOf } from './margins.ts';
import type { Shared } from './shared.ts';
import { type Use, untilUse, useOf } from './until-use.ts';
import { type Ahead, type Reach, reachOf } from './windows.ts';

/** One system on this slab, before it is held against the others. */
export interface Tried {
  readonly system: string;
  readonly name: string;
  readonly fits: 'yes' | 'no' | 'not known';
  /** The one reason against it, or the one unknown, with the change that would admit it. */
  readonly reason?: Reason;
  /** Further reasons of the same weight. */
  readonly also: readonly Reason[];
  /** Cautions of the sheets: the system may be laid, but the use asks for more. */
  readonly cautions: readonly Reason[];
  readonly price?: Known<'money'>;
  /** Why there is no price. */
  readonly priceWhy?: Said;
  /** Work on site, person-time. */
  readonly hours?: Known<'s'>;
  readonly untilUse?: Known<'s'>;
  readonly untilUseWhy?: Said;
  /** First start and first use in the weather given. */
  readonly starts?: Instant;
  readonly ready?: Instant;
  readonly weakest?: Margin;
  /** Every must-have whose margin is known, the weakest first. */
  readonly margins?: readonly Margin[];
}

/** What all systems are tried on. */
export interface Floor {
  readonly surveyed: SurveyPlan;
  readonly shared: Shared;
  /** First start chosen in the job, else now: what the sheets' times are counted from. */
  readonly start: Instant;
  readonly ahead: Ahead | undefined;
}

export function tryOut(ctx: OptionContext, floor: Floor, trace: Trace): Tried {
  const head = { system: ctx.system.id, name: ctx.system.name };
  try {
    return { ...head, ...weighed(ctx, floor, trace) };
  } catch (trouble) {
    // A law that refuses a number says so for this system; the others go on.
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    const { formula, input = '', code } = trouble.refusal;
    const reason: Reason = { code: 'formula-refused', verdict: 'not known', names: { formula, input, why: code } };
    return { ...head, fits: 'not known', reason, also: [], cautions: [] };
  }
}

/** Cheap tests first: what the sheets already rule out is neither counted nor laid out in the weather. */
function weighed(ctx: OptionContext, floor: Floor, trace: Trace): Omit<Tried, 'system' | 'name'> {
  const { surveyed, shared, start, ahead } = floor;
  const needed = shared.needs(ctx, trace.within('needs'));
  const fitted = system(ctx, surveyed, trace.within('system'));
  const use = useOf(ctx);
  const until = untilUse(ctx, surveyed, use, trace);
  const by = wantedBy(ctx, use);
  const reasons = [...fitted.verdict.reasons, ...needed.verdict.reasons];
  const late = until.ok && by && !ahead ? tooLate(ctx, { start, by, takes: until.time }, use) : [];
  const bySheets = judge([...reasons, ...late]);
  const sheetTime = until.ok ? { untilUse: until.time } : { untilUseWhy: until.why };
  if (bySheets.fits === 'no') return { ...bySheets, ...(ahead ? {} : sheetTime) };
  const { timed, lines, ...cost } = costed(ctx, floor, fitted, trace);
  const reach = ahead && until.ok ? reachOf(ahead, ctx, timed.tasks, use) : undefined;
  const laid = ahead && reach ? inWeather(ctx, ahead, reach, by, use, trace) : undefined;
  const judged = laid ? judge([...reasons, ...laid.reasons]) : bySheets;
  const time = laid ? laid.time : sheetTime;
  // What cannot be laid needs no price; what only comes too late may still be agreed on, so it keeps its numbers.
  const tooLateAlone = laid?.reasons[0] !== undefined && judged.also.length === 0;
  if (judged.fits === 'no' && !tooLateAlone) return { ...judged, ...time };
  const takes = time.untilUse;
  const wanted = takes && by ? { start: laid ? ctx.now : start, by, takes } : undefined;
  const margins = marginsOf(
    {
      ctx,
      surveyed,
      fitted,
      needed,
      wanted,
      shared,
      lines,
      met: reach?.ok ? reach.coats : undefined,
      price: cost.price,
    },
    trace,
  );
  const weakest = weakestOf(margins, trace);
  return { ...judged, ...time, ...cost, ...(weakest ? { weakest, margins } : {}) };
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
  { surveyed, shared }: Floor,
  fitted: SystemPlan,
  trace: Trace,
): Pick<Tried, 'price' | 'priceWhy' | 'hours'> & { readonly timed: HoursPlan; readonly lines: readonly CrackPlan[] } {
  const handled = shared.handled(ctx, trace.within('cracks'));
  const prepared = shared.preparation(handled, trace.within('preparation'));
  const quantified = quantities(handled, surveyed, prepared, fitted, trace.within('quantities'));
  const timed = hoursAlone(shared.withoutDay(handled), surveyed, prepared, fitted, quantified, trace.within('hours'));
  const priced = price(ctx, surveyed, quantified, timed, trace.within('price'));
  const total = priced.total ?? priced.price;
  const [why] = [...priced.verdict.reasons].sort((a, b) => severity(a.verdict) - severity(b.verdict));
  return {
    timed,
    lines: handled.lines ?? [],
    ...(timed.personTime ? { hours: timed.personTime } : {}),
    ...(total ? { price: total } : why ? { priceWhy: why } : {}),
  };
}

const wantedBy = (ctx: OptionContext, use: Use): Instant | undefined =>
  use === 'foot' ? ctx.job.use?.footBy : ctx.job.use?.vehicleBy;

interface Wish {
  readonly start: Instant;
  readonly by: Instant;
  readonly takes: Known<'s'>;
}

/** Ready after the floor is wanted: the change that admits the system is a later day. */
function tooLate(ctx: OptionContext, { start, by, takes }: Wish, use: Use): readonly Reason[] {
  const ready = epochOf(start) + takes.value * 1000;
  if (ready <= epochOf(by)) return [];
  const names = { use: `@fits-use-${use}`, ready: clock(ctx, ready), by: clock(ctx, epochOf(by)) };
  const figures = { takes: takes.id };
  const lift: Said = { code: 'fits-too-late-lift', figures, names };
  return [{ code: 'fits-too-late', verdict: 'stop', figures, names, source: takes.id, lift }];
}

interface InWeather {
  readonly reasons: readonly Reason[];
  readonly time: Pick<Tried, 'untilUse' | 'untilUseWhy' | 'starts' | 'ready'>;
}

/** The same asked of the weather: no start, or one that is ready after the floor is wanted. */
function inWeather(
  ctx: OptionContext,
  ahead: Ahead,
  reach: Reach,
  by: Instant | undefined,
  use: Use,
  trace: Trace,
): InWeather {
  const wish = by === undefined ? undefined : epochOf(by);
  const spoken = (epoch: number): string => clock(ctx, Math.round(epoch / 60_000) * 60_000);
  if (!reach.ok) {
    // Weather that ends before the wished day leaves the days after it open; that is no reason against the system.
    const shut = wish !== undefined && wish <= ahead.until;
    const before = spoken(shut ? wish : ahead.until);
    const names = { layer: reach.layer, before, shut: `@fits-shut-${reach.shut}` };
    const lift: Said = { code: shut ? 'fits-no-start-lift' : 'fits-no-start-more-weather', names };
    const code = reach.shut === 'not-ready' ? 'fits-not-ready' : 'fits-no-start';
    return {
      reasons: [{ code, verdict: shut ? 'stop' : 'not known', names, lift }],
      time: { untilUseWhy: { code, names } },
    };
  }
  const time = trace.taken('until-use-in-weather', shortOf, {
    value: (reach.ready - ahead.now) / 1000,
    unit: 's',
    shows: 'duration',
    inputs: {},
  });
  const { zone } = ctx.job.place;
  const told = { untilUse: time, starts: instantIn(reach.start, zone), ready: instantIn(reach.ready, zone) };
  if (wish === undefined || reach.ready <= wish) return { reasons: [], time: told };
  const names = {
    use: `@fits-use-${use}`,
    first: spoken(reach.start),
    ready: spoken(reach.ready),
    by: spoken(wish),
  };
  const lift: Said = { code: 'fits-too-late-in-weather-lift', names };
  return { reasons: [{ code: 'fits-too-late-in-weather', verdict: 'stop', names, source: time.id, lift }], time: told };
}
