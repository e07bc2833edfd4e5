import type { Shows } from './shows.ts';
import type { Unit } from './unit.ts';

/** P10-P90 of a value, in the unit of the value. */
export type Band = readonly [low: number, high: number];

/**
 * What makes a value uncertain, by named cause: one signed standard deviation each, in the unit of the value.
 * Two values that share a cause (one tape, one thermometer, one slab) carry the same name, so that the
 * uncertainty of what follows from both adds up with its sign instead of being counted as independent.
 */
export type Causes = Readonly<Record<string, number>>;

/** Where a number that nobody computed comes from. */
export const ORIGINS = [
  'reading',
  'data sheet',
  'own test',
  'price',
  "firm's rate",
  'table',
  'chosen',
  'assumed',
] as const;
export type Origin = (typeof ORIGINS)[number];

/** A number somebody read, measured, chose or assumed. */
export interface Given<U extends Unit = Unit> {
  readonly kind: 'given';
  readonly id: string;
  readonly value: number;
  readonly unit: U;
  readonly origin: Origin;
  /** Place: a test point, a data sheet with its date, a table row. */
  readonly where?: string;
  /** When it was read, as an instant with its offset, or the date of a sheet. */
  readonly when?: string;
  /** The text exactly as a person typed it. */
  readonly typed?: string;
  /** Key into the bibliography, for a value out of a table. */
  readonly source?: string;
  /** Code of the sentence that says what an assumption changes. */
  readonly says?: string;
  readonly band?: Band;
  readonly causes?: Causes;
  readonly shows?: Shows;
}

/** A number that a formula gave, with the ids of what it was computed from. */
export interface Figure<U extends Unit = Unit> {
  readonly kind: 'figure';
  readonly id: string;
  readonly value: number;
  readonly unit: U;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, string | readonly string[]>>;
  readonly source: string;
  /** Names of the inputs that lie outside the valid range of the formula. */
  readonly outside: readonly string[];
  readonly band?: Band;
  readonly causes?: Causes;
  readonly shows?: Shows;
}

/** One list of one unit that a formula gave: batch volumes, residuals of a taped room. */
export interface FigureList<U extends Unit = Unit> {
  readonly kind: 'list';
  readonly id: string;
  readonly values: readonly number[];
  readonly unit: U;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, string | readonly string[]>>;
  readonly source: string;
  readonly outside: readonly string[];
  readonly shows?: Shows;
}

/** Values over time or over the floor: one law, one unit, one provenance. */
export interface Series<U extends Unit = Unit> {
  readonly kind: 'series';
  readonly id: string;
  readonly values: readonly number[];
  readonly low?: readonly number[];
  readonly high?: readonly number[];
  readonly unit: U;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, string | readonly string[]>>;
  readonly source: string;
  readonly outside: readonly string[];
  /** First instant and spacing in seconds when the values run over time. */
  readonly from?: string;
  readonly step?: number;
  readonly shows?: Shows;
}

/** One number with its working. */
export type Known<U extends Unit = Unit> = Given<U> | Figure<U>;
export type Entry = Given | Figure | FigureList | Series;
