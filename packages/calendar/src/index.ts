import { calendarOf, type OptionPlan, type Plan, type Said, type Voice } from '@slabwright/core';
import ical, { ICalAlarmType, ICalCalendarMethod } from 'ical-generator';

/** What a calendar file is called among others of the same kind. */
export const CALENDAR_TYPE = 'text/calendar';

/**
 * The hours of an option as the text of a calendar file (RFC 5545), in the words of a voice: the same in a terminal
 * and in a browser, byte for byte, since neither clock nor chance is asked.
 */
export function icsOf(plan: Plan, option: OptionPlan, voice: Voice): string {
  const { title, made, events } = calendarOf(plan, option);
  const calendar = ical({
    name: title,
    prodId: { company: 'slabwright', product: 'hours', language: voice.language.toUpperCase() },
    method: ICalCalendarMethod.PUBLISH,
  });
  const say = (said: Said): string => voice.say(said);
  for (const { id, from, until, says, notes, alarm } of events) {
    const summary = say(says);
    const event = calendar.createEvent({
      id: `${id}@slabwright`,
      stamp: new Date(made),
      start: new Date(from),
      end: new Date(until),
      summary,
      ...(notes.length > 0 ? { description: notes.map(say).join('\n') } : {}),
    });
    if (alarm !== undefined)
      event.createAlarm({ type: ICalAlarmType.display, triggerBefore: alarm * 60, description: summary });
  }
  return calendar.toString();
}
