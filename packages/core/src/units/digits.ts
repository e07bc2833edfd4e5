/** Which digits of a number are shown, and how they are written for a reader. */

export type Locale = string;

const decadeOf = (value: number): number => (value === 0 ? 0 : Number(value.toExponential(14).split('e')[1]));

export type Shown = {
  /** Significant digits asked for. */
  readonly digits: number;
  /** Last place as a power of ten, instead of significant digits. */
  readonly place?: number;
  /** Keep the whole part whatever its length. */
  readonly whole?: boolean;
  /** Half the width of the band, in the unit shown. */
  readonly halfBand?: number;
};

/**
 * The last place to show, as a power of ten. A band has the last word: no digit finer than the leading digit of its
 * half-width is shown, because it would not be known.
 */
export const lastPlace = (value: number, { digits, place, whole, halfBand }: Shown): number => {
  const own = place ?? decadeOf(value) - digits + 1;
  const kept = whole ? Math.min(own, 0) : own;
  return halfBand !== undefined && halfBand > 0 ? Math.max(kept, decadeOf(halfBand)) : kept;
};

const RAISED: Readonly<Record<string, string>> = {
  '-': '⁻',
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
};

const raised = (power: number): string => [...String(power)].map((mark) => RAISED[mark] ?? mark).join('');

/** The smallest decade written out in zeros; below it, powers of ten in steps of three are easier to read. */
const SMALLEST_DECADE = -4;
const LARGEST_DECADE = 15;
/** Intl writes at most 20 decimals on every engine. */
const MOST_DECIMALS = 20;

const FORMATS = new Map<string, Intl.NumberFormat>();

/** Making a formatter costs a hundred times its use, so each is made once; it holds no state a caller could see. */
const formatFor = (
  locale: Locale,
  rounding: 'maximumFractionDigits' | 'maximumSignificantDigits',
  digits: number,
  grouped: boolean,
) => {
  const key = `${locale} ${rounding} ${digits} ${grouped}`;
  const made = FORMATS.get(key);
  if (made !== undefined) return made;
  const format = new Intl.NumberFormat(locale, {
    [rounding]: digits,
    numberingSystem: 'latn',
    // 'auto' follows the reader's habit: Spanish writes 1234 and 12.345.
    useGrouping: grouped ? 'auto' : false,
    signDisplay: 'negative',
  });
  FORMATS.set(key, format);
  return format;
};

const plainNumber = (value: number, place: number, locale: Locale, grouped: boolean): string => {
  const format =
    place <= 0
      ? formatFor(locale, 'maximumFractionDigits', Math.min(-place, MOST_DECIMALS), grouped)
      : formatFor(locale, 'maximumSignificantDigits', Math.max(1, decadeOf(value) - place + 1), grouped);
  return format.format(value);
};

/** A number for a reader's eye, rounded at the given place. The number and a power of ten never part at a line's end. */
export const numberText = (value: number, place: number, locale: Locale, grouped = true): string => {
  const decade = decadeOf(value);
  if (value === 0 || (decade >= SMALLEST_DECADE && decade < LARGEST_DECADE)) {
    return plainNumber(value, place, locale, grouped);
  }
  const power = Math.floor(decade / 3) * 3;
  // Moving the point in the text keeps the digits; dividing by a power of ten would not.
  const [significand, own] = value.toExponential().split('e');
  const mantissa = Number(`${significand}e${Number(own) - power}`);
  return `${plainNumber(mantissa, place - power, locale, grouped)}\u00a0×\u00a010${raised(power)}`;
};

/** The decimal mark a reader of that locale types; a mark other than the comma is read as a point. */
export const decimalMarkOf = (locale: Locale): '.' | ',' =>
  new Intl.NumberFormat(locale, { numberingSystem: 'latn' })
    .formatToParts(1.5)
    .some(({ type, value }) => type === 'decimal' && value === ',')
    ? ','
    : '.';
