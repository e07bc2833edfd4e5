import { tabled } from '../../data/tabled.ts';
import { epochOf, instantIn } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { type OptionContext, productOf } from '../context.ts';
import { workdayOf, workingHours } from '../day/workday.ts';
import { onSiteTime, paidOnSite, shortOf } from '../formulas/day.ts';
import { personTime } from '../formulas/hours-tasks.ts';
import type { Work } from '../hours/index.ts';
import type { ScheduledTask, ScheduledWait, SchedulePlan } from '../results.ts';
import { type Coated, coated } from './coats.ts';
import { type Phases, phasesOf } from './phases.ts';
import { preparationFrom } from './preparation.ts';
import { daysOf, waitsOf } from './waits.ts';

const DAY_MS = 86_400_000;
/** Travel of one hand on one day, where the firm gives no paid hours: common practice. */
const TRAVEL = { typical: '1 h', low: '0.5 h', high: '2 h' } as const;

export type { Coated } from './coats.ts';
export { coated } from './coats.ts';

/** Coats as their sheets alone place them: at the starts chosen, else as soon as the sheet lets them follow. */
function bySheet(ctx: OptionContext, phases: Phases): readonly Coated[] {
  return phases.coats.map((phase, i) => {
    const layer = ctx.system.layers[i];
    const product = layer && productOf(ctx, layer);
    const start = ctx.option.starts?.find((one) => one.layer === phase.layer)?.at;
    const longest = (what: string): number =>
      Math.max(0, ...(product?.times ?? []).filter((time) => time.what === what).map(({ value }) => value.value));
    return {
      phase,
      ...(start ? { start: epochOf(start) } : {}),
      opensAfter: (longest('recoat from') || longest('foot')) * 1000,
      bearsAfter: longest('foot') * 1000,
    };
  });
}

/**
 * Who does what when: preparation up to the first coat, each coat at its start, what lies between them when the film
 * bears it, joints and handing over at the end. Working hours are kept; waiting is shown, not hidden.
 */
export function schedule(
  ctx: OptionContext,
  work: Work,
  fromDay: readonly Coated[] | undefined,
  trace: Trace,
): SchedulePlan {
  const { zone } = ctx.job.place;
  const now = epochOf(ctx.now);
  const phases = phasesOf(
    work.tasks,
    ctx.system.layers.map(({ id }) => id),
  );
  const coats = fromDay ?? bySheet(ctx, phases);
  const firstStart = coats[0]?.start;
  const begin = Math.min(now, firstStart ?? now);
  const stretches = workingHours(workdayOf(ctx.option), zone, begin - DAY_MS, begin + 200 * DAY_MS);
  const crew = { people: ctx.option.people, hours: stretches };
  const prepared = preparationFrom(phases.preparation, crew, now, firstStart);
  const laid = coated(coats, crew, prepared.end, phases.closing);
  const segments = [...prepared.segments, ...laid.segments].sort((a, b) => a.from - b.from || a.hand - b.hand);
  const days = daysOf(segments, zone);
  const people = trace.given('people', { value: ctx.option.people, unit: '1', origin: 'chosen', shows: 'count' });
  const onSite = days.map(({ from, to }, i) =>
    trace.figure(`day.${i}.on-site`, onSiteTime, {
      people,
      longest: trace.taken(`day.${i}.span`, shortOf, {
        value: (to - from) / 1000,
        unit: 's',
        shows: 'duration',
        inputs: {},
      }),
    }),
  );
  const instant = (at: number): string => instantIn(at, zone);
  const waits = waitsOf(segments, ctx.option.people, zone);
  const tasks = segments.map(
    ({ task, hand, from, to }): ScheduledTask => ({
      task: task.id,
      work: task.work,
      ...(task.area ? { area: task.area } : {}),
      ...(task.layer ? { layer: task.layer } : {}),
      who: `${hand + 1}`,
      from: instant(from),
      until: instant(to),
    }),
  );
  const last = segments.reduce((most, { to }) => Math.max(most, to), Number.NEGATIVE_INFINITY);
  const complete = segments.length > 0 && !laid.stuck;
  const paid = complete && fromDay ? paidFigure(trace, onSite, days.length * ctx.option.people) : undefined;
  return {
    verdict: verdictOf(reasonsOf(ctx, work, phases, crew, now, firstStart), ctx.job.overrides),
    missing: [],
    notes: [
      ...(laid.stuck ? [{ code: 'schedule-coat-without-start', names: { layer: nameOf(ctx, laid.stuck) } }] : []),
      ...(fromDay ? [] : [{ code: 'schedule-without-weather' }]),
      ...(ctx.option.workday ? [] : [{ code: 'schedule-workday-assumed' }]),
    ],
    from: fromDay ? 'weather' : coats.every(({ start }) => start !== undefined) ? 'chosen starts' : 'sheet times',
    tasks,
    waits: waits.map(
      ({ hand, from, to, layer }): ScheduledWait => ({
        who: `${hand + 1}`,
        from: instant(from),
        until: instant(to),
        ...(layer ? { layer } : {}),
      }),
    ),
    ...(segments[0] ? { begins: instant(segments[0].from), ends: instant(last) } : {}),
    onSite,
    ...(waits.length > 0
      ? {
          waiting: trace.figure('waiting', personTime, {
            times: waits.map(({ from, to }, i) =>
              trace.taken(`wait.${i}`, shortOf, {
                value: (to - from) / 1000,
                unit: 's',
                shows: 'duration',
                inputs: {},
              }),
            ),
          }),
        }
      : {}),
    ...(paid ? { paid } : {}),
  };
}

