import type { JobOption } from './job.ts';
import type { Entry } from './kernel/entry.ts';
import { epochOf } from './kernel/instant.ts';
import type { Said } from './kernel/said.ts';
import { Trace } from './kernel/trace.ts';
import type { Reason } from './kernel/verdict.ts';
import type { PlanInput } from './plan.ts';
import type { OptionContext, StepContext } from './steps/context.ts';
import { site } from './steps/day/site.ts';
import { siteStateOf } from './steps/day/site-state.ts';
import { beatenBy } from './steps/fits/front.ts';
import { QuickTrace } from './steps/fits/quick-trace.ts';
import { Shared } from './steps/fits/shared.ts';
import { Shelf } from './steps/fits/shelf.ts';
import { type Floor, type Tried, tryOut } from './steps/fits/try-out.ts';
import { type Use, useOf } from './steps/fits/until-use.ts';
import { aheadOf } from './steps/fits/windows.ts';
import { survey } from './steps/survey/index.ts';

/** One system of the catalogue on this slab. */
export interface SystemRanked extends Tried {
  /** No other system is at least as good in price, hours, days and margin, and better in one. */
  readonly front: boolean;
  readonly beatenBy?: string;
}

export interface SystemsRanked {
  readonly job: string;
  /** Option whose areas, people and preparation every system is tried with. */
  readonly option: string;
  readonly currency?: string;
  readonly use: Use;
  /** Time until the use from now on in the weather given, or from the first coat by the sheets' times. */
  readonly timesFrom: 'weather' | 'sheets';
  /** The front by price first, then what it beats, what is not known, and what does not fit. */
  readonly systems: readonly SystemRanked[];
  /** What stands against every system alike: the slab itself. */
  readonly common: readonly Reason[];
  /** The numbers that are shown, or with their working every number behind them; without bands. */
  readonly entries: readonly Entry[];
}

export interface Ranking {
  /** Keeps what every number was worked out from: half again the time, and forty times the entries. */
  readonly working?: boolean;
}

/**
 * Every system of the catalogue on the slab of this job, by the same steps as a plan. What cannot be laid says the one
 * reason and the change that would admit it; the rest stand on a front of price, hours, days until use and margin of
 * the weakest need, and are never added up into one score. Without an option in the job there is nothing to try them
 * with, and the answer is nothing.
 */
export function rankSystems(input: PlanInput, { working = false }: Ranking = {}): SystemsRanked | undefined {
  const { job, catalogue, priceBook, weather, calibrated, now, seed = 1 } = input;
  const base = job.options.find(({ accepted }) => accepted) ?? job.options[0];
  if (!base) return undefined;
  const shelf = new Shelf(working);
  const root = working ? new Trace(shelf, '', false) : new QuickTrace(shelf, '', false);
  const step: StepContext = { job, catalogue, now, seed, ...(priceBook ? { priceBook } : {}) };
  const surveyed = survey(step, root.within('survey'));
  shelf.settle('all');
  const products = new Map(catalogue.products.map((one) => [one.id, one]));
  const option = asTried(base);
  const state = weather && siteStateOf(job, weather, now, calibrated);
  const sitePlan = state && site(step, state, root.within('site'));
  shelf.settle('all');
  const floor: Floor = {
    surveyed,
    shared: new Shared(surveyed, sitePlan, () => shelf.settle('all')),
    start: (base.starts ?? []).map(({ at }) => at).sort((a, b) => epochOf(a) - epochOf(b))[0] ?? now,
    ahead: state && aheadOf(option, state, now, job.place.zone),
  };
  const tried = catalogue.systems.map((one) => {
    const ctx: OptionContext = { ...step, option: { ...option, system: one.id }, system: one, products };
    const found = tryOut(ctx, floor, root.within('fits').within(one.id));
    shelf.settle(named(found));
    for (const entry of shown(found)) shelf.keep(entry);
    return found;
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
    timesFrom: floor.ahead ? 'weather' : 'sheets',
    systems: systems.sort(inOrder),
    common: surveyed.verdict.reasons.filter(({ verdict }) => verdict === 'stop' || verdict === 'not known'),
    entries: shelf.kept,
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

/** Ids that the sentences about a system name. */
function named({ reason, also, cautions, priceWhy, untilUseWhy }: Tried): ReadonlySet<string> {
  const ids = new Set<string>();
  const take = (said: Said | undefined): void => {
    for (const id of Object.values(said?.figures ?? {})) ids.add(id);
  };
  for (const one of reason ? [reason, ...also, ...cautions] : [...also, ...cautions]) {
    take(one);
    take(one.lift);
    if (one.source) ids.add(one.source);
  }
  take(priceWhy);
  take(untilUseWhy);
  return ids;
}

const shown = ({ price, hours, untilUse, weakest, margins = [] }: Tried): readonly Entry[] => [
  ...[price, hours, untilUse, weakest?.margin].flatMap((one) => one ?? []),
  ...margins.map(({ margin }) => margin),
];

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
