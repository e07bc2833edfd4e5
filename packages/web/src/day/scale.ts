/** The day as a line: moments to pixels. Times are milliseconds since 1970; words come from the instants' own offset. */

export interface DayScale {
  readonly start: number;
  readonly end: number;
  readonly left: number;
  readonly right: number;
  x(time: number): number;
  timeAt(x: number): number;
}

export function dayScale(start: number, end: number, left: number, right: number): DayScale {
  const span = Math.max(end - start, 1);
  const width = Math.max(right - left, 1);
  return {
    start,
    end,
    left,
    right,
    x: (time) => left + ((time - start) / span) * width,
    timeAt: (x) => start + ((x - left) / width) * span,
  };
}

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;

/** Offset written in an instant, in milliseconds: `-06:00`, `+01:00` or `Z`. */
export function offsetOf(instant: string): number {
  const found = /([+-])(\d{2}):(\d{2})$/.exec(instant);
  if (!found) return 0;
  const [, sign, hours, minutes] = found;
  return (sign === '-' ? -1 : 1) * (Number(hours) * HOUR + Number(minutes) * MINUTE);
}

export const epoch = (instant: string): number => Date.parse(instant);

/** Wall-clock text of a moment at an offset: `11:45`. */
export const clock = (time: number, offset: number): string => new Date(time + offset).toISOString().slice(11, 16);

/** Calendar date at an offset: `2026-05-13`. */
export const dateAt = (time: number, offset: number): string => new Date(time + offset).toISOString().slice(0, 10);

/** An instant with the offset kept. */
export function instantAt(time: number, offset: number): string {
  const local = new Date(time + offset).toISOString().slice(0, 19);
  if (offset === 0) return `${local}Z`;
  const size = Math.abs(offset);
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  return `${local}${offset < 0 ? '-' : '+'}${two(size / HOUR)}:${two((size % HOUR) / MINUTE)}`;
}

const floorTo = (time: number, step: number, offset: number): number =>
  Math.floor((time + offset) / step) * step - offset;
const ceilTo = (time: number, step: number, offset: number): number => -floorTo(-time, step, -offset);

/** Whole hours, even in steps that leave `least` pixels between labels. */
export function ticks(scale: DayScale, offset: number, least: number): readonly number[] {
  const perHour = (scale.right - scale.left) / ((scale.end - scale.start) / HOUR);
  const step = [1, 2, 3, 6, 12, 24].find((hours) => hours * perHour >= least) ?? 24;
  const found: number[] = [];
  for (let time = ceilTo(scale.start, step * HOUR, offset); time <= scale.end; time += step * HOUR) found.push(time);
  return found;
}

/** What the ribbon spans: from the first thing of the day to the last, on whole two hours, at least twelve hours. */
export function daySpan(moments: readonly number[], offset: number): readonly [start: number, end: number] | null {
  if (moments.length === 0) return null;
  const start = floorTo(Math.min(...moments), 2 * HOUR, offset);
  const end = Math.max(ceilTo(Math.max(...moments), 2 * HOUR, offset), start + 12 * HOUR);
  return [start, end];
}
