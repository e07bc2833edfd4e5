import type { JobOption } from '../../job.ts';
import { epochOf, fromLocal, instantIn, steadyOffset } from '../../kernel/instant.ts';

export interface Workday {
  /** Clock times, `07:30`. */
  readonly from: string;
  readonly until: string;
}

/** Assumed where the option names none: common practice. */
export const USUAL_WORKDAY: Workday = { from: '07:30', until: '18:00' };

export const workdayOf = (option: JobOption): Workday => option.workday ?? USUAL_WORKDAY;

const DAY_MS = 86_400_000;
const HALF_DAY_MS = DAY_MS / 2;

const offsetOf = (instant: string): string => instant.slice(19);
const dateOfDay = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);
const dayOfDate = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;
/** `07:30` in ms after midnight. */
const msOf = (clock: string): number => (Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5))) * 60_000;

/** A clock time on a date; in the night the clocks change the later of two, and the first moment after a gap. */
function onClockChange(day: number, clock: string, zone: string): number {
  const date = dateOfDay(day);
  // Noon before and after in one offset: no clock changed in between, and the time is plain arithmetic.
  const noon = day * DAY_MS + HALF_DAY_MS;
  const [before, after] = [offsetOf(instantIn(noon - DAY_MS, zone)), offsetOf(instantIn(noon + DAY_MS, zone))];
  if (before === after) return Date.parse(`${date}T${clock}:00${before}`);
  const local = fromLocal(`${date}T${clock}:00`, zone);
  if (local.kind === 'one') return epochOf(local.instant);
  return epochOf(local.kind === 'two' ? local.second : local.after);
}

/** Clock times already asked of the calendar, and how many are kept: each plan asks for the same few nights. */
const asked = new Map<string, number>();
const MOST_ASKED = 500;

/** The same; on nearly every day of a year the offset holds from one noon to the next but one. */
function at(day: number, clock: string, zone: string): number {
  const noon = day * DAY_MS + HALF_DAY_MS;
  const before = steadyOffset(noon - DAY_MS, zone);
  if (before !== undefined && before === steadyOffset(noon + DAY_MS, zone)) return day * DAY_MS + msOf(clock) - before;
  const key = `${day} ${clock} ${zone}`;
  const known = asked.get(key);
  if (known !== undefined) return known;
  const found = onClockChange(day, clock, zone);
  if (asked.size >= MOST_ASKED) asked.clear();
  asked.set(key, found);
  return found;
}

/** The stretches a crew works in between two moments, ms since 1970, every day of the week. */
export function workingHours(
  workday: Workday,
  zone: string,
  from: number,
  to: number,
): readonly { readonly from: number; readonly to: number }[] {
  const out: { from: number; to: number }[] = [];
  const last = dayOfDate(instantIn(to, zone).slice(0, 10));
  for (let day = dayOfDate(instantIn(from, zone).slice(0, 10)); day <= last; day++) {
    const begin = at(day, workday.from, zone);
    const end = at(day, workday.until, zone);
    // A night shift ends on the next morning.
    out.push({ from: begin, to: end > begin ? end : at(day + 1, workday.until, zone) });
  }
  return out;
}
