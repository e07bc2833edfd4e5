/** The two weights of the sheet as font files (TrueType). */
export interface FontFiles {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export type Weight = 'regular' | 'bold';

/** Width of a text in ems at one weight. */
export type WidthInEms = (text: string, weight: Weight) => number;

/** Baseline and heights of the face as shares of its size. IBM Plex Sans, from its own header. */
export const CAP_HEIGHT = 0.698;
export const DESCENT = 0.275;

/** Signs that formulas use and the face does not draw, spelled with signs that it does. */
const SPELLED: Readonly<Record<string, string>> = {
  '∝': '~',
  '⋅': '·',
  '∙': '·',
  '℉': '°F',
  '℃': '°C',
  '≡': '=',
  ᵀ: '^T',
  ⱼ: '_j',
  '⌈': 'ceil[',
  '⌉': ']',
  '\u2060': '',
};

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const NEGATIVE_POWER = /⁻([⁰¹²³⁴⁵⁶⁷⁸⁹]+)/g;
const UNDRAWN = new RegExp(`[${Object.keys(SPELLED).join('')}]`, 'gu');
// Control signs, and marks that turn the direction of writing: a name must not rearrange the sheet.
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to take out.
const UNWANTED = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g;

/** Text as the face can set it. Line breaks stay, other control characters become spaces. */
export const drawable = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(UNWANTED, ' ')
    .replace(NEGATIVE_POWER, (_, digits: string) => `^−${[...digits].map((digit) => RAISED.indexOf(digit)).join('')}`)
    .replace(UNDRAWN, (sign) => SPELLED[sign] ?? sign);

/** Widths of signs and pairs, and of words that are no sum of them. */
type Widths = Readonly<Record<Weight, Map<string, number>>>;
const noWidths = (): Widths => ({ regular: new Map(), bold: new Map() });
/** Kept as long as the face is: the next paper says the same words. */
const kept = new WeakMap<FontFiles, Widths>();
/** Some thousand pairs are all a language has; names in other letters could go on for ever. */
const MOST_KEPT = 20_000;

/** Widths met so far with these files. */
export function widthsOf(fonts: FontFiles): Widths {
  const known = kept.get(fonts);
  if (known && known.regular.size + known.bold.size < MOST_KEPT) return known;
  const fresh = noWidths();
  kept.set(fonts, fresh);
  return fresh;
}

/** Other letters and combining marks: the face chooses its pairs by the script of the whole word. */
const PLAIN = /^[\p{Script=Latin}\p{Script=Common}]*$/u;

/**
 * Widths of words out of the widths of their signs and of pairs of neighbours, each asked of the face once. The face
 * kerns and joins pairs only (`fi`), so the sum is the width of the word; laying out every word of a working annex to
 * measure it took most of its time.
 */
export function rememberWidths(measure: WidthInEms, known: Widths = noWidths()): WidthInEms {
  const asked = (text: string, weight: Weight): number => {
    const found = known[weight].get(text);
    if (found !== undefined) return found;
    const width = measure(text, weight);
    known[weight].set(text, width);
    return width;
  };
  return (text, weight) => {
    if (!PLAIN.test(text)) return asked(text, weight);
    let width = 0;
    let before: string | undefined;
    for (const sign of text) {
      const own = asked(sign, weight);
      width += before === undefined ? own : asked(before + sign, weight) - asked(before, weight);
      before = sign;
    }
    return width;
  };
}
