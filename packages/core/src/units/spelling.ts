import { BASE_UNITS } from './base.ts';
import { product, quotient, type Ratio, ratio } from './ratio.ts';
import { NEVER_FOLDED, ONE_WORD, PHRASES, SPELLINGS, TWO_MEANINGS } from './trade-spellings.ts';

/**
 * A unit's text taken apart: base units with their exponents, and the plain number in it, as the 1000 and the 24 in
 * lb/1000 ft²·24 h. `sq ft/gal`, `ft²/gal`, `ft^2 per gallon` and `SQFT/GAL` come out the same, so no compound
 * has to list its own spellings.
 */
export type Expression = { readonly exponents: ReadonlyMap<string, number>; readonly number: Ratio };

export type Spelt =
  | { readonly is: 'expression'; readonly expression: Expression }
  | { readonly is: 'unknown' }
  | { readonly is: 'ambiguous'; readonly spellings: readonly string[] };

const exactSpellings = (): ReadonlyMap<string, string> => {
  const found = new Map<string, string>();
  for (const name of BASE_UNITS.keys()) found.set(name, name);
  for (const [name, others] of Object.entries(SPELLINGS)) {
    for (const spelling of [name, ...others]) found.set(spelling, name);
  }
  return found;
};

const EXACT = exactSpellings();

/** Spellings in small letters, without those that two units would share. */
const foldedSpellings = (): ReadonlyMap<string, string> => {
  const found = new Map<string, string>();
  const shared = new Set<string>();
  for (const [spelling, name] of EXACT) {
    const small = spelling.toLowerCase();
    if (found.has(small) && found.get(small) !== name) shared.add(small);
    found.set(small, name);
  }
  for (const small of shared) {
    const name = EXACT.get(small);
    if (name === undefined) found.delete(small);
    else found.set(small, name);
  }
  return found;
};

const FOLDED = foldedSpellings();

const isOneCase = (word: string): boolean =>
  word === word.toLowerCase() ||
  word === word.toUpperCase() ||
  (word.slice(1) === word.slice(1).toLowerCase() && !NEVER_FOLDED.has(word));

/**
 * The base unit a word names. Capitals are forgiven (PSI, Gal, MILS) only where the word is in one case throughout:
 * mPa is not MPa.
 */
const baseNamed = (word: string): string | undefined =>
  EXACT.get(word) ?? (isOneCase(word) ? FOLDED.get(word.toLowerCase()) : undefined);

const SUPERSCRIPTS: Readonly<Record<string, string>> = { '¹': '1', '²': '2', '³': '3', '⁴': '4' };

const unfold = (text: string): string => {
  let plain = text.replace(/μ/g, 'µ').replace(/\*\*/g, '^');
  for (const [pattern, word] of PHRASES) plain = plain.replace(pattern, word);
  return plain
    .replace(/[A-Za-z]+/g, (word) => ONE_WORD[word.toLowerCase()] ?? word)
    .replace(
      /⁻?[¹²³⁴]/g,
      (mark) => `^${mark.replace('⁻', '-').replace(/[¹²³⁴]/, (digit) => SUPERSCRIPTS[digit] ?? digit)}`,
    );
};

const TOKEN =
  /\s*(?:(?<sign>[/()])|(?<times>[·⋅∙*×-])|(?<digits>\d+(?![\d.]))|(?<word>[^\s/()·⋅∙*×^\d-]+)(?:\^?(?<exponent>-?\d)(?!\d))?)\s*/uy;

/** Takes a unit's text apart. Understands `/`, `·`, `*`, a space or a hyphen between units, brackets and exponents. */
export const spell = (text: string): Spelt => {
  const plain = unfold(text);
  const exponents = new Map<string, number>();
  let number = ratio(1n);
  let [outer, side] = [1, 1];
  const brackets: (readonly [outer: number, side: number])[] = [];
  let seen = 0;
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < plain.length) {
    const groups = TOKEN.exec(plain)?.groups;
    if (groups === undefined) return { is: 'unknown' };
    const { sign, digits, word, exponent } = groups;
    if (sign === '/') side = -1;
    else if (sign === '(') {
      brackets.push([outer, side]);
      [outer, side] = [outer * side, 1];
    } else if (sign === ')') {
      const back = brackets.pop();
      if (back === undefined) return { is: 'unknown' };
      [outer, side] = back;
    } else if (digits !== undefined) {
      const factor = ratio(BigInt(digits));
      if (factor.over === 0n) return { is: 'unknown' };
      number = outer * side > 0 ? product(number, factor) : quotient(number, factor);
      seen += 1;
    } else if (word !== undefined) {
      const bare = word.replace(/\.+$/, '');
      const spellings = TWO_MEANINGS[bare.toLowerCase()];
      if (spellings !== undefined) return { is: 'ambiguous', spellings };
      const name = baseNamed(bare);
      if (name === undefined) return { is: 'unknown' };
      const sum = (exponents.get(name) ?? 0) + outer * side * Number(exponent ?? 1);
      if (sum === 0) exponents.delete(name);
      else exponents.set(name, sum);
      seen += 1;
    }
  }
  if (brackets.length > 0 || seen === 0) return { is: 'unknown' };
  return { is: 'expression', expression: { exponents, number } };
};

/** One text for each unit, whatever its spelling. */
export const keyOf = ({ exponents, number }: Expression): string => {
  const parts = [...exponents].map(([name, exponent]) => `${name}^${exponent}`).sort();
  return [`${number.over}/${number.under}`, ...parts].join(' ');
};
