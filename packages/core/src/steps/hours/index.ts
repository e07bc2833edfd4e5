import type { Missing } from '../../kernel/missing.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import { personTime } from '../formulas/hours-tasks.ts';
import type { HoursPlan, PreparationPlan, QuantitiesPlan, SurveyPlan, SystemPlan } from '../results.ts';
import { deadlines } from './deadlines.ts';
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

/**
 * Work, time and the gate of each coat for one option. Person-time is the sum of the tasks and carries the band of
 * their rates; the time paid for is the firm's own figure, or that sum with an assumed share for what comes beside it.
 */
export function hours(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  prepared: PreparationPlan,
  fitted: SystemPlan,
  quantified: QuantitiesPlan,
  trace: Trace,
): HoursPlan {
  const { tasks, notes } = allTasks(ctx, surveyed, prepared, fitted, quantified, trace);
  const worked = trace.figure('person-time', personTime, { times: tasks.map(({ time }) => time) });
  const paid = paidFor(ctx, worked, trace);
  const readings = readingsOf(ctx, surveyed, trace);
  const { layers } = ctx.system;
  const gated = layers.map((layer, i) => gateOf(ctx, layer, layers[i - 1], readings, trace));
  const gates = gated.map(({ gate }) => gate);
  const wanted = deadlines(ctx, readings, trace);
  const reasons = [
    ...leftOut(surveyed, prepared),
    ...gates.flatMap(({ verdict }) => verdict.reasons),
    ...handsReasons(ctx),
    ...paid.reasons,
    ...wanted.reasons,
  ];
  return {
    verdict: verdictOf(reasons, ctx.job.overrides),
    missing: [...paid.missing, ...unread(ctx, gates)],
    notes: [...notes, ...gated.flatMap((one) => one.notes), ...wanted.notes],
    tasks,
    personTime: worked,
    paidTime: paid.time,
    gates,
  };
}
