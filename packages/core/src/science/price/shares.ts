import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const cost = [0, 1e9] as const;
const sense = [0, 1e14] as const;
const share = [0, 0.6] as const;
const shareSense = [0, 0.999] as const;

/**
 * Price that leaves the stated shares of itself for overhead and profit, unrounded.
 *
 * Shares of the price, not of the cost: adding 25 % and 15 % to the cost instead leaves 11 % and 7 % too little. The
 * residue of printed shares is shown, not hidden.
 */
export const priceFromShares = formula({
  id: 'price/from-shares',
  says: 'Price that leaves the stated shares of itself for overhead and profit',
  equation: 'price = cost / (1 - overheadShare - profitShare)',
  takes: { cost: 'money', overheadShare: '1', profitShare: '1' },
  gives: 'money',
  holds: { cost, overheadShare: share, profitShare: share },
  refuses: { cost: sense, overheadShare: shareSense, profitShare: shareSense },
  source: 'price-from-margin',
  notes: 'Unrounded; a printed line is rounded once.',
  shows: 'money',
  inputShows: { cost: 'money', overheadShare: 'share', profitShare: 'share' },
  noOutsideRow: 'The law of price from margin with two shares; the worked number is own arithmetic (CALC).',
  compute: ({ cost, overheadShare, profitShare }) => {
    const kept = 1 - overheadShare - profitShare;
    if (!(kept > 1e-3)) throw new Refuse('shares-eat-the-price', 'profitShare', [0, 0.999 - overheadShare]);
    return cost / kept;
  },
});

/** Price that leaves a margin, the share of the price above cost. */
export const priceFromMargin = formula({
  id: 'price/from-margin',
  says: 'Price that leaves a margin',
  equation: 'price = cost / (1 - margin)',
  takes: { cost: 'money', margin: '1' },
  gives: 'money',
  holds: { cost, margin: share },
  refuses: { cost: sense, margin: shareSense },
  source: 'price-from-margin',
  shows: 'money',
  inputShows: { cost: 'money', margin: 'share' },
  compute: ({ cost, margin }) => cost / (1 - margin),
});

/** Price that adds a markup, the share of the cost. */
export const priceFromMarkup = formula({
  id: 'price/from-markup',
  says: 'Price that adds a markup to the cost',
  equation: 'price = cost (1 + markup)',
  takes: { cost: 'money', markup: '1' },
  gives: 'money',
  holds: { cost, markup: [0, 2] },
  refuses: { cost: sense, markup: [0, 1000] },
  source: 'price-from-margin',
  shows: 'money',
  inputShows: { cost: 'money', markup: 'share' },
  compute: ({ cost, markup }) => cost * (1 + markup),
});

/** Markup on cost that leaves a margin on the price: 30 % of margin is 42.9 % of markup. */
export const markupFromMargin = formula({
  id: 'price/markup-from-margin',
  says: 'Markup on the cost that leaves a margin on the price',
  equation: 'markup = margin / (1 - margin)',
  takes: { margin: '1' },
  gives: '1',
  holds: { margin: share },
  refuses: { margin: shareSense },
  source: 'price-from-margin',
  shows: 'share',
  inputShows: { margin: 'share' },
  compute: ({ margin }) => margin / (1 - margin),
});

/** Margin on the price that a markup on the cost leaves: 30 % of markup is 23.1 % of margin. */
export const marginFromMarkup = formula({
  id: 'price/margin-from-markup',
  says: 'Margin on the price that a markup on the cost leaves',
  equation: 'margin = markup / (1 + markup)',
  takes: { markup: '1' },
  gives: '1',
  holds: { markup: [0, 2] },
  refuses: { markup: [0, 1000] },
  source: 'price-from-margin',
  shows: 'share',
  inputShows: { markup: 'share' },
  compute: ({ markup }) => markup / (1 + markup),
});

/** Share of the price a cost makes up, or that stays above it. */
export const marginOfPrice = formula({
  id: 'price/margin',
  says: 'Share of the price that stays above the cost',
  equation: 'margin = 1 - cost / price',
  takes: { cost: 'money', price: 'money' },
  gives: '1',
  holds: { cost, price: [1, 1e9] },
  refuses: { cost: sense, price: [1e-6, 1e14] },
  source: 'price-from-margin',
  shows: 'share',
  inputShows: { cost: 'money', price: 'money' },
  compute: ({ cost, price }) => 1 - cost / price,
});
