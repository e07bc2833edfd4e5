import { formula } from '../../kernel/formula.ts';

const money = [0, 1e9] as const;
const sense = [-1e14, 1e14] as const;
const byHand = 'Plain arithmetic; worked by hand (own arithmetic).';
/** Half a second of a day's work is no further day. */
const GUARD = 1e-6;

/** What stays of an amount after its printed parts: profit above a cost, or the residue of rounded shares. */
export const amountLeftOver = formula({
  id: 'price/left-over',
  says: 'What stays of an amount after its parts',
  equation: 'rest = amount − sum(parts)',
  takes: { amount: 'money', parts: 'money[]' },
  gives: 'money',
  holds: { amount: money, parts: money },
  refuses: { amount: sense, parts: sense },
  source: 'money-in-minor-units',
  noOutsideRow: byHand,
  shows: 'money',
  inputShows: { amount: 'money', parts: 'money' },
  compute: ({ amount, parts }) => amount - parts.reduce((sum, part) => sum + part, 0),
});

/** Days a crew is on site, whole; `paid` is person-time in s, `day` the length of a working day in s. */
export const crewDays = formula({
  id: 'price/crew-days',
  says: 'Whole days that a crew is paid for',
  equation: 'days = ⌈paid / (people × day)⌉',
  takes: { paid: 's', people: '1', day: 's' },
  gives: '1',
  holds: { paid: [0, 7.2e7], people: [1, 40], day: [14_400, 43_200] },
  refuses: { paid: [0, 1e9], people: [1, 1000], day: [3600, 86_400] },
  source: 'rate-of-work',
  noOutsideRow: byHand,
  shows: 'count',
  inputShows: { paid: 'duration', people: 'count', day: 'duration' },
  compute: ({ paid, people, day }) => Math.ceil(paid / (people * day) - GUARD),
});

/** Hours a price counts, s: whole quarter hours, so that the printed line multiplies out. Both in s. */
export const hoursPriced = formula({
  id: 'price/hours-priced',
  says: 'Hours that a price counts, in whole quarter hours',
  equation: 'priced = ⌈paid / step⌉ × step',
  takes: { paid: 's', step: 's' },
  gives: 's',
  holds: { paid: [0, 7.2e7], step: [60, 3600] },
  refuses: { paid: [0, 1e9], step: [1, 86_400] },
  source: 'rate-of-work',
  notes: 'Rounded up: the quarter hour that is begun is paid. The estimate keeps its band, the price does not.',
  noOutsideRow: byHand,
  shows: 'work-time',
  inputShows: { paid: 'work-time', step: 'duration' },
  compute: ({ paid, step }) => Math.max(0, Math.ceil(paid / step - GUARD)) * step,
});
