import type { PaperKind } from '@slabwright/core';

/** Points of the page: 72 to the inch. */
export const MILLIMETRE = 72 / 25.4;

/** Ink and greys only, so that a sheet says the same after a photocopy. */
export const INK = '#111111';
export const QUIET = '#3f3c37';
export const RULE = '#8d877b';
export const SLAB = '#e4e1da';
export const SLAB_DEEP = '#bab4a8';
/** Every other pour: two tints that a photocopy keeps apart. */
export const POUR_DEEP = '#cbc6bb';
export const POUR_LIGHT = '#f1efea';
export const PAPER = '#ffffff';

export const HAIRLINE = 0.5;
export const EDGE = 2;
export const WALL = 4;

/** Five sizes of type in points, and the leading of running text. */
export interface Scale {
  /** Units, notes, labels of drawings. */
  readonly small: number;
  readonly body: number;
  readonly lead: number;
  readonly figure: number;
  readonly title: number;
  /** Strong figures in tables: the times a crew reads from a pail's distance. */
  readonly strong: number;
  readonly leading: number;
  /** Height of a row somebody writes into. */
  readonly write: number;
}

const DESK: Scale = { small: 9, body: 10.5, lead: 14, figure: 22, title: 30, strong: 10.5, leading: 1.32, write: 25 };
/** The crew sheet is read at arm's length with dusty glasses: nothing under 14 pt. */
const CREW: Scale = { small: 14, body: 14, lead: 17, figure: 22, title: 30, strong: 18, leading: 1.22, write: 25 };

/** Pages of the crew sheet that are read in the hand before the first lid is opened, or written on at a bench. */
const HAND: Scale = {
  small: 9,
  body: 10,
  lead: 13,
  figure: 18,
  title: 20,
  strong: 10.5,
  leading: 1.2,
  write: 16.5,
};

/** The annex is looked up, not read through. */
const ANNEX: Scale = { ...DESK, body: 9, strong: 9, leading: 1.25 };

export function scaleOf(kind: PaperKind, hand = false): Scale {
  if (kind === 'crew-sheet') return hand ? HAND : CREW;
  return kind === 'working-annex' ? ANNEX : DESK;
}

export type PaperSize = 'letter' | 'a4';

export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const SIZES: Readonly<Record<PaperSize, readonly [width: number, height: number]>> = {
  letter: [612, 792],
  a4: [210 * MILLIMETRE, 297 * MILLIMETRE],
};

/** Sheet with its margins, in points. */
export function sheetOf(size: PaperSize, kind: PaperKind): Sheet {
  const [width, height] = SIZES[size];
  const side = kind === 'crew-sheet' ? 36 : 42;
  return { width, height, left: side, right: width - side, top: 36, bottom: height - 34 };
}
