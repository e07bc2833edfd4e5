import { numericQuantity } from 'numeric-quantity';
import type { UnitTroubleCode } from './trouble.ts';

export type DecimalMark = '.' | ',';

export type NumberRead =
  | { readonly ok: true; readonly value: number; readonly rest: string }
  | { readonly ok: false; readonly code: UnitTroubleCode; readonly didYouMean?: readonly string[] };

const VULGAR = '[¼-¾⅐-⅞]';
const FRACTION = `(?:\\d+ ?[/⁄] ?\\d+(?![\\d.])|${VULGAR})`;
const MIXED = `\\d+(?:(?: | ?- ?)\\d+ ?[/⁄] ?\\d+(?![\\d.])|[ -]?${VULGAR})`;
const DECIMAL = '(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:e[+-]?\\d+)?';
const NUMBER = new RegExp(`^(?:(?<fraction>${MIXED}|${FRACTION})|(?<decimal>${DECIMAL}))`, 'iu');

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Blanks of every width, typographic minus signs and `× 10⁻⁶` in their plain spelling; marks of units stay. */
export const plainText = (typed: string): string =>
  typed
    .replace(/[\s\u00a0\u2000-\u200a\u202f]+/gu, ' ')
    .replace(/[−–]/gu, '-')
    .replace(/(?<=[\d.,]) ?[×x] ?10(?:\^?(-?\d+)|(⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+))/gu, (_, plain?: string, raised?: string) => {
      const power =
        plain ?? [...(raised ?? '')].map((mark) => (mark === '⁻' ? '-' : SUPERSCRIPTS.indexOf(mark))).join('');
      return `e${power}`;
    })
    .trim();

/**
 * Why a run of digits and marks is no number here. A thousands mark is never read: `1,234` may be either of two
 * numbers a thousand times apart, so it is refused with both; where only one reading is possible it is offered.
 */
const marksTrouble = (run: string, mark: DecimalMark): NumberRead => {
  const other = mark === '.' ? ',' : '.';
  const parts = run.split(other);
  const whole = parts.join('');
  const grouped = parts.slice(1).every((part, place) => {
    const digits = place === parts.length - 2 ? part.split(mark)[0] : part;
    return digits?.length === 3;
  });
  const thousands = grouped && /^[1-9]\d{0,2}$/.test(parts[0] ?? '') && whole.split(mark).length <= 2;
  const asDecimal = parts.length === 2 && !run.includes(mark) ? `${parts[0] || '0'}${mark}${parts[1]}` : undefined;
  if (thousands && asDecimal !== undefined)
    return { ok: false, code: 'number-ambiguous', didYouMean: [whole, asDecimal] };
  const only = thousands ? whole : asDecimal !== undefined && /\d$/.test(asDecimal) ? asDecimal : undefined;
  return { ok: false, code: 'number-unreadable', ...(only === undefined ? {} : { didYouMean: [only] }) };
};

/**
 * Reads the unsigned number at the start of a text that `plainText` has prepared: decimals, powers of ten, fractions
 * and mixed numbers (`6 1/2`, `6-1/2`, `6½`). The decimal mark is the reader's; the other mark is refused.
 */
export const readNumber = (text: string, mark: DecimalMark): NumberRead => {
  const run = /^[\d.,]+/.exec(text)?.[0] ?? '';
  if (run === '' && !new RegExp(`^${VULGAR}`, 'u').test(text)) {
    return { ok: false, code: /\d/.test(text) ? 'number-unreadable' : 'number-missing' };
  }
  const trailing = /[.,]$/.test(run) && !run.endsWith(mark) ? run.slice(0, -1) : run;
  if (trailing !== run || run.includes(mark === '.' ? ',' : '.') || run.split(mark).length > 2)
    return marksTrouble(run, mark);
  const plain = run.replace(',', '.') + text.slice(run.length);
  const found = NUMBER.exec(plain);
  if (found === null) return { ok: false, code: 'number-unreadable' };
  const { fraction, decimal } = found.groups ?? {};
  // A decimal goes straight to the language's own correctly rounded reading; only fractions need more.
  const value =
    fraction === undefined
      ? Number(decimal)
      : numericQuantity(fraction.replace(/ ?([/⁄]) ?/u, '$1').replace(/ ?- ?/, ' '), { round: false });
  if (!Number.isFinite(value)) return { ok: false, code: 'not-finite' };
  const rest = plain.slice(found[0].length).trim();
  if (/^[\d.,]/.test(rest) && !/^1 ?\//.test(rest)) {
    const joined = /^\d{1,3}(?: \d{3})+(?!\d)/.exec(plain)?.[0].replaceAll(' ', '');
    return { ok: false, code: 'number-unreadable', ...(joined === undefined ? {} : { didYouMean: [joined] }) };
  }
  return { ok: true, value, rest };
};
