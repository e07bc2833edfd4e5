import type { AnyFormula } from '../../kernel/formula.ts';
import { amountLeftOver, crewDays, hoursPriced } from './price-parts.ts';

/** Small sums of the price step; the laws of prices stand with the science. */
export const priceStepFormulas: readonly AnyFormula[] = [amountLeftOver, crewDays, hoursPriced];
