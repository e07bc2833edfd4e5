import { answered, type OptionPlan } from '@slabwright/core';
import ical, { ICalAlarmType, ICalCalendarMethod } from 'ical-generator';
import type { Planned } from './planned.ts';

/** Minutes before a coat at which slab and air are read, and before a window shuts. */
const READ_BEFORE = 30;
const SHUTS_IN = 30;

/**
 * The day as a calendar file (RFC 5545): a coat is an event with an alarm for the reading before it, a recoat window
 * one with an alarm before it shuts, and each stage of the return to service one at the late end of its band. Ids are
 * stable, so that a later plan moves its events instead of doubling them.
 */
export function calendarOf({ plan, voice }: Planned, option: OptionPlan): string {
  const stamp = new Date(plan.now);
  const calendar = ical({
    name: plan.title,
    prodId: { company: 'slabwright', product: 'hours', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  const event = (id: string, summary: string, start: string, end: string, alarm: number, note: string): void => {
    const made = calendar.createEvent({
      id: `${plan.job}-${option.id}-${id}@slabwright`,
      stamp,
      start: new Date(start),
      end: new Date(end),
      summary,
      description: note,
    });
    made.createAlarm({ type: ICalAlarmType.display, triggerBefore: alarm * 60, description: summary });
  };
  const lit = option.day && answered(option.day) ? option.day : undefined;
  for (const coat of lit?.coats ?? []) {
    const { start, milestones, name, layer } = coat;
    if (!start) continue;
    const care = start.verdict.reasons.map((reason) => voice.say(reason)).join('\n');
    event(`${layer}-lay`, `${name}: lay. Read slab and air first`, start.at, start.laid, READ_BEFORE, care);
    const opens = milestones.find(({ what }) => what === 'recoat opens');
    const closes = milestones.find(({ what }) => what === 'recoat closes');
    if (opens && closes && opens.last.at < closes.first.low)
      event(
        `${layer}-recoat`,
        `${name}: recoat window shuts`,
        closes.first.low,
        closes.first.at,
        SHUTS_IN,
        `Open from ${opens.last.at.slice(0, 16).replace('T', ' ')}.`,
      );
  }
  const last = lit?.coats.at(-1);
  for (const { what, last: span, holds } of last?.milestones ?? []) {
    if (!['foot', 'light', 'vehicle', 'full'].includes(what)) continue;
    const late = span.high ?? span.at;
    const end = new Date(Date.parse(late) + 15 * 60_000).toISOString();
    event(`service-${what}`, `${plan.title}: ${what}`, late, end, 0, holds.map((said) => voice.say(said)).join('\n'));
  }
  return calendar.toString();
}
