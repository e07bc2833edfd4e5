import type { AnyFormula } from '../../kernel/formula.ts';
import { dustMass, shroudAirflow } from './dust.ts';

export * from './dust.ts';

/** Dust of grinding. */
export const dustFormulas: readonly AnyFormula[] = [shroudAirflow, dustMass];
