import type { JobOption } from '../../job.ts';
import { epochOf, fromLocal, instantIn } from '../../kernel/instant.ts';

export interface Workday {
  /** Clock times, `07:30`. */
  readonly from: string;
  readonly until: string;
}

/** Assumed where the option names none: common practice. */
export const USUAL_WORKDAY: Workday = { from: '07:30', until: '18:00' };

export const workdayOf = (option: JobOption): Workday => option.workday ?? USUAL_WORKDAY;

const offsetOf = (instant: string): string => instant.slice(19);

/** A clock time on a date; in the night the clocks change the later of two, and the first moment after a gap. */
function at(date: string, clock: string, zone: string): number {
  // Noon before and after in one offset: no clock changed in between, and the time is plain arithmetic.
  const noon = Date.parse(`${date}T12:00:00Z`);
  const [before, after] = [offsetOf(instantIn(noon - 86_400_000, zone)), offsetOf(instantIn(noon + 86_400_000, zone))];
  if (before === after) return Date.parse(`${date}T${clock}:00${before}`);
  const local = fromLocal(`${date}T${clock}:00`, zone);
  if (local.kind === 'one') return epochOf(local.instant);
  return epochOf(local.kind === 'two' ? local.second : local.after);
}

const dayAfter = (date: string): string =>
  new Date(Date.parse(`${date}T12:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

/** The stretches a crew works in between two moments, ms since 1970, every day of the week. */
export function workingHours(
  workday: Workday,
  zone: string,
  from: number,
  to: number,
): readonly { readonly from: number; readonly to: number }[] {
  const out: { from: number; to: number }[] = [];
  let date = instantIn(from, zone).slice(0, 10);
  const last = instantIn(to, zone).slice(0, 10);
  while (date <= last) {
    const begin = at(date, workday.from, zone);
    let end = at(date, workday.until, zone);
    // A night shift ends on the next morning.
    if (end <= begin) end = at(dayAfter(date), workday.until, zone);
    out.push({ from: begin, to: end });
    date = dayAfter(date);
  }
  return out;
}
