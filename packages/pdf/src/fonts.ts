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

/** Remembers the width of every word it has met: a working annex says the same words hundreds of times. */
export function rememberWidths(measure: WidthInEms): WidthInEms {
  const known: Record<Weight, Map<string, number>> = { regular: new Map(), bold: new Map() };
  return (text, weight) => {
    const found = known[weight].get(text);
    if (found !== undefined) return found;
    const width = measure(text, weight);
    known[weight].set(text, width);
    return width;
  };
}
