import type { Unit } from '../kernel/unit.ts';
import { type DecimalMark, plainText, readNumber } from './number.ts';
import { quotient, scale } from './ratio.ts';
import { replaceUnit, suggestUnits, usualUnits } from './suggest.ts';
import { dimensionWords, intoSI, meaningOf, type TradeUnit } from './trade-unit.ts';
import type { TextTrouble, UnitTrouble } from './trouble.ts';

/** A value in SI with the text a person entered beside it. */
export type Quantity<U extends Unit = Unit> = {
  readonly value: number;
  readonly unit: U;
  readonly typed: string;
  /** Canonical name of the unit entered; of the first one in `12 ft 6 in`. */
  readonly typedUnit: string;
};

export type Parsed<U extends Unit = Unit> =
  | { readonly ok: true; readonly quantity: Quantity<U> }
  | { readonly ok: false; readonly trouble: UnitTrouble };

export type ParsedAny =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly trouble: TextTrouble };

export type ParseOptions = { readonly decimalMark?: DecimalMark };

/** Trouble without the text, which the caller knows. */
type Found<T> =
  | { readonly ok: true; readonly found: T }
  | { readonly ok: false; readonly trouble: Omit<TextTrouble, 'typed'> };

const refuse = (trouble: Omit<TextTrouble, 'typed'>): { ok: false; trouble: Omit<TextTrouble, 'typed'> } => ({
  ok: false,
  trouble,
});

const chooseUnit = (text: string, expected: Unit | undefined): Found<TradeUnit> => {
  if (text === '') {
    const plain = meaningOf('1');
    if ((expected ?? '1') === '1' && plain.is === 'units') return { ok: true, found: plain.units[0] };
    return refuse({ code: 'unit-missing', didYouMean: usualUnits(expected ?? '1').slice(0, 4) });
  }
  const meaning = meaningOf(text);
  if (meaning.is === 'ambiguous') return refuse({ code: 'unit-ambiguous', got: text, didYouMean: meaning.spellings });
  if (meaning.is === 'unknown')
    return refuse({ code: 'unit-unknown', got: text, didYouMean: suggestUnits(text, expected) });
  // Looked for only where it is said: every quantity of every file passes here.
  const didYouMean = (): readonly string[] => (expected === undefined ? [] : replaceUnit(text, expected));
  if (meaning.is === 'nameless') {
    const trouble = { got: meaning.name, gotDimension: 'none', didYouMean: didYouMean() } as const;
    return refuse({ code: 'unit-wrong-dimension', ...trouble });
  }
  const [first] = meaning.units;
  const chosen = expected === undefined ? first : meaning.units.find(({ unit }) => unit === expected);
  if (chosen !== undefined) return { ok: true, found: chosen };
  const gotDimension = dimensionWords(first.unit);
  return refuse({ code: 'unit-wrong-dimension', got: first.name, gotDimension, didYouMean: didYouMean() });
};

type Piece = { readonly value: number; readonly unit: TradeUnit };

/** A unit in the middle of a compound: one word or mark, then the next number. A word needs a blank or a dash after it. */
const BETWEEN = /^((?:[a-zµ]+\.?(?= ?[ ,-])|["'″′”’]+)) ?(?:[,-] ?)?(?=[\d.,¼-¾⅐-⅞])/iu;

/** Reads `12 ft 6 1/2 in`, `1 h 20 min`, or a single number with its unit. */
const readPieces = (text: string, expected: Unit | undefined, mark: DecimalMark): Found<readonly Piece[]> => {
  const pieces: Piece[] = [];
  for (let left = text; ; ) {
    const number = readNumber(left, mark);
    if (!number.ok) {
      const { code, didYouMean } = number;
      return refuse({ code, ...(didYouMean === undefined ? {} : { didYouMean }) });
    }
    const between = BETWEEN.exec(number.rest);
    const unit = chooseUnit((between?.[1] ?? number.rest).trim(), expected ?? pieces[0]?.unit.unit);
    if (!unit.ok) return unit;
    const last = pieces.at(-1);
    // 6 in 12 ft or 5 ft 3 ft is no way to write one length; a scale with an offset cannot be added up at all.
    const falling =
      last === undefined ||
      (quotient(last.unit.size, unit.found.size).over > quotient(last.unit.size, unit.found.size).under &&
        unit.found.unit !== '°C');
    if (!falling) return refuse({ code: 'number-unreadable', got: unit.found.name });
    pieces.push({ value: number.value, unit: unit.found });
    if (between === null) return { ok: true, found: pieces };
    left = number.rest.slice(between[0].length);
  }
};

const readQuantity = (typed: string, expected: Unit | undefined, mark: DecimalMark): Found<Quantity> => {
  const text = plainText(typed);
  const sign = /^[+-] ?/.exec(text)?.[0] ?? '';
  const read = readPieces(text.slice(sign.length), expected, mark);
  if (!read.ok) return read;
  const [first, last] = [read.found[0], read.found.at(-1)];
  if (first === undefined || last === undefined) throw new Error('a quantity was read without a piece');
  // Add up in the smallest unit, where the parts are whole or simple, so that only one step rounds.
  const total = read.found.reduce((sum, { value, unit }) => sum + scale(value, quotient(unit.size, last.unit.size)), 0);
  // Zero has no sign: `-0 in` is 0.
  const value = intoSI(sign.startsWith('-') && total !== 0 ? -total : total, last.unit);
  if (!Number.isFinite(value)) return refuse({ code: 'not-finite' });
  return { ok: true, found: { value, unit: last.unit.unit, typed, typedUnit: first.unit.name } };
};

/**
 * Reads what a person typed as a quantity of the expected SI unit.
 *
 * `°F` and `°C` are differences where a difference (`K`, `K/s`, `1/K` …) is expected, and never get the offset there.
 * A bare number is refused unless the expected unit is `1`. Any finite value passes, negative ones too: ranges
 * belong to the field. Trouble comes back as data; throws only for a money unit, which this module does not read.
 */
export const parseQuantity = <U extends Unit>(text: string, expected: U, options: ParseOptions = {}): Parsed<U> => {
  const expectedDimension = dimensionWords(expected);
  if (expectedDimension === 'money') throw new Error(`money (${expected}) is not read as a physical quantity`);
  const read = readQuantity(text, expected, options.decimalMark ?? '.');
  return read.ok
    ? { ok: true, quantity: { ...read.found, unit: expected } }
    : { ok: false, trouble: { ...read.trouble, typed: text, expected, expectedDimension } };
};

/** Reads a quantity of any dimension, in the SI unit its written unit belongs to; a bare number has the unit `1`. */
export const parseAny = (text: string, options: ParseOptions = {}): ParsedAny => {
  const read = readQuantity(text, undefined, options.decimalMark ?? '.');
  return read.ok ? { ok: true, quantity: read.found } : { ok: false, trouble: { ...read.trouble, typed: text } };
};
