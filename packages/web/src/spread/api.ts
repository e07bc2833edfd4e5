import type { Answer, CatalogueFile, Instant, JobFile, SpreadsPlan } from '@slabwright/core';
import type { CompareDesk } from '../compare/api.ts';
import type { Dot, Shown, Units, WorkingView } from '../worker/api.ts';

/** What the screen asks of the spread and gets back, in the reader's words. */

export interface SpreadRequest {
  readonly job: JobFile;
  /** Null when it is the same as in the request before. */
  readonly catalogue: CatalogueFile | null;
  /** The weather file as it is stored; null without one. */
  readonly weather: unknown;
  readonly now: number | Instant;
  readonly units?: Units;
  readonly locale: string;
  readonly option: string;
  /** Look for up to half a minute instead of a moment, or only as long as a few orders take. */
  readonly effort?: 'full' | 'short';
}

/** How far a search is: orders of pours tried, of those it will try for this coat. */
export interface SpreadTold {
  readonly name: string;
  readonly done: number;
  readonly of: number;
}

/** Lines between two pours that must tie in wet, or where the film may end. */
export interface SeamLines {
  /** Pours on its two sides, from 0, the earlier first. */
  readonly pours: readonly [number, number];
  readonly lines: readonly (readonly [Dot, Dot])[];
}

/** The squares of one coat in the order they are spread: what the day is played from. */
export interface CoatCells {
  readonly layer: string;
  readonly areas: readonly string[];
  /** Which day, from 1, of a floor that takes several. */
  readonly day?: number;
  /** Milliseconds since 1970 of the first mixing. */
  readonly begun: number;
  readonly size: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** Minutes after the first mixing, rising. */
  readonly minute: Float32Array;
  /** From 0. */
  readonly pour: Uint16Array;
  /** Square beside each on its four sides (right, up, left, down), by place in the order; −1 for none. */
  readonly beside: Int32Array;
  /** For each of those sides: 1 where the film may end, and 1 where nobody gets through. */
  readonly free: Uint8Array;
  readonly narrow: Uint8Array;
  /** Places in the order one can leave by. */
  readonly doors: Int32Array;
  readonly seams: readonly SeamLines[];
  /** Where pours meet on a joint or a tape line: they need not tie in. */
  readonly ends: readonly (readonly [Dot, Dot])[];
}

export interface SpreadAnswer {
  readonly option: string;
  readonly spread: Answer<SpreadsPlan>;
  readonly shown: Readonly<Record<string, Shown>>;
  readonly texts: Readonly<Record<string, string>>;
  readonly cells: readonly CoatCells[];
  readonly milliseconds: number;
}

/** What a hand-made order breaks. */
export interface JudgedOrder {
  /** Nothing was judged: the floor itself has to be mended first. */
  readonly floor?: true;
  readonly ok: boolean;
  /** One sentence for each kind of break, worst first. */
  readonly breaks: readonly { readonly text: string; readonly pour?: number; readonly at?: Dot }[];
  readonly figures: readonly (readonly [name: string, text: string])[];
}

/** A coat by one of its rooms, and its day where there are several. */
export interface CoatAsked {
  readonly layer: string;
  readonly area: string;
  readonly day: number | undefined;
}

/** A pour as it is drawn; `planned`: its number in the plan, from 1, while it stands as planned. */
export interface PourAsked {
  readonly ring: readonly Dot[];
  readonly planned: number | undefined;
}

/** What runs in the second worker. */
export interface SpreadDesk extends CompareDesk {
  /** Null when the files cannot be planned as they stand; the plan itself says why. */
  spread(request: SpreadRequest, told: (progress: SpreadTold) => void): SpreadAnswer | null;
  spreadWorking(id: string): WorkingView | null;
  /** The pours of a coat in another order, judged; `order` lists their present numbers, from 1. */
  judgeOrder(coat: CoatAsked, order: readonly number[]): JudgedOrder | null;
  /** Pours drawn as outlines, in their order, judged; null where the floor itself cannot be planned. */
  judgeDrawn(coat: CoatAsked, pours: readonly PourAsked[]): JudgedOrder | null;
}
