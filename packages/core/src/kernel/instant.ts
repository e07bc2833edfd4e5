import { Temporal } from 'temporal-polyfill';

/** An instant with its offset kept, `2026-05-13T07:30:00-07:00`. Data, not a Figure. */
export type Instant = string;

/** Milliseconds since 1970 of an instant text. @throws RangeError when the text is no instant with an offset. */
export const epochOf = (instant: Instant): number => Temporal.Instant.from(instant).epochMilliseconds;

export function isInstant(text: string): boolean {
  try {
    Temporal.Instant.from(text);
    return true;
  } catch {
    return false;
  }
}

/** The same moment written with the offset of a zone, whole seconds. */
export const instantIn = (epochMilliseconds: number, zone: string): Instant =>
  Temporal.Instant.fromEpochMilliseconds(Math.round(epochMilliseconds / 1000) * 1000)
    .toZonedDateTimeISO(zone)
    .toString({ timeZoneName: 'never' });

export const addSeconds = (instant: Instant, seconds: number, zone: string): Instant =>
  instantIn(epochOf(instant) + seconds * 1000, zone);

export type LocalTime =
  | { readonly kind: 'one'; readonly instant: Instant }
  | { readonly kind: 'none'; readonly before: Instant; readonly after: Instant }
  | { readonly kind: 'two'; readonly first: Instant; readonly second: Instant };

/**
 * A wall-clock time typed on site. In the night the clocks change it may not exist, or exist twice; then the person
 * is asked which one, never guessed for.
 * @throws RangeError when the text is no local date and time or the zone is unknown.
 */
export function fromLocal(local: string, zone: string): LocalTime {
  const plain = Temporal.PlainDateTime.from(local);
  const earlier = plain.toZonedDateTime(zone, { disambiguation: 'earlier' });
  const later = plain.toZonedDateTime(zone, { disambiguation: 'later' });
  const text = (z: Temporal.ZonedDateTime): Instant => z.toString({ timeZoneName: 'never' });
  if (earlier.equals(later)) return { kind: 'one', instant: text(earlier) };
  const exists = earlier.toPlainDateTime().equals(plain);
  return exists
    ? { kind: 'two', first: text(earlier), second: text(later) }
    : { kind: 'none', before: text(earlier), after: text(later) };
}

export function isZone(zone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch {
    return false;
  }
}

/** Whole days from one calendar date to another; negative when `to` is earlier. */
export const daysBetween = (from: string, to: string): number =>
  dateOf(from).until(dateOf(to), { largestUnit: 'days' }).days;

/** The calendar date of an instant as written (its own offset), or of a plain date. */
export const dateOf = (text: string): Temporal.PlainDate => Temporal.PlainDate.from(text.slice(0, 10));

export const addDays = (date: string, days: number): string => dateOf(date).add({ days }).toString();

export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  try {
    Temporal.PlainDate.from(text, { overflow: 'reject' });
    return true;
  } catch {
    return false;
  }
}
