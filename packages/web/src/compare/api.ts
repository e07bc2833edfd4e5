import type { CatalogueFile, Instant, JobFile, PriceBookFile } from '@slabwright/core';
import type { Units } from '../worker/api.ts';

/** Systems and sheets side by side, already in the reader's words. */

export interface CompareRequest {
  readonly job: JobFile;
  readonly catalogue: CatalogueFile;
  readonly priceBook: PriceBookFile | null;
  /** The weather file as it is stored; null without one. */
  readonly weather: unknown;
  readonly now: number | Instant;
  readonly units?: Units;
  readonly locale: string;
  /** Products whose sheets are set side by side; none chosen: those that state most. */
  readonly products: readonly string[];
}

/** A number with its place on the scale of its row, in SI. */
export interface Measured {
  readonly text: string;
  readonly value: number;
}

export interface SystemShown {
  readonly id: string;
  readonly name: string;
  readonly fits: 'yes' | 'no' | 'not known';
  readonly front: boolean;
  readonly beatenBy?: string;
  readonly layers: readonly string[];
  /** The one reason against it, or the one unknown, and what would admit it. */
  readonly reason?: string;
  readonly lift?: string;
  readonly also: readonly string[];
  readonly cautions: readonly string[];
  readonly price?: Measured;
  readonly hours?: Measured;
  readonly untilUse?: Measured;
  readonly margin?: Measured & { readonly need: string };
  /** Every must-have with a number on both sides, the weakest first. */
  readonly margins: readonly { readonly need: string; readonly at: string; readonly text: string }[];
  /** First start and first use in the weather given. */
  readonly starts?: Instant;
  readonly ready?: Instant;
  /** Why a number is missing. */
  readonly unknown: readonly string[];
}

export interface SheetCell {
  readonly product: string;
  readonly text: string;
  /** Low and high end on the common scale of the row; absent where it may not be compared, or is no number. */
  readonly bar?: readonly [low: number, high: number];
  /** Method, or the short reason why it may not be compared. */
  readonly note: string;
  readonly comparable: boolean;
}

export interface SheetRow {
  readonly key: string;
  readonly name: string;
  readonly better: string;
  readonly cells: readonly SheetCell[];
  /** How those that may be compared stand to each other. */
  readonly says: readonly string[];
}

export interface CompareView {
  readonly use: string;
  readonly timesFrom: 'weather' | 'sheets';
  readonly systems: readonly SystemShown[];
  /** What stands against every system alike. */
  readonly common: readonly string[];
  readonly about: readonly string[];
  readonly offered: readonly { readonly id: string; readonly name: string; readonly states: number }[];
  readonly products: readonly { readonly id: string; readonly name: string; readonly sheet: string }[];
  readonly rows: readonly SheetRow[];
  readonly doubts: readonly string[];
  readonly asks: readonly { readonly name: string; readonly wanted: readonly string[] }[];
}

export interface CompareDesk {
  /** Null when the job has no option to try systems with, or its files cannot be planned. */
  compare(request: CompareRequest): CompareView | null;
}
