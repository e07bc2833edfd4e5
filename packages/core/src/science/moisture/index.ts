import type { AnyFormula } from '../../kernel/formula.ts';
import { emissionRate } from './emission-rate.ts';
import { probeDepth, testsNeeded } from './tests-needed.ts';

export * from './emission-rate.ts';
export * from './tests-needed.ts';

/** Moisture of the slab. */
export const moistureFormulas: readonly AnyFormula[] = [emissionRate, testsNeeded, probeDepth];
