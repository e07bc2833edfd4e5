import type { AnyFormula } from '../../kernel/formula.ts';
import { breakEvenJobs, breakEvenRevenue, deposit, minimumCharge, overheadRate, priceToQuote } from './limits.ts';
import { priceLine, pricePerArea, priceRounded, priceShare, priceTotal, taxInvoice, taxLine } from './lines.ts';
import { wholePacks } from './packs.ts';
import {
  marginFromMarkup,
  marginOfPrice,
  markupFromMargin,
  priceFromMargin,
  priceFromMarkup,
  priceFromShares,
} from './shares.ts';

export * from './limits.ts';
export * from './lines.ts';
export * from './packs.ts';
export * from './shares.ts';

export const priceFormulas: readonly AnyFormula[] = [
  priceFromShares,
  priceFromMargin,
  priceFromMarkup,
  markupFromMargin,
  marginFromMarkup,
  marginOfPrice,
  priceLine,
  priceTotal,
  priceShare,
  priceRounded,
  taxLine,
  taxInvoice,
  pricePerArea,
  breakEvenRevenue,
  breakEvenJobs,
  minimumCharge,
  priceToQuote,
  overheadRate,
  deposit,
  wholePacks,
];
