import { mediaNames, packNames, pricedNames } from './names-in-files.ts';
import { freshId, type Raw, textAt } from './path.ts';
import { choice, DATE, FLAG, fact, field, list, quantity, type Section, TEXT } from './spec.ts';

/** The firm's money. It stays on this device unless it is saved elsewhere. */

const AMOUNT = (example: string) => ({ is: 'amount', example }) as const;
const PER = choice(['job', 'day', 'h', 'm²', 'ft²', 'm', 'ft', 'kg', 'lb', 'piece']);
const share = (example: string) => fact('1', example);
const priced = (item: Raw): string =>
  [textAt(item, ['name']), textAt(item, ['amount']), textAt(item, ['per'])].filter(Boolean).join(', ');

export const PRICE_SECTIONS: readonly Section[] = [
  {
    id: 'money',
    title: 'Money rules',
    parts: [
      field('currency', 'Currency', TEXT, 'Three letters, such as USD.'),
      field('date', 'Prices of', DATE),
      field('wage', 'An hour of work costs', AMOUNT('38.00'), 'With everything the firm pays for it.'),
      field('overhead', 'Overhead', share('25 %'), 'Share of the price, not of the cost.'),
      field('profit', 'Profit', share('20 %'), 'Share of the price.'),
      field('minimumJob', 'Smallest job', AMOUNT('1800.00')),
      field('validFor', 'A price holds for', quantity('s', '30 d')),
      list('packs', 'Packs', {
        one: 'a price of a pack',
        title: (item) =>
          [textAt(item, ['product']), textAt(item, ['pack']), textAt(item, ['price'])].filter(Boolean).join(', '),
        begin: () => ({}),
        parts: [
          field('product', 'Product', { is: 'one of', from: pricedNames }),
          field('pack', 'Pack', { is: 'one of', from: packNames }),
          field('price', 'Price', AMOUNT('230.00')),
        ],
      }),
      list('media', 'Broadcast', {
        one: 'a price of a bag',
        title: (item) => [textAt(item, ['media']), textAt(item, ['bag'])].filter(Boolean).join(', '),
        begin: () => ({}),
        parts: [
          field('media', 'Broadcast', { is: 'one of', from: mediaNames }),
          field('bag', 'A bag', AMOUNT('140.00')),
        ],
      }),
      list('lines', 'Other costs', {
        one: 'a cost',
        title: priced,
        begin: (items) => ({ id: freshId('line', items) }),
        parts: [
          field('name', 'Name', TEXT),
          field('amount', 'Amount', AMOUNT('200.00')),
          field('per', 'For each', PER),
        ],
      }),
      list('changes', 'Changes priced beforehand', {
        one: 'a change',
        title: priced,
        begin: (items) => ({ id: freshId('change', items) }),
        parts: [
          field('name', 'Name', TEXT),
          field('amount', 'Amount', AMOUNT('180.00')),
          field('per', 'For each', PER),
          field('deducts', 'The customer pays less', FLAG),
          field('trigger', 'Only when', TEXT),
        ],
      }),
      list('places', 'Rules of a place', {
        one: 'a place',
        note: 'With the document they stand in. Nothing here is filled in for you.',
        title: (item) => textAt(item, ['jurisdiction']),
        begin: () => ({}),
        parts: [
          field('jurisdiction', 'Place', TEXT),
          field('source', 'Document', TEXT),
          field('date', 'Dated', DATE),
          field('tax.rate', 'Tax', share('6 %')),
          field('tax.on', 'Rounded by', choice(['line', 'invoice'])),
          field('tax.taxed', 'On', choice(['material', 'everything', 'nothing'])),
          field('deposit.share', 'Deposit, at most', share('33 %')),
          field('deposit.most', 'and no more than', AMOUNT('1000.00')),
        ],
      }),
    ],
  },
];
