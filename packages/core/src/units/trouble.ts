import type { Unit } from '../kernel/unit.ts';

/** What a person can mistype in a quantity. The sentence for each code stands in the message files. */
export const UNIT_TROUBLES = [
  'unit-missing',
  'unit-unknown',
  'unit-wrong-dimension',
  'unit-ambiguous',
  'number-missing',
  'number-unreadable',
  'number-ambiguous',
  'not-finite',
] as const;
export type UnitTroubleCode = (typeof UNIT_TROUBLES)[number];

/** What is wrong with a text, before anything is known about what was expected. */
export type TextTrouble = {
  readonly code: UnitTroubleCode;
  /** The whole text as it was typed. */
  readonly typed: string;
  /** The unit that was entered: its canonical name where it has one, else its text. */
  readonly got?: string;
  /** Dimension code of that unit, `none` for a combination that is no quantity. */
  readonly gotDimension?: string;
  /** Units, or whole numbers' readings, that may have been meant. */
  readonly didYouMean?: readonly string[];
};

/** What is wrong with a text that should have been a quantity of the expected unit. */
export type UnitTrouble = TextTrouble & { readonly expected: Unit; readonly expectedDimension: string };
