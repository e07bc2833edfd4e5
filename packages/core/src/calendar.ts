import { epochOf, type Instant } from './kernel/instant.ts';
import type { Said } from './kernel/said.ts';
import { answered, type OptionPlan, type Plan, type Published } from './plan.ts';
import type { CoatDay, CoatMilestone, ScheduledTask } from './steps/results.ts';

/** The day as events of a calendar: data with codes, which a shell writes into whatever file it likes. */

export interface CalendarEvent {
  /** Stable from plan to plan, so that a later calendar moves its events instead of doubling them. */
  readonly id: string;
  readonly from: Instant;
  readonly until: Instant;
  readonly says: Said;
  readonly notes: readonly Said[];
  /** Minutes before `from` at which it rings; absent where nobody need be called. */
  readonly alarm?: number;
}

export interface PlanCalendar {
  readonly title: string;
  /** The moment the plan was made for. */
  readonly made: Instant;
  readonly events: readonly CalendarEvent[];
}

/** Minutes before a coat at which slab and air are read, and before a window shuts. */
const READ_BEFORE = 30;
const SHUTS_IN = 30;
/** Minutes before the lowest margin of a night. */
const LOW_SOON = 15;
/** How long an event lasts that is a moment, minutes. */
const MOMENT = 15;

const SERVICE = new Set(['foot', 'light', 'vehicle', 'full']);

/** `2026-05-13T22:10:00-06:00` as it is said. */
const spoken = (at: Instant): string => at.slice(0, 16).replace('T', ' ');

const later = (at: Instant, minutes: number): Instant => new Date(epochOf(at) + minutes * 60_000).toISOString();

/**
 * The events of one option: days on site, each coat with a reading before it, the lowest margin above the dew point,
 * the recoat window before it shuts, and each stage of the return to service at the late end of its band.
 */
export function calendarOf(plan: Plan, option: OptionPlan): PlanCalendar {
  const day = option.day && answered(option.day) ? option.day : undefined;
  const tasks = answered(option.schedule) ? option.schedule.tasks : [];
  const coats = day?.coats ?? [];
  const own = [
    ...onSite(tasks, option.people),
    ...coats.flatMap((coat, i) => ofCoat(coat, i < coats.length - 1)),
    ...(coats.at(-1)?.milestones ?? []).flatMap((stage) => inService(stage, plan.title)),
  ];
  const events = own.map((event) => ({ ...event, id: `${plan.job}-${option.id}-${event.id}` }));
  return { title: plan.title, made: plan.now, events };
}

/** A shift over midnight belongs to the day it began. */
function onSite(tasks: readonly Published<ScheduledTask>[], people: string): readonly CalendarEvent[] {
  const days = new Map<string, { from: Instant; until: Instant }>();
  for (const { from, until } of tasks) {
    const date = from.slice(0, 10);
    const known = days.get(date) ?? { from, until };
    if (epochOf(from) < epochOf(known.from)) known.from = from;
    if (epochOf(until) > epochOf(known.until)) known.until = until;
    days.set(date, known);
  }
  return [...days.values()].map(({ from, until }, i) => ({
    id: `site-${i + 1}`,
    from,
    until,
    says: { code: 'calendar-on-site', figures: { people } },
    notes: [],
  }));
}

function ofCoat(coat: Published<CoatDay>, more: boolean): readonly CalendarEvent[] {
  const { start, milestones, name, layer } = coat;
  if (!start) return [];
  const names = { layer: name };
  const opens = milestones.find(({ what }) => what === 'recoat opens');
  const closes = milestones.find(({ what }) => what === 'recoat closes');
  const shuts =
    more && opens && closes && epochOf(opens.last.at) < epochOf(closes.first.low)
      ? { opens: opens.last.at, low: closes.first.low, at: closes.first.at }
      : undefined;
  return [
    {
      id: `${layer}-lay`,
      from: start.at,
      until: start.laid,
      says: { code: 'calendar-lay', names },
      notes: start.verdict.reasons,
      alarm: READ_BEFORE,
    },
    ...(start.margin && start.marginAt
      ? [
          {
            id: `${layer}-margin`,
            from: start.marginAt,
            until: later(start.marginAt, MOMENT),
            says: { code: 'calendar-lowest-margin', names, figures: { margin: start.margin } },
            notes: [],
            alarm: LOW_SOON,
          },
        ]
      : []),
    ...(shuts
      ? [
          {
            id: `${layer}-recoat`,
            from: shuts.low,
            until: shuts.at,
            says: { code: 'calendar-recoat-shuts', names },
            notes: [{ code: 'calendar-recoat-open-from', names: { at: spoken(shuts.opens) } }],
            alarm: SHUTS_IN,
          },
        ]
      : []),
  ];
}

function inService({ what, last, holds }: Published<CoatMilestone>, title: string): readonly CalendarEvent[] {
  if (!SERVICE.has(what)) return [];
  const late = last.high ?? last.at;
  const says: Said = { code: 'calendar-in-service', names: { title, use: `@calendar-use-${what}` } };
  return [{ id: `service-${what}`, from: late, until: later(late, MOMENT), says, notes: holds, alarm: 0 }];
}
