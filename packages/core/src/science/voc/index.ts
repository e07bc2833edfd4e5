import type { AnyFormula } from '../../kernel/formula.ts';
import { coatingVoc, materialVoc, vocPerSolids } from './coating.ts';
import { mostThinner } from './most-thinner.ts';

export * from './coating.ts';
export * from './most-thinner.ts';

/** Volatile organic compounds of a coating. */
export const vocFormulas: readonly AnyFormula[] = [coatingVoc, materialVoc, vocPerSolids, mostThinner];
