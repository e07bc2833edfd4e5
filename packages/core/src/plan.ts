import type { Catalogue } from './catalogue.ts';
import { untilSettled } from './hours-and-spread.ts';
import type { Job, JobOption } from './job.ts';
import type { Entry, Figure, FigureList, Given, Series } from './kernel/entry.ts';
import { epochOf, type Instant } from './kernel/instant.ts';
import { FormulaRefused } from './kernel/refusal.ts';
import type { Said } from './kernel/said.ts';
import { Ledger, type Recorder, Trace } from './kernel/trace.ts';
import { type Reason, type Verdict, type VerdictWord, worst } from './kernel/verdict.ts';
import type { PriceBook } from './price-book.ts';
import { coats } from './steps/coats/index.ts';
import type { OptionContext, StepContext } from './steps/context.ts';
import type { Handled } from './steps/cracks/handled.ts';
import { cracks, treated } from './steps/cracks/index.ts';
import { day } from './steps/day/index.ts';
import { coatsOfDay } from './steps/day/scheduled.ts';
import { site } from './steps/day/site.ts';
import { type SiteState, siteStateOf } from './steps/day/site-state.ts';
import { saidOf } from './steps/day/weather-rows.ts';
import { governs } from './steps/governs/index.ts';
import { hours, workOf } from './steps/hours/index.ts';
import { needs } from './steps/needs/index.ts';
import { preparation } from './steps/preparation/index.ts';
import { price } from './steps/price/index.ts';
import { quantities } from './steps/quantities/index.ts';
import type {
  CoatsPlan,
  CracksPlan,
  DayPlan,
  GovernsPlan,
  HoursPlan,
  NeedsPlan,
  PreparationPlan,
  PricePlan,
  QuantitiesPlan,
  SafetyPlan,
  SchedulePlan,
  SitePlan,
  SpreadsPlan,
  StepBase,
  SurveyPlan,
  SystemPlan,
  ThinnerPlan,
} from './steps/results.ts';
import { safety } from './steps/safety/index.ts';
import { type Coated, schedule } from './steps/schedule/index.ts';
import {
  pouredTimes,
  type SpreadObserver,
  type SpreadProgress,
  type SpreadRound,
  type SpreadSearch,
  type SpreadSeen,
  spreads,
} from './steps/spread/index.ts';
import { withRounds } from './steps/spread/rounds.ts';
import { survey } from './steps/survey/index.ts';
import { system } from './steps/system/index.ts';
import { thinner } from './steps/thinner/index.ts';
import type { WeatherFile } from './weather.ts';

/** The plan as it leaves the core: every number stands once in `entries`; everywhere else stands its id. */

export const PLAN_SCHEMA = 'slabwright.plan/1';
export const ENGINE = '0.1.0';

export type EntryId = string;

/** A step result with ids in place of its Figures. Outlines stay: they are a drawing. */
export type Published<T> = T extends Figure | Given | FigureList | Series
  ? EntryId
  : T extends string | number | boolean | undefined
    ? T
    : T extends readonly [infer A, infer B]
      ? readonly [Published<A>, Published<B>]
      : T extends readonly (infer E)[]
        ? readonly Published<E>[]
        : { readonly [K in keyof T]: Published<T[K]> };

/** A step that could not answer at all keeps its verdict and says why. */
export interface Unanswered extends StepBase {
  readonly unanswered: true;
}
export type Answer<T> = Published<T> | Unanswered;

export interface OptionPlan {
  readonly id: string;
  readonly name: string;
  readonly systemId: string;
  readonly accepted: boolean;
  readonly people: EntryId;
  readonly verdict: VerdictWord;
  /** True while a fact that may never be assumed is missing: nothing here says more than "if". */
  readonly conditional: boolean;
  /** What the use asks of the floor, held against the sheets of this option. */
  readonly needs: Answer<NeedsPlan>;
  readonly preparation: Answer<PreparationPlan>;
  readonly system: Answer<SystemPlan>;
  /** The weakest link of concrete and coats. */
  readonly governs: Answer<GovernsPlan>;
  readonly thinner: Answer<ThinnerPlan>;
  readonly cracks: Answer<CracksPlan>;
  readonly quantities: Answer<QuantitiesPlan>;
  /** Windows and starts; only where weather was given. */
  readonly day?: Answer<DayPlan>;
  readonly schedule: Answer<SchedulePlan>;
  readonly hours: Answer<HoursPlan>;
  readonly coats: Answer<CoatsPlan>;
  /** Order of pours; only where it was asked for. */
  readonly spread?: Answer<SpreadsPlan>;
  readonly safety: Answer<SafetyPlan>;
  readonly price: Answer<PricePlan>;
}

