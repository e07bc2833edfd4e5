import { convert } from './convert.ts';
import { numberText } from './digits.ts';

/** A tape is read to a sixteenth of an inch on what fits a bench, to an eighth across a room. */
const FINEST = 16;
const ROOM = 36;
const FINEST_IN_ROOM = 8;
/** A tape sags and stretches: no step is shown that is finer than a ten-thousandth of the length. */
const TAPE = 1e-4;
const INCHES_IN_FOOT = 12;

/** The finest of 1/16, 1/8, 1/4, 1/2 and 1 inch that the length deserves and the band still supports. */
const partsOfInch = (inches: number, halfBandInches: number, forEntry: boolean): number => {
  let parts = forEntry || inches < ROOM ? FINEST : FINEST_IN_ROOM;
  const least = forEntry ? halfBandInches : Math.max(halfBandInches, inches * TAPE);
  while (parts > 1 && 1 / parts < least) parts /= 2;
  return parts;
};

const fraction = (over: number, under: number): string => {
  let [top, bottom] = [over, under];
  while (top % 2 === 0 && bottom > 1) [top, bottom] = [top / 2, bottom / 2];
  return `${top}/${bottom}`;
};

/**
 * A length in feet, inches and a fraction of an inch, as on a tape: `12 ft 6 1/2 in`, `6 in`, `40 ft`.
 *
 * Rounded to the nearest sixteenth, to an eighth from a yard on, and coarser where the tape or the band is; a field that
 * is typed in again keeps its sixteenths. Metres in; a sign stands before the whole.
 * `number` is all but the last unit, so that `number` and `unit` make the text as for any other quantity.
 */
export const feetAndInches = (
  metres: number,
  locale: string,
  options: { halfBand?: number; grouped?: boolean; forEntry?: boolean } = {},
): { number: string; unit: string } => {
  const halfBand = options.halfBand === undefined ? 0 : convert(options.halfBand, 'm', 'in');
  const size = Math.abs(convert(metres, 'm', 'in'));
  const parts = partsOfInch(size, halfBand, options.forEntry ?? false);
  const total = Math.round(size * parts);
  const feet = Math.floor(total / (INCHES_IN_FOOT * parts));
  const rest = total - feet * INCHES_IN_FOOT * parts;
  const [inches, over] = [Math.floor(rest / parts), rest % parts];
  const sign = metres < 0 && total > 0 ? '-' : '';
  const feetText = numberText(feet, 0, locale, options.grouped ?? true);
  if (rest === 0 && feet > 0) return { number: `${sign}${feetText}`, unit: 'ft' };
  const inchText = [
    ...(inches > 0 || over === 0 ? [String(inches)] : []),
    ...(over > 0 ? [fraction(over, parts)] : []),
  ];
  const start = feet > 0 ? [feetText, 'ft'] : [];
  return { number: `${sign}${[...start, ...inchText].join('\u00a0')}`, unit: 'in' };
};
