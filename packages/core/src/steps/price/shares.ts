import type { Figure, Given } from '../../kernel/entry.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { PriceBook } from '../../price-book.ts';
import { priceFromShares, priceRounded, priceShare, priceToQuote } from '../../science/price/index.ts';
import { givenFact } from '../context.ts';
import { amountLeftOver } from '../formulas/price-parts.ts';
import { bookPlace, givenAmount } from './amounts.ts';

export interface Priced {
  readonly price: Figure<'money'>;
  readonly overhead: Figure<'money'>;
  readonly profit: Figure<'money'>;
  readonly notes: readonly Said[];
}

interface Shares {
  readonly overhead: Given<'1'>;
  readonly profit: Given<'1'>;
}

const sharesOf = (trace: Trace, book: PriceBook): Shares => ({
  overhead: givenFact(trace, 'overhead-share', book.overhead, { where: bookPlace(book) }),
  profit: givenFact(trace, 'profit-share', book.profit, { where: bookPlace(book) }),
});

/** Overhead is what its share of the charge is; profit is whatever the charge leaves, more than its own share. */
function atMinimum(trace: Trace, cost: Figure<'money'>, charge: Figure<'money'>, shares: Shares): Priced {
  const overhead = trace.figure('overhead', priceShare, { amount: charge, share: shares.overhead });
  const profit = trace.figure('profit', amountLeftOver, { amount: charge, parts: [cost, overhead] });
  return {
    price: charge,
    overhead,
    profit,
    notes: [{ code: 'price-minimum-applies', figures: { price: charge.id, cost: cost.id } }],
  };
}

/**
 * Price of a cost. Overhead and profit are shares of the PRICE, computed unrounded; each printed line is rounded once
 * and what the rounding leaves between them is shown. Never below the cost, nor below the least a job is charged.
 */
export function priceOf(trace: Trace, book: PriceBook, cost: Figure<'money'>): Priced | Reason {
  const shares = sharesOf(trace, book);
  let exact: Figure<'money'>;
  try {
    exact = trace.figure('exact', priceFromShares, {
      cost,
      overheadShare: shares.overhead,
      profitShare: shares.profit,
    });
  } catch (trouble) {
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    return {
      verdict: 'not known',
      code: 'price-shares-eat-the-price',
      figures: { overhead: shares.overhead.id, profit: shares.profit.id },
      lift: { code: 'price-shares-eat-the-price-lift', figures: { overhead: shares.overhead.id } },
    };
  }
  const printed = trace.figure('printed', priceRounded, { amount: exact });
  if (book.minimumJob) {
    const minimum = givenAmount(trace, 'minimum-job', book.minimumJob, book);
    const charge = trace.figure('price', priceToQuote, { computed: printed, minimum });
    if (minimum.value > printed.value) return atMinimum(trace, cost, charge, shares);
    return split(trace, cost, exact, charge, shares);
  }
  return split(trace, cost, exact, printed, shares);
}

function split(
  trace: Trace,
  cost: Figure<'money'>,
  exact: Figure<'money'>,
  price: Figure<'money'>,
  shares: Shares,
): Priced {
  const overhead = trace.figure('overhead', priceShare, { amount: exact, share: shares.overhead });
  const profit = trace.figure('profit', priceShare, { amount: exact, share: shares.profit });
  const residue = trace.figure('residue', amountLeftOver, { amount: price, parts: [cost, overhead, profit] });
  const notes: Said[] = [];
  if (residue.value !== 0) notes.push({ code: 'price-residue', figures: { residue: residue.id } });
  if (shares.profit.value === 0) notes.push({ code: 'price-without-profit' });
  if (exact.outside.length > 0) notes.push({ code: 'price-shares-unusual' });
  return { price, overhead, profit, notes };
}
