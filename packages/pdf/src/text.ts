import { drawable, type Weight, type WidthInEms } from './fonts.ts';
import { INK } from './look.ts';

/** Text of one look. A line may hold several: a bold figure and its quiet unit. */
export interface Run {
  readonly text: string;
  readonly size: number;
  readonly weight: Weight;
  readonly ink: string;
}

export interface Style {
  readonly size: number;
  readonly weight?: Weight;
  readonly ink?: string;
}

export const run = (text: string, style: Style): Run => ({
  text: drawable(text),
  size: style.size,
  weight: style.weight ?? 'regular',
  ink: style.ink ?? INK,
});

export interface LinePart extends Run {
  /** From the start of the line. */
  readonly x: number;
  readonly width: number;
}

export interface Line {
  readonly parts: readonly LinePart[];
  readonly width: number;
  /** Largest type on the line. */
  readonly size: number;
}

export type Measure = (text: string, run: Run) => number;

export const measureWith =
  (widthInEms: WidthInEms): Measure =>
  (text, { weight, size }) =>
    widthInEms(text, weight) * size;

/** Pieces that stand or fall together on one line; a figure and its unit are tied by a no-break space. */
interface Word {
  readonly parts: readonly LinePart[];
  readonly width: number;
  /** Width of the space before it, nothing at the start of a line or after a hyphen. */
  readonly space: number;
  readonly spaceRun?: Run;
  readonly breakBefore: boolean;
}

// After a hyphen or slash between letters a line may turn; between digits it may not (26-041, 1/2).
const BREAKS = /( +|\n|(?<=\p{L}[-/])(?=\p{L}))/u;

function wordsOf(runs: readonly Run[], measure: Measure): readonly Word[] {
  const words: Word[] = [];
  let parts: LinePart[] = [];
  let width = 0;
  let space = 0;
  let spaceRun: Run | undefined;
  let breakBefore = false;
  const close = (): void => {
    if (parts.length > 0 || breakBefore) {
      words.push({ parts, width, space, breakBefore, ...(spaceRun ? { spaceRun } : {}) });
    }
    parts = [];
    width = 0;
    space = 0;
    spaceRun = undefined;
    breakBefore = false;
  };
  for (const one of runs) {
    one.text.split(BREAKS).forEach((piece, index) => {
      if (piece === '' && index % 2 === 0) return;
      if (index % 2 === 1) {
        close();
        if (piece === '\n') breakBefore = true;
        else if (piece !== '') {
          space = measure(' ', one);
          spaceRun = one;
        }
        return;
      }
      const pieceWidth = measure(piece, one);
      parts.push({ ...one, text: piece, x: width, width: pieceWidth });
      width += pieceWidth;
    });
  }
  close();
  return words;
}

/** Cuts a word that is wider than the whole line, character by character. */
function cut(word: Word, room: number, measure: Measure): readonly Word[] {
  const found: Word[] = [];
  let parts: LinePart[] = [];
  let width = 0;
  const close = (): void => {
    if (parts.length === 0) return;
    const first = found.length === 0;
    const before = first && word.spaceRun ? { spaceRun: word.spaceRun } : {};
    found.push({ parts, width, space: first ? word.space : 0, breakBefore: first && word.breakBefore, ...before });
    parts = [];
    width = 0;
  };
  for (const part of word.parts) {
    let text = '';
    let textWidth = 0;
    const keep = (): void => {
      if (text === '') return;
      parts.push({ ...part, text, x: width, width: textWidth });
      width += textWidth;
      text = '';
      textWidth = 0;
    };
    for (const sign of part.text) {
      const signWidth = measure(sign, part);
      if (width + textWidth + signWidth > room && (text !== '' || parts.length > 0)) {
        keep();
        close();
      }
      text += sign;
      textWidth += signWidth;
    }
    keep();
  }
  close();
  return found;
}

/** Joins neighbours of one look, so that a line is written, and copied, as whole phrases. */
function lineOf(words: readonly Word[]): Line {
  const parts: LinePart[] = [];
  let x = 0;
  const append = (part: Run, width: number): void => {
    const last = parts[parts.length - 1];
    if (last && last.size === part.size && last.weight === part.weight && last.ink === part.ink) {
      parts[parts.length - 1] = { ...last, text: last.text + part.text, width: last.width + width };
    } else {
      parts.push({ ...part, x, width });
    }
    x += width;
  };
  words.forEach((word, index) => {
    if (index > 0 && word.spaceRun) append({ ...word.spaceRun, text: ' ' }, word.space);
    for (const part of word.parts) append(part, part.width);
  });
  return { parts, width: x, size: Math.max(0, ...parts.map((part) => part.size)) };
}

/** Breaks runs into lines no wider than `room`. Every line holds at least one character, however narrow the room. */
export function wrap(runs: readonly Run[], room: number, measure: Measure): readonly Line[] {
  const lines: Line[] = [];
  let line: Word[] = [];
  let width = 0;
  for (const whole of wordsOf(runs, measure)) {
    for (const word of whole.width > room ? cut(whole, room, measure) : [whole]) {
      const wider = width + word.space + word.width;
      if (line.length > 0 && (word.breakBefore || wider > room + 0.01 || (word !== whole && word.space === 0))) {
        lines.push(lineOf(line));
        line = [word];
        width = word.width;
      } else {
        width = line.length === 0 ? word.width : wider;
        line.push(word);
      }
    }
  }
  if (line.length > 0) lines.push(lineOf(line));
  return lines;
}

/** Lines of about one length, no more of them than the room asks for: a headline without a lone last word. */
export function wrapEvenly(runs: readonly Run[], room: number, measure: Measure): readonly Line[] {
  const lines = wrap(runs, room, measure);
  if (lines.length < 2) return lines;
  let narrow = Math.max(...lines.map((one) => one.width)) / 2;
  let wide = room;
  for (let step = 0; step < 12; step += 1) {
    const middle = (narrow + wide) / 2;
    if (wrap(runs, middle, measure).length <= lines.length) wide = middle;
    else narrow = middle;
  }
  return wrap(runs, wide, measure);
}

/** Width of runs set on one line. */
export const widthOf = (runs: readonly Run[], measure: Measure): number =>
  runs.reduce((sum, one) => sum + one.text.split(/( )/).reduce((part, word) => part + measure(word, one), 0), 0);

/** Width of the longest piece that must not be broken. */
export const widestWord = (runs: readonly Run[], measure: Measure): number =>
  Math.max(0, ...wordsOf(runs, measure).map((word) => word.width));

/** Height of lines at a leading. */
export const heightOf = (lines: readonly Line[], leading: number): number =>
  lines.reduce((sum, line) => sum + line.size * leading, 0);
