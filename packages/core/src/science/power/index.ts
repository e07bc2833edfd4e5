import type { AnyFormula } from '../../kernel/formula.ts';
import { continuousBreaker, currentDrawn } from './current.ts';

export * from './current.ts';

export const powerFormulas: readonly AnyFormula[] = [currentDrawn, continuousBreaker];
