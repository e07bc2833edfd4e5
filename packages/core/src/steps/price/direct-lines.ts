import type { Trace } from '../../kernel/trace.ts';
import type { PriceBook } from '../../price-book.ts';
import type { PriceLine } from '../results.ts';
import { givenAmount, line, priced } from './amounts.ts';
import type { Lines } from './material.ts';
import type { Measures } from './measures.ts';

/** Hours paid for times the wage. Paid hours, not hours of work: travel and waiting cost the same. */
export function labourLine(trace: Trace, book: PriceBook, measures: Measures): PriceLine {
  const rate = givenAmount(trace, 'labour.each', book.wage, book);
  const measure = { quantity: measures.hours(), per: measures.one('h') };
  return line('labour', 'labour', '@price-labour', measure, rate, priced(trace, 'labour', measure, rate));
}

/** The lines of the price book: consumables, disposal, travel, hire, each by its measure. */
export function bookLines(trace: Trace, book: PriceBook, measures: Measures): Lines {
  const lines: PriceLine[] = [];
  const reasons: Lines['reasons'][number][] = [];
  const seen = new Map<string, number>();
  for (const { id: written, name, per, amount: text } of book.lines ?? []) {
    // Nothing forbids two lines of one id in a price book; both cost money.
    const times = (seen.get(written) ?? 0) + 1;
    seen.set(written, times);
    const id = times > 1 ? `${written}~${times}` : written;
    const measure = measures.of(per);
    if (!measure) {
      // Nothing is thrown in this option, so a price per weight of grain comes to nothing.
      if (per === 'kg' || per === 'lb') continue;
      reasons.push({
        verdict: 'not known',
        code: 'price-line-without-measure',
        names: { line: name, per },
        lift: { code: 'price-line-without-measure-lift' },
      });
      continue;
    }
    const t = trace.within('line');
    const rate = givenAmount(t, `${id}.each`, text, book);
    lines.push(line('line', id, name, measure, rate, priced(t, id, measure, rate)));
  }
  return { lines, reasons };
}
