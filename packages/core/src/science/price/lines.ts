import Big from 'big.js';
import { formula } from '../../kernel/formula.ts';
import { lineAmount, roundMinor } from '../../kernel/money.ts';

const money = [0, 1e9] as const;
const sense = [-1e14, 1e14] as const;
const convention = 'A convention of bookkeeping, exact by definition; worked by hand (CALC).';

/** Undoes what turning hours, feet or gallons into SI left in the last digits, so that 7.5 h is 7.5 again. */
const unitsOf = (quantity: number, per: number): number => Number((quantity / per).toPrecision(12));

/**
 * One printed line: a quantity times a rate, rounded once to whole minor units, half away from zero.
 *
 * The rate belongs to one `per`: 33.33 an hour is rate 3333 and per 3600 s. The product is taken in decimals, so
 * that 7.5 h at 33.33 is 249.98 as on paper, where binary digits alone would lose the half cent.
 */
export const priceLine = formula({
  id: 'price/line',
  says: 'One printed line: a quantity times a rate, rounded once',
  equation: 'amount = round(quantity / per x rate)',
  takes: { quantity: '*', per: '*', rate: 'money' },
  gives: 'money',
  holds: { rate: money },
  refuses: { quantity: [-1e12, 1e12], per: [1e-12, 1e12], rate: sense },
  source: 'money-in-minor-units',
  locator: 'a line is rounded once',
  shows: 'money',
  inputShows: { rate: 'money' },
  noOutsideRow: convention,
  compute: ({ quantity, per, rate }) => lineAmount(unitsOf(quantity, per), rate),
});

/** Total of printed lines: they are added as printed, so that the paper adds up. */
export const priceTotal = formula({
  id: 'price/total',
  says: 'Total of printed lines',
  equation: 'total = sum(lines)',
  takes: { lines: 'money[]' },
  gives: 'money',
  holds: { lines: [-1e9, 1e9] },
  refuses: { lines: sense },
  source: 'money-in-minor-units',
  locator: 'the total is the sum of the printed lines',
  shows: 'money',
  inputShows: { lines: 'money' },
  noOutsideRow: convention,
  compute: ({ lines }) => lines.reduce((sum, line) => sum + line, 0),
});

/** Share of an amount as one printed line: contingency, overhead, profit, a rebate. */
export const priceShare = formula({
  id: 'price/share-line',
  says: 'Share of an amount as one printed line',
  equation: 'line = round(amount x share)',
  takes: { amount: 'money', share: '1' },
  gives: 'money',
  holds: { amount: money, share: [-1, 1] },
  refuses: { amount: sense, share: [-10, 10] },
  source: 'money-in-minor-units',
  locator: 'a line is rounded once',
  shows: 'money',
  inputShows: { amount: 'money', share: 'share' },
  noOutsideRow: convention,
  compute: ({ amount, share }) => lineAmount(amount, share),
});

/** An amount as it is printed: whole minor units, half away from zero. */
export const priceRounded = formula({
  id: 'price/rounded',
  says: 'An amount as it is printed',
  equation: 'printed = round(amount)',
  takes: { amount: 'money' },
  gives: 'money',
  holds: { amount: money },
  refuses: { amount: sense },
  source: 'money-in-minor-units',
  locator: 'a line is rounded once',
  shows: 'money',
  inputShows: { amount: 'money' },
  noOutsideRow: convention,
  compute: ({ amount }) => roundMinor(amount),
});

const taxNote = 'The rounding rule of the agreement is from memory (MEM); worked by hand (CALC).';

/** Tax on one line, rounded on that line. Both ways of rounding occur; the seller keeps to one. */
export const taxLine = formula({
  id: 'price/tax-line',
  says: 'Tax on one line, rounded on that line',
  equation: 'tax = round(amount x taxRate)',
  takes: { amount: 'money', taxRate: '1' },
  gives: 'money',
  holds: { amount: money, taxRate: [0, 0.3] },
  refuses: { amount: sense, taxRate: [0, 1] },
  source: 'sales-tax-rounding',
  notes: 'Whether a resin floor is taxed at all is law of the place.',
  shows: 'money',
  inputShows: { amount: 'money', taxRate: 'share' },
  noOutsideRow: taxNote,
  compute: ({ amount, taxRate }) => lineAmount(amount, taxRate),
});

/** Tax on a whole invoice, rounded once. Differs from the sum of taxes by line by a few cents. */
export const taxInvoice = formula({
  id: 'price/tax-invoice',
  says: 'Tax on a whole invoice, rounded once',
  equation: 'tax = round(sum(lines) x taxRate)',
  takes: { lines: 'money[]', taxRate: '1' },
  gives: 'money',
  holds: { lines: [-1e9, 1e9], taxRate: [0, 0.3] },
  refuses: { lines: sense, taxRate: [0, 1] },
  source: 'sales-tax-rounding',
  shows: 'money',
  inputShows: { lines: 'money', taxRate: 'share' },
  noOutsideRow: taxNote,
  compute: ({ lines, taxRate }) =>
    lines
      .reduce((sum, line) => sum.plus(line), new Big(0))
      .times(taxRate)
      .round(0, Big.roundHalfUp)
      .toNumber(),
});

/** Price per square metre of floor. A ratio for comparing, never a rate to price from. */
export const pricePerArea = formula({
  id: 'price/per-area',
  says: 'Price per area of floor',
  equation: 'rate = price / area',
  takes: { price: 'money', area: 'm²' },
  gives: 'money/m²',
  holds: { price: money, area: [1, 100_000] },
  refuses: { price: sense, area: [1e-6, 1e9] },
  source: 'money-in-minor-units',
  shows: 'money',
  inputShows: { price: 'money', area: 'area' },
  noOutsideRow: 'A ratio; worked by hand (CALC).',
  compute: ({ price, area }) => price / area,
});
