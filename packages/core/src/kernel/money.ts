import Big from 'big.js';

/** An amount in whole minor units (cents) of one currency. Currencies never add. */
export interface Money {
  readonly currency: string;
  readonly minor: number;
}

/** Digits after the decimal mark by ISO 4217; two for the rest (from memory). */
const MINOR_DIGITS: Readonly<Record<string, number>> = {
  BIF: 0,
  CLP: 0,
  DJF: 0,
  GNF: 0,
  ISK: 0,
  JPY: 0,
  KMF: 0,
  KRW: 0,
  PYG: 0,
  RWF: 0,
  UGX: 0,
  VND: 0,
  VUV: 0,
  XAF: 0,
  XOF: 0,
  XPF: 0,
  BHD: 3,
  IQD: 3,
  JOD: 3,
  KWD: 3,
  LYD: 3,
  OMR: 3,
  TND: 3,
};

export const minorDigits = (currency: string): number => MINOR_DIGITS[currency] ?? 2;

/** A plain decimal such as `38` or `0.125`: no sign, no thousands mark. */
const DECIMAL = /^\d{1,12}(\.\d{1,6})?$/;
export const isDecimalText = (text: string): boolean => DECIMAL.test(text);

/**
 * A rate in minor units per natural unit (per hour, per kit), exact: `38.125` a foot stays 3812.5 cents.
 * @throws when the text is not a plain decimal; schemas check that first.
 */
export function rateFromText(text: string, currency: string): number {
  if (!isDecimalText(text)) throw new Error(`not a plain decimal: ${text}`);
  return new Big(text).times(new Big(10).pow(minorDigits(currency))).toNumber();
}

/** Rounds to whole minor units, half away from zero, on the decimal value a person would read. */
export const roundMinor = (amount: number): number => new Big(amount).round(0, Big.roundHalfUp).toNumber();

/**
 * One printed line: a quantity times a rate, multiplied in decimals and rounded once. 7.5 h at 33.33 is 249.975 and
 * prints 249.98; binary floating point alone would lose the half cent.
 */
export const lineAmount = (quantity: number, rateInMinor: number): number =>
  new Big(quantity).times(rateInMinor).round(0, Big.roundHalfUp).toNumber();

/** Adds printed lines. @throws when currencies differ: that is a mistake of ours, checked at the border. */
export function addMoney(...amounts: readonly Money[]): Money {
  const [first] = amounts;
  if (!first) throw new Error('nothing to add');
  let minor = 0;
  for (const amount of amounts) {
    if (amount.currency !== first.currency) throw new Error(`cannot add ${amount.currency} to ${first.currency}`);
    minor += amount.minor;
  }
  return { currency: first.currency, minor };
}

/** `4958.00`, without the currency, for messages and files. */
export const moneyText = ({ minor, currency }: Money): string =>
  new Big(minor).div(new Big(10).pow(minorDigits(currency))).toFixed(minorDigits(currency));
