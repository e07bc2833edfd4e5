import type { Instant } from '../kernel/instant.ts';
import type { Said } from '../kernel/said.ts';
import type { VerdictWord } from '../kernel/verdict.ts';
import type { Language } from '../words/messages.ts';

/**
 * Papers as data: what stands on them and in what order, not where. Text is said in codes, numbers are ids of the
 * plan; the shell that lays a paper out asks the voice of its reader for both.
 */

export const PAPER_KINDS = ['proposal', 'crew-sheet', 'buying-list', 'safety-sheet', 'working-annex'] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

/** Text of a cell: something said, an entry of the plan, or a name a person wrote. */
export type Content =
  | { readonly say: Said }
  | { readonly entry: string; readonly band?: boolean; readonly strong?: boolean }
  | { readonly name: string; readonly strong?: boolean };

export interface Column {
  readonly head: Said;
  readonly align?: 'left' | 'right';
  /** Share of the width; columns without one share what is left. */
  readonly width?: number;
  /** Left empty for the crew to write in. */
  readonly blank?: boolean;
}

/** A line or a mark on the drawing of the floor, with the words beside it. */
export interface FloorLabel {
  readonly at: readonly [x: number, y: number];
  readonly text: Content;
}

export type FloorMark =
  | {
      readonly kind: 'joint' | 'crack' | 'stop line' | 'bail-out';
      readonly along: readonly (readonly [number, number])[];
      readonly label?: Content;
    }
  | {
      readonly kind: 'exit';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly shut: boolean;
      readonly label?: Content;
    }
  | {
      readonly kind: 'spot';
      readonly at: readonly [number, number];
      readonly radius: number;
      readonly what: string;
      readonly label?: Content;
    }
  | { readonly kind: 'reading'; readonly at: readonly [number, number]; readonly label?: Content }
  /** The floor of one batch: its number stands at `at`; neighbours alternate between two tints. */
  | {
      readonly kind: 'pour';
      readonly outlines: readonly (readonly (readonly [number, number])[])[];
      readonly number: string;
      readonly at: readonly [number, number];
      readonly tint: 'light' | 'deep';
      readonly label?: Content;
    }
  /** The way the lanes of a pour go. */
  | {
      readonly kind: 'arrow';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly label?: Content;
    }
  | { readonly kind: 'sun'; readonly outline: readonly (readonly [number, number])[]; readonly label?: Content };

export interface FloorDrawing {
  readonly area: string;
  readonly name: string;
  readonly outline: readonly (readonly [number, number])[];
  readonly holes: readonly (readonly (readonly [number, number])[])[];
  readonly net: string;
  readonly marks: readonly FloorMark[];
  /** Overall width and depth to dimension, entry ids when the plan holds them. */
  readonly dimensions: boolean;
}

/** One layer in the cut through the floor, from the concrete up. */
export interface SectionLayer {
  readonly kind: 'concrete' | 'film' | 'broadcast';
  readonly title: Content;
  readonly note?: Content;
}

export type Block =
  | { readonly kind: 'headline'; readonly text: Said; readonly under?: Said }
  | { readonly kind: 'heading'; readonly text: Said }
  | { readonly kind: 'paragraph'; readonly content: readonly Content[] }
  | { readonly kind: 'boxed'; readonly lines: readonly Said[]; readonly strong?: boolean }
  | { readonly kind: 'verdict'; readonly word: VerdictWord; readonly title: Said; readonly lines: readonly Said[] }
  | {
      readonly kind: 'facts';
      readonly rows: readonly { readonly label: Content; readonly value: Content; readonly note?: Content }[];
    }
  | {
      readonly kind: 'big-figures';
      readonly figures: readonly { readonly label: Said; readonly value: Content; readonly under?: Said }[];
    }
  | {
      readonly kind: 'table';
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly Content[])[];
      readonly total?: readonly Content[];
    }
  | { readonly kind: 'list'; readonly marks: 'stop' | 'dash' | 'box'; readonly lines: readonly Content[] }
  | { readonly kind: 'floor'; readonly drawing: FloorDrawing; readonly beside?: readonly Block[] }
  | { readonly kind: 'section'; readonly layers: readonly SectionLayer[] }
  | { readonly kind: 'frame'; readonly title: Said; readonly text: Said; readonly lines: number }
  | { readonly kind: 'signatures'; readonly fields: readonly Said[] }
  | { readonly kind: 'columns'; readonly left: readonly Block[]; readonly right: readonly Block[] }
  /** Figures of one formula: the formula and its source once, then each figure with its numbers. */
  | { readonly kind: 'working'; readonly entries: readonly [string, ...string[]] }
  /** A page for the hand is read before work begins, not off the wall: smaller type, more on it. */
  | { readonly kind: 'page-break'; readonly hand?: true };

export interface Paper {
  readonly kind: PaperKind;
  readonly language: Language;
  readonly title: Said;
  /** Head of every page: firm at the left, number and date at the right. */
  readonly head: { readonly left: readonly string[]; readonly right: readonly Content[] };
  readonly foot: Said;
  readonly blocks: readonly Block[];
  /** Short mark of the plan it was made from, so that an old sheet is noticed. */
  readonly mark: string;
  readonly at: Instant;
  /** Overrides stay visible on every paper. */
  readonly overrides: readonly Said[];
}

/** A paper that must not be issued says why instead. */
export type Issued =
  | { readonly ok: true; readonly paper: Paper }
  | { readonly ok: false; readonly kind: PaperKind; readonly why: readonly Said[] };
