import type { Figure } from '../../kernel/entry.ts';
import { rateFromText } from '../../kernel/money.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { PriceBook } from '../../price-book.ts';
import type { OptionContext } from '../context.ts';

/** What the customer said they can spend beside the price. Two currencies are never compared. */
export function budgetNote(trace: Trace, ctx: OptionContext, book: PriceBook, asked: Figure<'money'>): readonly Said[] {
  const budget = ctx.job.budget;
  if (!budget) return [];
  if (budget.currency !== book.currency) {
    return [{ code: 'price-budget-other-currency', names: { budget: budget.currency, book: book.currency } }];
  }
  const given = trace.given('budget', {
    value: rateFromText(budget.amount, budget.currency),
    unit: 'money',
    origin: 'chosen',
    typed: `${budget.amount} ${budget.currency}`,
    shows: 'money',
  });
  const code = asked.value > given.value ? 'price-above-budget' : 'price-within-budget';
  return [{ code, figures: { asked: asked.id, budget: given.id } }];
}