const nameOf = (ctx: OptionContext, layer: string): string =>
  ctx.system.layers.find(({ id }) => id === layer)?.name ?? layer;

function paidFigure(trace: Trace, onSite: SchedulePlan['onSite'], count: number) {
  const travel = trace.given('travel', {
    value: tabled(TRAVEL.typical, 's'),
    unit: 's',
    origin: 'assumed',
    typed: TRAVEL.typical,
    source: 'hours-common-practice',
    says: 'schedule-travel-assumed',
    shows: 'duration',
    band: [tabled(TRAVEL.low, 's'), tabled(TRAVEL.high, 's')],
    causes: { travel: (tabled(TRAVEL.high, 's') - tabled(TRAVEL.low, 's')) / 2.563 },
  });
  const personDays = trace.given('person-days', { value: count, unit: '1', origin: 'chosen', shows: 'count' });
  return trace.figure('paid', paidOnSite, { times: onSite, personDays, travel });
}

/** A crew as slow as one in ten would be late for the first coat. */
function reasonsOf(
  ctx: OptionContext,
  { personTime: worked }: Work,
  phases: Phases,
  crew: Parameters<typeof preparationFrom>[1],
  now: number,
  firstStart: number | undefined,
): readonly Reason[] {
  if (firstStart === undefined || firstStart <= now || !worked.band || worked.value <= 0) return [];
  const slower = worked.band[1] / worked.value;
  const usual = preparationFrom(phases.preparation, crew, now, firstStart);
  const from = usual.segments[0]?.from;
  if (from === undefined || usual.end > firstStart) return [];
  const slow = preparationFrom(phases.preparation, crew, from, undefined, slower);
  if (slow.end <= firstStart) return [];
  const name = ctx.system.layers[0]?.name ?? ctx.system.layers[0]?.id ?? '';
  const at = instantIn(Math.round(slow.end / 60_000) * 60_000, ctx.job.place.zone)
    .slice(0, 16)
    .replace('T', ' ');
  const code = 'schedule-slow-crew';
  return [{ verdict: 'caution', code, names: { layer: name, at }, lift: { code: `${code}-lift` } }];
}
