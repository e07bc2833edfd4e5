import { numberText } from './digits.ts';

const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;

/** Steps a clock reader rounds to, in seconds. */
const STEPS = [1, 10, MINUTE, 5 * MINUTE, 10 * MINUTE, 30 * MINUTE, HOUR, 6 * HOUR, DAY];

const usualStep = (seconds: number): number => {
  if (seconds < 10 * MINUTE) return 1;
  if (seconds < 2 * DAY) return MINUTE;
  return seconds < 14 * DAY ? HOUR : DAY;
};

const steppedTo = (seconds: number, halfBand: number | undefined): number => {
  const own = usualStep(seconds);
  const known = STEPS.filter((step) => halfBand !== undefined && step <= halfBand).at(-1) ?? 1;
  const step = Math.max(own, known);
  // A band wider than the time itself must not round it away.
  const least = seconds > 0 && Math.round(seconds / step) === 0 ? own : step;
  return Math.round(seconds / least) * least;
};

const pairFor = (seconds: number): readonly [large: number, largeName: string, small: number, smallName: string] => {
  if (seconds >= 2 * DAY) return [DAY, 'd', HOUR, 'h'];
  return seconds >= HOUR ? [HOUR, 'h', MINUTE, 'min'] : [MINUTE, 'min', 1, 's'];
};

/**
 * A length of time in the two units that fit: `45 s`, `7 min 30 s`, `1 h 20 min`, `2 d 4 h`. Seconds in; rounded to
 * whole seconds below ten minutes, to minutes below two days, to hours below two weeks, then to days; coarser where
 * the band is wider. Below ten seconds, which nobody reads off a watch, the caller shows decimals instead.
 */
export const hoursAndMinutes = (
  seconds: number,
  locale: string,
  options: { halfBand?: number; grouped?: boolean } = {},
): { number: string; unit: string } => {
  const rounded = steppedTo(Math.abs(seconds), options.halfBand);
  const [large, largeName, small, smallName] = pairFor(rounded);
  const whole = Math.floor(rounded / large);
  const rest = Math.round((rounded - whole * large) / small);
  const sign = seconds < 0 && rounded > 0 ? '-' : '';
  const text = (value: number): string => numberText(value, 0, locale, options.grouped ?? true);
  if (whole > 0 && rest === 0) return { number: `${sign}${text(whole)}`, unit: largeName };
  const start = whole > 0 ? `${text(whole)}\u00a0${largeName}\u00a0` : '';
  return { number: `${sign}${start}${text(rest)}`, unit: smallName };
};
