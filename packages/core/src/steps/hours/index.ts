import type { Figure } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import { personTime } from '../formulas/hours-tasks.ts';
import type {
  DayPlan,
  HoursPlan,
  PreparationPlan,
  QuantitiesPlan,
  SchedulePlan,
  SitePlan,
  SurveyPlan,
  SystemPlan,
  Task,
} from '../results.ts';
import { deadlines } from './deadlines.ts';
import { promiseReasons, withForecast } from './forecast.ts';
import { gateOf } from './gate.ts';
import { handsReasons } from './hands.ts';
import { paidFor } from './paid.ts';
import { readingsOf } from './readings.ts';
import { allTasks } from './tasks.ts';

/** Facts of the day that nothing may be assumed for: when a coat starts, and the climate around it. */
function unread(ctx: OptionContext, gates: HoursPlan['gates']): readonly Missing[] {
  const codes = new Set(gates.flatMap(({ verdict }) => verdict.reasons.map(({ code }) => code)));
  const at = ctx.job.options.findIndex(({ id }) => id === ctx.option.id);
  const held = (path: string, name: string): Missing => ({
    path,
    fact: { code: `hours-${name}-missing` },
    changes: { code: 'hours-gate-changes' },
    meanwhile: 'held',
  });
  const night = codes.has('hours-night-not-read') || codes.has('hours-night-not-read-to-the-end');
  return [
    ...(codes.has('hours-no-start') ? [held(`options.${at}.starts`, 'start')] : []),
    ...(codes.has('hours-no-reading') ? [held('survey.climate', 'reading')] : []),
    ...(night ? [held('survey.climate', 'night')] : []),
  ];
}

/** Grinding that may not be planned yet, or work without a rate: the sum of hours is then too small, and says so. */
function leftOut(surveyed: SurveyPlan, prepared: PreparationPlan): readonly Reason[] {
  const unrated = prepared.missing.some(({ path, meanwhile }) => path === 'catalogue.rates' && meanwhile === 'held');
  const toCut = surveyed.areas.some(({ cracks, joints }) => cracks.length + joints.length > 0);
  const held = surveyed.removal === 'held' || (surveyed.cutting === 'held' && toCut);
  if (!held && !unrated) return [];
  const code = 'hours-preparation-left-out';
  return [{ verdict: 'not known', code, lift: { code: `${code}-lift` } }];
}

/** Tasks of the option with their person-time: what windows and schedule are laid out of. */
export interface Work {
  readonly tasks: readonly Task[];
  readonly notes: readonly Said[];
  readonly personTime: Figure<'s'>;
}

export function workOf(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  prepared: PreparationPlan,
  fitted: SystemPlan,
  quantified: QuantitiesPlan,
  trace: Trace,
): Work {
  const { tasks, notes } = allTasks(ctx, surveyed, prepared, fitted, quantified, trace);
  return {
    tasks,
    notes,
    personTime: trace.figure('person-time', personTime, { times: tasks.map(({ time }) => time) }),
  };
}

/** What the weather said: absent where none was given. */
export interface Forecast {
  readonly site: SitePlan;
  readonly day: DayPlan;
  readonly schedule?: SchedulePlan;
}

/**
 * Work, time and the gate of each coat for one option. Person-time is the sum of the tasks and carries the band of
 * their rates; the time paid for is the firm's own figure, else what the schedule has hands on site for, else that sum
 * with an assumed share for what comes beside it.
 */
export function hours(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  prepared: PreparationPlan,
  work: Work,
  trace: Trace,
  forecast?: Forecast,
): HoursPlan {
  const { tasks, notes, personTime: worked } = work;
  const paid = paidFor(ctx, worked, trace, forecast?.schedule?.paid);
  const readings = readingsOf(ctx, surveyed, trace);
  const { layers } = ctx.system;
  const gated = layers.map((layer, i) =>
    withForecast(gateOf(ctx, layer, layers[i - 1], readings, trace), layer.id, ctx, forecast),
  );
  const gates = gated.map(({ gate }) => gate);
  // Promises of the day stand on the slab's own hours; the sheet's times alone are for jobs without weather.
  const wanted = forecast ? { reasons: promiseReasons(forecast), notes: [] } : deadlines(ctx, readings, trace);
  const reasons = [
    ...leftOut(surveyed, prepared),
    ...gates.flatMap(({ verdict }) => verdict.reasons),
    ...handsReasons(ctx),
    ...paid.reasons,
    ...wanted.reasons,
    ...(forecast ? forecast.site.verdict.reasons : []),
    ...(forecast?.schedule ? forecast.schedule.verdict.reasons : []),
  ];
  return {
    verdict: verdictOf(reasons, ctx.job.overrides),
    missing: [...paid.missing, ...unread(ctx, gates)],
    notes: [
      ...notes,
      ...gated.flatMap((one) => one.notes),
      ...wanted.notes,
      ...(forecast ? [...forecast.site.notes, ...forecast.day.notes] : []),
      ...(forecast?.schedule ? forecast.schedule.notes : []),
    ],
    tasks,
    personTime: worked,
    paidTime: paid.time,
    gates,
  };
}

/** Hours of a job without weather, its tasks worked out at once. */
export function hoursAlone(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  prepared: PreparationPlan,
  fitted: SystemPlan,
  quantified: QuantitiesPlan,
  trace: Trace,
): HoursPlan {
  return hours(ctx, surveyed, prepared, workOf(ctx, surveyed, prepared, fitted, quantified, trace), trace);
}
