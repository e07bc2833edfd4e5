import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { PriceBook } from '../../price-book.ts';
import type { BuyingLine, PackChoice, PriceLine } from '../results.ts';
import { givenAmount, line, priced } from './amounts.ts';
import type { Measures } from './measures.ts';

export interface Lines {
  readonly lines: readonly PriceLine[];
  /** What keeps a line from being priced. */
  readonly reasons: readonly Reason[];
}

const packPrice = (book: PriceBook, product: string, pack: string): string | undefined =>
  book.packs.find((p) => p.product === product && p.pack === pack)?.price;

const bagPrice = (book: PriceBook, media: string): string | undefined =>
  book.media?.find((m) => m.media === media)?.bag;

const missing = (bought: BuyingLine, { pack }: PackChoice): Reason => ({
  verdict: 'not known',
  code: 'price-pack-missing',
  names: { item: bought.name, pack },
  lift: { code: 'price-pack-missing-lift', names: { item: bought.name, pack } },
});

/** One line for every kind of pack bought: whole packs at the price of the book, never litres. */
export function materialLines(trace: Trace, book: PriceBook, buying: readonly BuyingLine[], measures: Measures): Lines {
  const lines: PriceLine[] = [];
  const reasons: Reason[] = [];
  for (const bought of buying) {
    const t = trace.within(bought.kind).within(bought.item);
    for (const choice of bought.packs) {
      if (choice.count.value === 0) continue;
      const text = bought.kind === 'media' ? bagPrice(book, bought.item) : packPrice(book, bought.item, choice.pack);
      if (text === undefined) {
        reasons.push(missing(bought, choice));
        continue;
      }
      const rate = givenAmount(t, `${choice.pack}.each`, text, book);
      const measure = { quantity: choice.count, per: measures.one('piece') };
      const amount = priced(t, choice.pack, measure, rate);
      lines.push(line('material', `${bought.item}.${choice.pack}`, bought.name, measure, rate, amount));
    }
  }
  return { lines, reasons };
}