export interface Plan {
  readonly schema: typeof PLAN_SCHEMA;
  readonly engine: string;
  readonly job: string;
  readonly title: string;
  readonly now: Instant;
  readonly currency?: string;
  readonly verdict: VerdictWord;
  readonly survey: Answer<SurveyPlan>;
  /** Slab, dew point and air of the days ahead; only where weather was given. */
  readonly site?: Answer<SitePlan>;
  readonly options: readonly OptionPlan[];
  readonly entries: Readonly<Record<EntryId, Entry>>;
}

export interface PlanInput {
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly priceBook?: PriceBook;
  readonly weather?: WeatherFile;
  /** The site as an earlier plan worked it out (`siteStateOf`): what still holds of it is not worked out again. */
  readonly calibrated?: SiteState;
  readonly now: Instant;
  readonly seed?: number;
  /** How hard to look for the order of pours of the leading option, by name or in candidates; absent: not at all. */
  readonly spread?: 'none' | SpreadSearch;
  /** Told the squares behind each coat as it is planned; the plan itself keeps only what is shown. */
  readonly onSpread?: (seen: SpreadSeen & { readonly option: string }) => void;
  /** Told how far each search is; answering false stops it with the best order so far. */
  readonly onSpreadProgress?: SpreadProgress;
}

export const answered = <T extends object>(answer: T | Unanswered): answer is T => !('unanswered' in answer);

const isEntry = (value: object): value is Entry => 'kind' in value && 'id' in value && 'unit' in value;

function published<T>(value: T): Published<T> {
  if (value === null || typeof value !== 'object') return value as Published<T>;
  if (Array.isArray(value)) return value.map((one) => published(one)) as Published<T>;
  if (isEntry(value)) return value.id as Published<T>;
  const shown: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) if (inner !== undefined) shown[key] = published(inner);
  return shown as Published<T>;
}

type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: Unanswered };

/**
 * Runs a step. Where a law refuses a number the step answers "not known" with the reason, and the others go on;
 * anything else that is thrown is a mistake of ours and is not caught.
 */
function attempt<T>(step: () => T): Outcome<T> {
  try {
    return { ok: true, value: step() };
  } catch (trouble) {
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    const { formula, input = '', code } = trouble.refusal;
    return { ok: false, why: unanswered({ code: 'formula-refused', names: { formula, input, why: code } }) };
  }
}

function unanswered(said: Said): Unanswered {
  const reason: Reason = { ...said, verdict: 'not known' };
  const verdict: Verdict = { word: 'not known', reasons: [reason] };
  return { unanswered: true, verdict, missing: [], notes: [] };
}

const waitsFor = (step: string): Outcome<never> => ({
  ok: false,
  why: unanswered({ code: 'step-waits', names: { step: `@step-${step}` } }),
});

/** Steps that need earlier answers run only when all of them are there. */
function chain<A, T>(step: string, before: Outcome<A>, run: (value: A) => T): Outcome<T> {
  return before.ok ? attempt(() => run(before.value)) : waitsFor(step);
}

const both = <A, B>(a: Outcome<A>, b: Outcome<B>): Outcome<readonly [A, B]> =>
  a.ok ? (b.ok ? { ok: true, value: [a.value, b.value] } : b) : a;

const answerOf = <T>(outcome: Outcome<T>): Answer<T> => (outcome.ok ? published(outcome.value) : outcome.why);
const baseOf = (outcome: Outcome<StepBase>): StepBase => (outcome.ok ? outcome.value : outcome.why);

/** The site's hours where weather was given. */
interface Sited {
  readonly state: SiteState;
  readonly plan: SitePlan;
}

