import type { Figure, Given, Known } from '../../kernel/entry.ts';
import { rateFromText } from '../../kernel/money.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import type { PriceBook } from '../../price-book.ts';
import { priceLine } from '../../science/price/index.ts';
import type { PriceLine } from '../results.ts';

/** Where an amount of the price book stands, for the working of whoever asks. */
export const bookPlace = (book: PriceBook): string => (book.date ? `${book.id}, ${book.date}` : book.id);

/** An amount of the price book as a Given in minor units, with its text as typed. */
export const givenAmount = (trace: Trace, name: string, text: string, book: PriceBook): Given<'money'> =>
  trace.given(name, {
    value: rateFromText(text, book.currency),
    unit: 'money',
    origin: 'price',
    typed: `${text} ${book.currency}`,
    where: bookPlace(book),
    shows: 'money',
  });

/** How much of something, and the amount of it that one price is for. */
export interface Measure<U extends Unit = Unit> {
  readonly quantity: Known<U>;
  readonly per: Given<U>;
}

/** Quantity times price, rounded once. Ids: `name.each` and `name.amount`. */
export function priced(trace: Trace, name: string, { quantity, per }: Measure, rate: Given<'money'>): Figure<'money'> {
  return trace.figure(`${name}.amount`, priceLine, { quantity, per, rate });
}

export const line = (
  kind: PriceLine['kind'],
  id: string,
  name: string,
  { quantity }: Measure,
  rate: Given<'money'>,
  amount: Figure<'money'>,
): PriceLine => ({ id, kind, name, quantity, rate, amount });
