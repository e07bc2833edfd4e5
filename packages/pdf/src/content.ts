import { type Content, showBand } from '@slabwright/core';
import { QUIET } from './look.ts';
import type { Setting } from './setting.ts';
import { type Run, run, type Style } from './text.ts';

const NO_BREAK = '\u00a0';
// The last unit of a figure: whatever follows its last no-break space and holds no digit.
const FIGURE = /^([^\p{L}]*\d.*?)\u00a0([^\d\u00a0][^\d]*)$/u;

/** A figure loud, its unit quiet. */
export interface Figure {
  readonly number: readonly Run[];
  readonly unit: readonly Run[];
  /** Stands under the figure, so that it does not push the edge of the numbers away. */
  readonly band: readonly Run[];
}

/** Splits what an entry shows into number and unit; words and money have no unit of their own. */
export function figureParts(text: string): { readonly number: string; readonly unit: string } {
  const found = FIGURE.exec(text);
  return found ? { number: found[1] ?? text, unit: found[2] ?? '' } : { number: text, unit: '' };
}

export interface Tone {
  readonly size: number;
  /** Figures of entries are bold unless the text around them is. */
  readonly figures?: 'bold' | 'plain';
  readonly weight?: Style['weight'];
  readonly ink?: string;
}

const toneStyle = (tone: Tone): Style => ({
  size: tone.size,
  ...(tone.weight ? { weight: tone.weight } : {}),
  ...(tone.ink ? { ink: tone.ink } : {}),
});

const bandText = (content: Content, { voice }: Setting): string => {
  if (!('entry' in content) || !content.band) return '';
  const band = showBand(voice.entry(content.entry), voice.reader);
  return band === '' ? '' : `(${band})`;
};

/** Text of a content without looks: for the alternative text of a drawing. */
export const plainText = (content: Content, setting: Setting): string => {
  if ('say' in content) return setting.voice.say(content.say);
  if ('name' in content) return setting.voice.plain(content.name);
  return [setting.voice.show(content.entry), bandText(content, setting)].filter((part) => part !== '').join(' ');
};

/** A content as runs inside a line of text. */
export function runsOf(content: Content, tone: Tone, setting: Setting): readonly Run[] {
  const style = toneStyle(tone);
  if ('say' in content) return [run(setting.voice.say(content.say), style)];
  if ('name' in content)
    return [run(setting.voice.plain(content.name), content.strong ? { ...style, weight: 'bold' } : style)];
  const figures = content.strong || tone.figures === 'bold' ? { ...style, weight: 'bold' as const } : style;
  const { number, unit } = figureParts(setting.voice.show(content.entry));
  const band = bandText(content, setting);
  return [
    run(number, figures),
    ...(unit ? [run(NO_BREAK + unit, style)] : []),
    ...(band ? [run(` ${band}`, { ...style, size: Math.min(tone.size, setting.scale.small), ink: QUIET })] : []),
  ];
}

const CLOSES = /^[.,;:!?)\]]/;

/** Several contents one after the other, with a space where a person would write one. */
export function sentence(contents: readonly Content[], tone: Tone, setting: Setting): readonly Run[] {
  const runs: Run[] = [];
  for (const content of contents) {
    const next = runsOf(content, tone, setting);
    const before = runs[runs.length - 1];
    const [first] = next;
    if (!first) continue;
    const joins = before && !/\s$/.test(before.text) && !/^\s/.test(first.text) && !CLOSES.test(first.text);
    if (joins) runs.push(run(' ', toneStyle(tone)));
    runs.push(...next);
  }
  return runs;
}

/** Letters inside a compound figure are units too: 9 ft 2 in. Money is one loud word. */
const loudAndQuiet = (text: string, loud: Style, quiet: Style): readonly Run[] =>
  text
    .split(/(\u00a0\p{L}+\u00a0?)/u)
    .filter((part) => part !== '')
    .map((part) => run(part, /^\u00a0\p{L}/u.test(part) ? quiet : loud));

/** A content that stands alone in a column of figures. */
export function figureOf(content: Content, tone: Tone, setting: Setting): Figure {
  const style = toneStyle(tone);
  if (!('entry' in content)) return { number: runsOf(content, tone, setting), unit: [], band: [] };
  const strong = content.strong || tone.figures === 'bold';
  const { number, unit } = figureParts(setting.voice.show(content.entry));
  const band = bandText(content, setting);
  const small = setting.scale.small;
  const quiet = { size: Math.min(tone.size, Math.max(small, tone.size * 0.6)), ink: QUIET };
  return {
    number: loudAndQuiet(number, strong ? { ...style, weight: 'bold' } : style, quiet),
    unit: unit ? [run(unit, quiet)] : [],
    band: band ? [run(band, { size: Math.min(quiet.size, small), ink: QUIET })] : [],
  };
}