function planOption(
  ctx: StepContext,
  option: JobOption,
  surveyed: Outcome<SurveyPlan>,
  sited: Outcome<Sited> | undefined,
  search: 'none' | SpreadSearch,
  trace: Trace,
  recorder: Recorder,
  observe?: SpreadObserver,
  progress?: SpreadProgress,
): OptionPlan {
  const chosen = ctx.catalogue.systems.find((s) => s.id === option.system);
  if (!chosen) throw new Error(`option ${option.id} names a system that the check let through: ${option.system}`);
  const products = new Map(ctx.catalogue.products.map((p) => [p.id, p]));
  const optionCtx: OptionContext = { ...ctx, option, system: chosen, products };
  const people = trace.given('people', { value: option.people, unit: '1', origin: 'chosen', shows: 'count' });
  const at = (name: string): Trace => trace.within(name);

  const joined = chain('survey', surveyed, (s) =>
    cracks(optionCtx, s, at('cracks'), sited?.ok ? sited.value.plan : undefined),
  );
  // Preparation and hours treat each line as it was judged; where that could not be done, by its kind alone.
  const handled: Handled = joined.ok ? { ...optionCtx, lines: joined.value.cracks } : optionCtx;
  const prepared = chain('survey', surveyed, (s) => preparation(handled, s, at('preparation')));
  const asked = attempt(() => needs(optionCtx, at('needs')));
  const bonded = chain('survey', surveyed, () => governs(optionCtx, at('governs')));
  const fitted = chain('survey', surveyed, (s) => system(optionCtx, s, at('system')));
  const thinned = chain('system', fitted, (f) => thinner(optionCtx, f, at('thinner')));
  const quantified = chain('preparation', both(both(surveyed, prepared), fitted), ([[s, p], f]) =>
    quantities(handled, s, p, f, at('quantities')),
  );
  const worked = chain('quantities', both(both(both(surveyed, prepared), fitted), quantified), ([[[s, p], f], q]) =>
    workOf(handled, s, p, f, q, at('hours')),
  );
  /** What stands on the hours of the day: it is worked out again when the pours take longer than their rates said. */
  const place = (poured: ReadonlyMap<string, number>, onto: Trace) => {
    const lit =
      sited &&
      chain('quantities', both(both(sited, worked), quantified), ([[s, w], q]) =>
        day(optionCtx, s.state, s.plan, w.tasks, q, onto.within('day'), poured),
      );
    const placed = lit?.ok ? bearing(coatsOfDay(lit.value), lit.value.plan) : undefined;
    const laid = chain('hours', worked, (w) => schedule(optionCtx, w, placed, onto.within('schedule')));
    const forecast =
      sited?.ok && lit?.ok
        ? { site: sited.value.plan, day: lit.value.plan, ...(laid.ok ? { schedule: laid.value } : {}) }
        : undefined;
    const timed = chain('quantities', both(both(surveyed, prepared), worked), ([[s, p], w]) =>
      hours(optionCtx, s, p, w, onto.within('hours'), forecast),
    );
    return { lit, laid, timed };
  };
  type Placed = ReturnType<typeof place>;
  const pour = ({ lit, timed }: Placed, onto: Trace, told?: SpreadObserver, round?: SpreadRound) =>
    search === 'none'
      ? undefined
      : chain('hours', both(both(surveyed, timed), quantified), ([[s, t], q]) =>
          spreads(optionCtx, s, t, q, lit?.ok ? lit.value.plan : undefined, search, onto.within('spread'), told, round),
        );
  const traceOf = (held: Recorder): Trace => new Trace(held, trace.idOf(''), trace.bands);
  let seen: SpreadSeen[] = [];
  const settled =
    search === 'none' || !sited?.ok
      ? undefined
      : untilSettled<Placed, ReturnType<typeof pour>>(
          {
            fixed: chosen.layers.every(({ id }) => option.starts?.some(({ layer }) => layer === id)),
            place: (times, held) => place(times, traceOf(held)),
            coatsOf: ({ lit }) => (lit?.ok ? lit.value.plan.coats : []),
            pour: (placed, rough, held) => {
              const before = seen;
              seen = [];
              const told = rough ? (one: SpreadSeen) => seen.push(one) : observe;
              return pour(placed, traceOf(held), told, { before, rough, progress });
            },
            pouredBy: (spread) => (spread?.ok ? pouredTimes(spread.value) : new Map()),
          },
          recorder,
        );
  const { lit, laid, timed } = settled?.placed ?? place(new Map(), trace);
  const turned = settled ? settled.spread : pour({ lit, laid, timed }, trace, observe, { progress });
  const poured: typeof turned =
    settled && turned?.ok ? { ok: true, value: withRounds(turned.value, settled, at('spread')) } : turned;
  const mixed = chain('quantities', both(fitted, quantified), ([f, q]) =>
    coats(optionCtx, f, q, worked.ok ? worked.value.tasks : [], at('coats')),
  );
  const kept = chain('quantities', both(surveyed, quantified), ([s, q]) => safety(optionCtx, s, q, at('safety')));
  const priced = chain('hours', both(both(surveyed, quantified), timed), ([[s, q], t]) =>
    price(optionCtx, s, q, t, at('price')),
  );
  const joints = joined.ok
    ? attempt(() =>
        treated(
          optionCtx,
          joined.value,
          {
            tasks: worked.ok ? worked.value.tasks : [],
            buying: quantified.ok ? quantified.value.buying : [],
            prices: priced.ok ? priced.value.lines : [],
            day: lit?.ok ? lit.value.plan : undefined,
          },
          at('cracks'),
        ),
      )
    : joined;
  const technical = [
    surveyed,
    asked,
    prepared,
    fitted,
    bonded,
    thinned,
    joints,
    quantified,
    timed,
    ...(poured ? [poured] : []),
  ].map(baseOf);
  return {
    id: option.id,
    name: option.name,
    systemId: option.system,
    accepted: option.accepted ?? false,
    people: people.id,
    verdict: worst(technical.map((step) => step.verdict.word)),
    conditional: technical.some(
      (step) => step.verdict.word === 'not known' || step.missing.some((m) => m.meanwhile === 'held'),
    ),
    needs: answerOf(asked),
    preparation: answerOf(prepared),
    system: answerOf(fitted),
    governs: answerOf(bonded),
    thinner: answerOf(thinned),
    cracks: answerOf(joints),
    quantities: answerOf(quantified),
    ...(lit ? { day: lit.ok ? published(lit.value.plan) : lit.why } : {}),
    schedule: answerOf(laid),
    hours: answerOf(timed),
    coats: answerOf(mixed),
    ...(poured ? { spread: answerOf(poured) } : {}),
    safety: answerOf(kept),
    price: answerOf(priced),
  };
}

