import { formula } from '../../kernel/formula.ts';
import { lineAmount } from '../../kernel/money.ts';
import { Refuse } from '../../kernel/refusal.ts';

const money = [0, 1e9] as const;
const sense = [0, 1e14] as const;
const textbook = 'Textbook definition from memory (MEM); worked by hand (CALC).';

/** Revenue at which fixed cost is covered. */
export const breakEvenRevenue = formula({
  id: 'price/break-even-revenue',
  says: 'Revenue at which the fixed cost is covered',
  equation: 'revenue = fixedCost / contributionShare',
  takes: { fixedCost: 'money', contributionShare: '1' },
  gives: 'money',
  holds: { fixedCost: money, contributionShare: [0.05, 1] },
  refuses: { fixedCost: sense, contributionShare: [1e-6, 1] },
  source: 'break-even',
  shows: 'money',
  inputShows: { fixedCost: 'money', contributionShare: 'share' },
  noOutsideRow: textbook,
  compute: ({ fixedCost, contributionShare }) => fixedCost / contributionShare,
});

/** Jobs at which fixed cost is covered, unrounded: 461.54 means the 462nd job. Refused when a job earns nothing. */
export const breakEvenJobs = formula({
  id: 'price/break-even-jobs',
  says: 'Jobs at which the fixed cost is covered',
  equation: 'jobs = fixedCost / (price - variableCost)',
  takes: { fixedCost: 'money', price: 'money', variableCost: 'money' },
  gives: '1',
  holds: { fixedCost: money, price: money, variableCost: money },
  refuses: { fixedCost: sense, price: sense, variableCost: sense },
  source: 'break-even',
  shows: 'count',
  inputShows: { fixedCost: 'money', price: 'money', variableCost: 'money' },
  noOutsideRow: textbook,
  compute: ({ fixedCost, price, variableCost }) => {
    if (!(price > variableCost)) throw new Refuse('no-contribution', 'variableCost', [0, price]);
    return fixedCost / (price - variableCost);
  },
});

/** Smallest charge that covers turning up at all and keeps the margin. */
export const minimumCharge = formula({
  id: 'price/minimum-charge',
  says: 'Smallest charge that covers turning up and keeps the margin',
  equation: 'charge = (mobilisation + leastCrewDay) / (1 - margin)',
  takes: { mobilisation: 'money', leastCrewDay: 'money', margin: '1' },
  gives: 'money',
  holds: { mobilisation: money, leastCrewDay: money, margin: [0, 0.6] },
  refuses: { mobilisation: sense, leastCrewDay: sense, margin: [0, 0.999] },
  source: 'price-from-margin',
  shows: 'money',
  inputShows: { mobilisation: 'money', leastCrewDay: 'money', margin: 'share' },
  noOutsideRow: 'The law of price from margin; the worked number is own arithmetic (CALC).',
  compute: ({ mobilisation, leastCrewDay, margin }) => (mobilisation + leastCrewDay) / (1 - margin),
});

/** Price to quote: the computed one, or the minimum charge where that is more. */
export const priceToQuote = formula({
  id: 'price/to-quote',
  says: 'Computed price, or the minimum charge where that is more',
  equation: 'quote = max(computed, minimum)',
  takes: { computed: 'money', minimum: 'money' },
  gives: 'money',
  holds: { computed: money, minimum: money },
  refuses: { computed: sense, minimum: sense },
  source: 'price-from-margin',
  shows: 'money',
  inputShows: { computed: 'money', minimum: 'money' },
  noOutsideRow: 'A comparison; worked by hand (CALC).',
  compute: ({ computed, minimum }) => Math.max(computed, minimum),
});

/**
 * Overhead that each productive hour must carry, money per second.
 *
 * `utilisation` is the share of paid hours spent on floors: travel, waiting and quoting carry no overhead themselves.
 */
export const overheadRate = formula({
  id: 'price/overhead-rate',
  says: 'Overhead that each productive hour must carry',
  equation: 'rate = annualOverhead / (crewTime x utilisation)',
  takes: { annualOverhead: 'money', crewTime: 's', utilisation: '1' },
  gives: 'money/s',
  holds: { annualOverhead: money, crewTime: [360_000, 720_000_000], utilisation: [0.3, 1] },
  refuses: { annualOverhead: sense, crewTime: [1, 1e12], utilisation: [1e-3, 1] },
  source: 'overhead-recovery',
  shows: 'money',
  inputShows: { annualOverhead: 'money', crewTime: 'duration', utilisation: 'share' },
  noOutsideRow: textbook,
  compute: ({ annualOverhead, crewTime, utilisation }) => annualOverhead / (crewTime * utilisation),
});

/** Deposit as one printed line: a share of the price, at most what the rule of the place allows. */
export const deposit = formula({
  id: 'price/deposit',
  says: 'Deposit: a share of the price, capped',
  equation: 'deposit = min(round(price x share), cap)',
  takes: { price: 'money', share: '1', cap: 'money' },
  gives: 'money',
  holds: { price: money, share: [0, 0.5], cap: money },
  refuses: { price: sense, share: [0, 1], cap: sense },
  source: 'home-improvement-deposit',
  notes: 'Share and cap belong to a place, a document and a date: they are inputs, never built in.',
  shows: 'money',
  inputShows: { price: 'money', share: 'share', cap: 'money' },
  noOutsideRow: 'The rule was read, no worked example with it; worked by hand (CALC).',
  compute: ({ price, share, cap }) => Math.min(lineAmount(price, share), cap),
});
