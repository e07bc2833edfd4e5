import type { Unit } from './unit.ts';

/** Why a formula would not give a number. Data, so that a shell can say it in the reader's words. */
export interface Refusal {
  readonly code: string;
  readonly formula: string;
  readonly input?: string;
  readonly value?: number;
  readonly unit?: Unit;
  readonly limits?: readonly [number, number];
}

/**
 * Thrown inside a formula or by its evaluation when no honest number exists. The step that asked catches it at its
 * border and answers "not known" with the reason; it never becomes NaN.
 */
export class FormulaRefused extends Error {
  override readonly name = 'FormulaRefused';
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(
      `${refusal.formula} refused: ${refusal.code}${refusal.input ? ` (${refusal.input} = ${refusal.value})` : ''}`,
    );
    this.refusal = refusal;
  }
}

/** What a `compute` function throws; the evaluation adds the formula's id. */
export class Refuse extends Error {
  override readonly name = 'Refuse';
  readonly code: string;
  readonly input: string | undefined;
  readonly limits: readonly [number, number] | undefined;
  constructor(code: string, input?: string, limits?: readonly [number, number]) {
    super(code);
    this.code = code;
    this.input = input;
    this.limits = limits;
  }
}