/** Placed coats with the moment each bears feet, on the slab's own hours. */
const bearing = (coated: readonly Coated[], { coats: days }: DayPlan): readonly Coated[] =>
  coated.map((coat, i) => {
    const foot = days[i]?.milestones.find(({ what }) => what === 'foot')?.last.at;
    return foot ? { ...coat, bears: epochOf(foot) } : coat;
  });

/** Weather that makes no hours leaves the site not known, with what is wrong with it. */
function siteOf(ctx: StepContext, state: SiteState, trace: Trace): Outcome<Sited> {
  const found = attempt(() => site(ctx, state, trace));
  if (!found.ok) return found;
  if (found.value) return { ok: true, value: { state, plan: found.value } };
  const why = unanswered({ code: 'day-weather-unusable' });
  return { ok: false, why: { ...why, notes: state.issues.map((issue) => saidOf(issue, ctx.job.place.zone)) } };
}

/**
 * Plans a job. Pure and total: the same input gives the same plan, a missing fact stops only the step that needs it.
 * The files must have passed `checkJob` and `checkCatalogue`; an id that names nothing is then a mistake of ours.
 */
export function plan(
  input: PlanInput,
  recorder: Recorder & { readonly table?: Readonly<Record<string, Entry>> } = new Ledger(),
): Plan {
  const {
    job,
    catalogue,
    priceBook,
    weather,
    calibrated,
    now,
    seed = 1,
    spread = 'none',
    onSpread,
    onSpreadProgress,
  } = input;
  const trace = new Trace(recorder);
  const ctx: StepContext = { job, catalogue, now, seed, ...(priceBook ? { priceBook } : {}) };
  const surveyed = attempt(() => survey(ctx, trace.within('survey')));
  const sited = weather && siteOf(ctx, siteStateOf(job, weather, now, calibrated), trace.within('site'));
  const lead = job.options.find(({ accepted }) => accepted) ?? job.options[0];
  const options = job.options.map((option) =>
    planOption(
      ctx,
      option,
      surveyed,
      sited,
      option === lead ? spread : 'none',
      trace.within(option.id),
      recorder,
      onSpread && ((seen) => onSpread({ ...seen, option: option.id })),
      onSpreadProgress,
    ),
  );
  const leading = options.find((o) => o.accepted) ?? options[0];
  return {
    schema: PLAN_SCHEMA,
    engine: ENGINE,
    job: job.id,
    title: job.title,
    now,
    ...(priceBook ? { currency: priceBook.currency } : {}),
    verdict: leading?.verdict ?? baseOf(surveyed).verdict.word,
    survey: answerOf(surveyed),
    ...(sited ? { site: sited.ok ? published(sited.value.plan) : sited.why } : {}),
    options,
    entries: recorder.table ?? {},
  };
}
