/** Dates and times as a person here reads them. */

const day = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' });

/** `Wed 13 May` of an instant as written, in its own offset. */
export const dayText = (instant: string): string =>
  day.format(new Date(`${instant.slice(0, 10)}T12:00:00Z`)).replace(',', '');

export const clockText = (instant: string): string => instant.slice(11, 16);

export const momentText = (instant: string): string => `${dayText(instant)} ${clockText(instant)}`;

/** A moment of this device's own clock: the time today, else the day. */
export function sinceText(instant: string, now: Date = new Date()): string {
  const at = new Date(instant);
  const two = (value: number): string => String(value).padStart(2, '0');
  const time = `${two(at.getHours())}:${two(at.getMinutes())}`;
  if (at.toDateString() === now.toDateString()) return time;
  const local = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return at.getFullYear() === now.getFullYear() ? `${dayText(local)} ${time}` : `${dayText(local)} ${at.getFullYear()}`;
}
