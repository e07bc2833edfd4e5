import { Temporal } from 'temporal-polyfill';

/** An instant with its offset kept, `2026-05-13T07:30:00-07:00`. Data, not a Figure. */
export type Instant = string;

const PLAIN = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(?:Z|([+-])(\d\d):(\d\d))$/;

/**
 * The everyday spelling of an instant by plain arithmetic; anything else, and anything that looks wrong, is left to the
 * calendar library. A file of weather holds some hundred.
 */
function plainEpoch(instant: Instant): number | undefined {
  const found = PLAIN.exec(instant);
  if (!found) return undefined;
  const [year, month, day, hour, minute, second] = found.slice(1, 7).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [hours, minutes] = [Number(found[8] ?? 0), Number(found[9] ?? 0)];
  // The 29th to 31st are not in every month: the library knows.
  const usual = year >= 1970 && month >= 1 && month <= 12 && day >= 1 && day <= 28;
  if (!usual || hour > 23 || minute > 59 || second > 59 || hours > 23 || minutes > 59) return undefined;
  const local = Date.UTC(year, month - 1, day, hour, minute, second);
  return local - (found[7] === '-' ? -1 : 1) * (hours * 60 + minutes) * 60_000;
}

/** Milliseconds since 1970 of an instant text. @throws RangeError when the text is no instant with an offset. */
export const epochOf = (instant: Instant): number =>
  plainEpoch(instant) ?? Temporal.Instant.from(instant).epochMilliseconds;

export function isInstant(text: string): boolean {
  if (plainEpoch(text) !== undefined) return true;
  try {
    Temporal.Instant.from(text);
    return true;
  } catch {
    return false;
  }
}

const slowly = (epoch: number, zone: string): Instant =>
  Temporal.Instant.fromEpochMilliseconds(epoch).toZonedDateTimeISO(zone).toString({ timeZoneName: 'never' });

const DAY = 86_400_000;
/** No zone changes its clock twice within this: equal offsets at both ends hold between them. */
const STRETCH = 10 * DAY;
/** Stretches kept of one zone at most; a plan writes a thousand instants within a few of them. */
const MOST_KEPT = 2000;
/** Zones kept at most: a job has one. */
const MOST_ZONES = 50;

interface Offsets {
  readonly stretches: Map<number, number | undefined>;
  /** Days of those stretches in which the clock changes. */
  readonly days: Map<number, number | undefined>;
}
const offsets = new Map<string, Offsets>();

function offsetsOf(zone: string): Offsets {
  const known = offsets.get(zone);
  if (known) return known;
  if (offsets.size >= MOST_ZONES) offsets.clear();
  const fresh: Offsets = { stretches: new Map(), days: new Map() };
  offsets.set(zone, fresh);
  return fresh;
}

/** Offset of the stretch of this length around a moment, asked of the calendar once; undefined where it changes. */
function steadyOver(kept: Map<number, number | undefined>, length: number, epoch: number, zone: string) {
  const index = Math.floor(epoch / length);
  const known = kept.get(index);
  if (known !== undefined || kept.has(index)) return known;
  const at = (moment: number): number =>
    Temporal.Instant.fromEpochMilliseconds(moment).toZonedDateTimeISO(zone).offsetNanoseconds / 1e6;
  const [first, last] = [at(index * length), at((index + 1) * length)];
  const steady = first === last && first % 60_000 === 0 ? first : undefined;
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(index, steady);
  return steady;
}

/** Offset of a zone around a moment, ms; undefined on a day on which it changes or has odd seconds. */
export function steadyOffset(epoch: number, zone: string): number | undefined {
  const { stretches, days } = offsetsOf(zone);
  return steadyOver(stretches, STRETCH, epoch, zone) ?? steadyOver(days, DAY, epoch, zone);
}

const two = (value: number): string => `${value}`.padStart(2, '0');
/** Years written with four digits: between them a date needs no calendar library. */
const [FIRST, LAST] = [Date.UTC(1970, 0, 2), Date.UTC(9999, 0, 1)];

/** The same moment written with the offset of a zone, whole seconds. */
export function instantIn(epochMilliseconds: number, zone: string): Instant {
  const epoch = Math.round(epochMilliseconds / 1000) * 1000;
  const offset = epoch > FIRST && epoch < LAST ? steadyOffset(epoch, zone) : undefined;
  if (offset === undefined) return slowly(epoch, zone);
  const minutes = Math.abs(offset) / 60_000;
  const sign = offset < 0 ? '-' : '+';
  const local = new Date(epoch + offset).toISOString().slice(0, 19);
  return `${local}${sign}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

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
