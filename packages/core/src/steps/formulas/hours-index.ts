import type { AnyFormula } from '../../kernel/formula.ts';
import { batchCount, paidTime, personTime, slabRate, slowedRate } from './hours-tasks.ts';

/** Small sums of the hours step. */
export const hoursFormulas: readonly AnyFormula[] = [batchCount, slowedRate, personTime, paidTime, slabRate];
