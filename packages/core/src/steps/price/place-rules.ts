import type { Figure } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { PriceBook } from '../../price-book.ts';
import { deposit, priceTotal, taxInvoice, taxLine } from '../../science/price/index.ts';
import { givenFact, type OptionContext } from '../context.ts';
import { amountLeftOver } from '../formulas/price-parts.ts';
import type { PriceLine } from '../results.ts';
import { givenAmount } from './amounts.ts';

type Place = NonNullable<PriceBook['places']>[number];

/** Tax and deposit are law of the place: data with document and date, or a line left for the firm's own entry. */
export interface PlaceRules {
  readonly tax?: Figure<'money'>;
  readonly total?: Figure<'money'>;
  readonly deposit?: Figure<'money'>;
  readonly notes: readonly Said[];
  readonly missing: readonly Missing[];
}

const document = (place: Place): string => `${place.jurisdiction}: ${place.source}, ${place.date}`;

const noPlace = (): Missing => ({
  path: 'place.jurisdiction',
  fact: { code: 'price-place-missing' },
  changes: { code: 'price-place-changes' },
  meanwhile: 'assumed',
});

/** What a tax is counted on: the material lines at cost, or everything, so that the parts add up to the price. */
function taxedParts(
  trace: Trace,
  taxed: NonNullable<Place['tax']>['taxed'],
  lines: readonly PriceLine[],
  price: Figure<'money'>,
): readonly Figure<'money'>[] {
  if (taxed === 'nothing') return [];
  if (taxed === 'material') return lines.filter(({ kind }) => kind === 'material').map(({ amount }) => amount);
  const cost = lines.map(({ amount }) => amount);
  return [...cost, trace.figure('tax-on-overhead-and-profit', amountLeftOver, { amount: price, parts: cost })];
}

function taxOf(
  trace: Trace,
  place: Place,
  rule: NonNullable<Place['tax']>,
  lines: readonly PriceLine[],
  price: Figure<'money'>,
): Figure<'money'> {
  const taxRate = givenFact(trace, 'tax-rate', rule.rate, { where: document(place), when: place.date });
  const parts = taxedParts(trace, rule.taxed, lines, price);
  if (rule.on === 'invoice') return trace.figure('tax', taxInvoice, { lines: parts, taxRate });
  const taxes = parts.map((amount, i) => trace.figure(`tax-line.${i}`, taxLine, { amount, taxRate }));
  return trace.figure('tax', priceTotal, { lines: taxes });
}

function depositOf(trace: Trace, book: PriceBook, place: Place, price: Figure<'money'>): Figure<'money'> | undefined {
  if (!place.deposit) return undefined;
  const share = givenFact(trace, 'deposit-share', place.deposit.share, { where: document(place), when: place.date });
  // Without an amount in the rule nothing but the price itself bounds the share.
  const cap = place.deposit.most ? givenAmount(trace, 'deposit-most', place.deposit.most, book) : price;
  return trace.figure('deposit', deposit, { price, share, cap });
}

export function placeRules(
  trace: Trace,
  ctx: OptionContext,
  book: PriceBook,
  lines: readonly PriceLine[],
  price: Figure<'money'>,
): PlaceRules {
  const jurisdiction = ctx.job.place.jurisdiction;
  const place = book.places?.find((p) => p.jurisdiction === jurisdiction);
  if (!place) {
    const notes: Said[] = [{ code: 'price-tax-not-known' }, { code: 'price-deposit-not-known' }];
    return { notes, missing: [noPlace()] };
  }
  const said = { names: { place: place.jurisdiction, document: place.source, date: place.date } };
  const notes: Said[] = [];
  const tax = place.tax && taxOf(trace, place, place.tax, lines, price);
  if (place.tax && tax) {
    notes.push({ code: `price-tax-on-${place.tax.taxed}`, figures: { tax: tax.id }, ...said });
  } else notes.push({ code: 'price-tax-not-known' });
  const first = depositOf(trace, book, place, price);
  notes.push(
    first
      ? { code: 'price-deposit-rule', figures: { deposit: first.id }, ...said }
      : { code: 'price-deposit-not-known' },
  );
  return {
    ...(tax ? { tax, total: trace.figure('total', priceTotal, { lines: [price, tax] }) } : {}),
    ...(first ? { deposit: first } : {}),
    notes,
    missing: [],
  };
}
