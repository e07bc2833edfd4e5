import { epochOf, type Instant, instantIn } from '../../kernel/instant.ts';
import { checkCase, type SpreadCase, spreadProblem } from '../../spread/index.ts';
import type { OptionContext, productOf } from '../context.ts';
import { workdayOf, workingHours } from '../day/workday.ts';
import { type Hours, leastMinutes } from './days.ts';

/** Least minutes of a floor whatever the hour: 0 where the case has to be mended first. */
export function minutesFor(floor: Omit<SpreadCase, 'clock' | 'openTimeAssumed'>): number {
  const clock: SpreadCase['clock'] = { startMin: 0, workingMin: [[0, 1]], openMin: [[0, 1]] };
  const question = { ...floor, clock };
  return checkCase(question).length > 0 ? 0 : leastMinutes(spreadProblem(question, 'clipped'));
}

const DAY_MS = 86_400_000;
/** Days looked ahead for a floor of several days. */
const DAYS_AHEAD = 31;

/** Working hours from a moment on, the first with it inside or ahead. */
export const hoursFrom = (ctx: OptionContext, at: number): readonly Hours[] =>
  workingHours(workdayOf(ctx.option), ctx.job.place.zone, at - DAY_MS, at + DAYS_AHEAD * DAY_MS).filter(
    ({ to }) => to > at,
  );

/** A start that was chosen before the day's hours begins that day early; one after them waits for the next morning. */
export function withStart(hours: readonly Hours[], begun: number, zone: string): readonly Hours[] {
  const [first, ...rest] = hours;
  if (!first || begun >= first.from) return hours;
  const date = (at: number): string => instantIn(at, zone).slice(0, 10);
  return date(begun) === date(first.from) ? [{ ...first, from: begun }, ...rest] : hours;
}

/** A later part that would run past the end of the day, and fits one, waits for the morning. */
export function morningFor(after: Instant, needed: number, [today, next]: readonly Hours[], zone: string): Instant {
  const at = epochOf(after);
  if (!today || !next || at + needed * 60_000 <= today.to || needed * 60_000 > next.to - next.from) return after;
  return instantIn(at < today.from ? today.from : next.from, zone);
}

/** ms until the film carries a person, by the longest time on the sheet; undefined where it has none. */
export function walkableAfter(product: ReturnType<typeof productOf>): number | undefined {
  const times = (product.times ?? []).filter(({ what }) => what === 'foot').map(({ value }) => value.value * 1000);
  return times.length > 0 ? Math.max(...times) : undefined;
}
