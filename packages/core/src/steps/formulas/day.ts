import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';
import { rateFactorAt } from '../../science/cure/index.ts';

/** Small sums of the day: values taken from its series, times by temperature, laying, batches. */

const ownArithmetic = 'Worked by hand (own arithmetic).';

/** Indoor air of an unheated building. */
export const airInside = formula({
  id: 'day/air-inside',
  says: 'Air over the floor of an unheated building',
  equation: 'inside = dayMean + airFelt · (outdoor − dayMean) + gain',
  takes: { outdoor: '°C', dayMean: '°C', airFelt: '1', gain: 'K' },
  gives: '°C',
  holds: { outdoor: [-40, 50], dayMean: [-40, 45], airFelt: [0, 1], gain: [-5, 10] },
  refuses: { outdoor: [-80, 90], dayMean: [-80, 90], airFelt: [-1, 2], gain: [-40, 40] },
  source: 'rate-of-work',
  notes: 'A proposal of our own, tried on made-up garages; share and gain are fitted to readings on the slab.',
  noOutsideRow: ownArithmetic,
  shows: 'temperature',
  compute: ({ outdoor, dayMean, airFelt, gain }) => dayMean + airFelt * (outdoor - dayMean) + gain,
});

export const valueAt = formula({
  id: 'day/value-at',
  says: 'Value of a series at a moment between two of its marks',
  equation: 'before + (after − before) · partPassed',
  takes: { before: '*', after: '*', partPassed: '1' },
  gives: '*',
  holds: { partPassed: [0, 1] },
  source: 'rate-of-work',
  noOutsideRow: ownArithmetic,
  compute: ({ before, after, partPassed }) => before + (after - before) * partPassed,
});

export const leastOf = formula({
  id: 'day/least-of',
  says: 'Least value of a series between two moments',
  equation: 'min(values)',
  takes: { values: '*[]' },
  gives: '*',
  holds: {},
  source: 'rate-of-work',
  noOutsideRow: ownArithmetic,
  compute: ({ values }) => values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
});

export const mostOf = formula({
  id: 'day/most-of',
  says: 'Largest value of a series between two moments',
  equation: 'max(values)',
  takes: { values: '*[]' },
  gives: '*',
  holds: {},
  source: 'rate-of-work',
  noOutsideRow: ownArithmetic,
  compute: ({ values }) => values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
});

export const riseOf = formula({
  id: 'day/rise-of',
  says: 'How far the top of a slab still warms after a moment',
  equation: 'max(values) − first value',
  takes: { values: '°C[]' },
  gives: 'K',
  holds: { values: [-40, 80] },
  source: 'outgassing-article-2021',
  notes: 'Mean of the top 50 mm, a falling barometer counted as warming; the recorded series is the surface’s.',
  noOutsideRow: ownArithmetic,
  shows: 'difference',
  compute: ({ values }) => values.reduce((a, b) => Math.max(a, b), values[0] ?? 0) - (values[0] ?? 0),
});

export const shortOf = formula({
  id: 'day/short-of',
  says: 'How far a value misses its bound',
  equation: '|value − bound|',
  takes: { value: '*', bound: '*' },
  gives: '*',
  holds: {},
  source: 'rate-of-work',
  noOutsideRow: ownArithmetic,
  compute: ({ value, bound }) => Math.abs(value - bound),
});

/** Time a sheet gives at one temperature, carried to another by its energy. */
export const timeAtTemperature = formula({
  id: 'day/time-at-temperature',
  says: 'Time of a data sheet at another temperature',
  equation: 'sheetTime · exp(activationEnergy / R · (1 / temperature − 1 / sheetTemperature))',
  takes: { sheetTime: 's', sheetTemperature: '°C', temperature: '°C', activationEnergy: 'J/mol' },
  gives: 's',
  holds: {
    sheetTime: [10, 7.8e6],
    sheetTemperature: [0, 45],
    temperature: [0, 45],
    activationEnergy: [10_000, 80_000],
  },
  refuses: {
    sheetTime: [0, 1e9],
    sheetTemperature: [-60, 150],
    temperature: [-60, 150],
    activationEnergy: [-200_000, 400_000],
  },
  source: 'astm-c1074',
  notes:
    'Time and temperature are the centre of the sheet’s own points, the energy theirs; with one point the energy is assumed. Not used outside the temperatures the sheet speaks for.',
  noOutsideRow: 'The rate factor it divides by has its rows; here worked by hand (own arithmetic).',
  shows: 'duration',
  inputShows: { activationEnergy: 'energy-per-mole', sheetTime: 'duration' },
  compute: ({ sheetTime, sheetTemperature, temperature, activationEnergy }) =>
    sheetTime / rateFactorAt(activationEnergy, temperature, sheetTemperature),
});

/** Time to lay a coat with the hands there are. */
export const layingTime = formula({
  id: 'day/laying-time',
  says: 'Time from the first metre of a coat to its last',
  equation: 'max(longest, sum(times) / people)',
  takes: { times: 's[]', longest: 's', people: '1' },
  gives: 's',
  holds: { times: [0, 7.2e5], longest: [0, 7.2e5], people: [1, 40] },
  refuses: { times: [0, 1e9], longest: [0, 1e9], people: [0.5, 1000] },
  source: 'rate-of-work',
  notes:
    'One roller keeps one wet edge, so rolling is not shared among hands; all other work of the coat is. Walls and steps are laid beside the floor or after it and do not count here.',
  noOutsideRow: ownArithmetic,
  shows: 'duration',
  inputShows: { times: 'duration', longest: 'duration', people: 'count' },
  compute: ({ times, longest, people }) => Math.max(longest, times.reduce((a, b) => a + b, 0) / people),
});

/** Batch that can be poured out before it sets in the pail. */
export const batchPlaceable = formula({
  id: 'day/batch-placeable',
  says: 'Largest batch that is poured out and down before it sets in the pail',
  equation: 'min(largestBatch, rate · wetFilm · max(0, potLife − mixTime))',
  takes: { rate: 'm²/s', wetFilm: 'm', potLife: 's', mixTime: 's', largestBatch: 'm³' },
  gives: 'm³',
  holds: {
    rate: [0.001, 0.5],
    wetFilm: [5e-5, 0.01],
    potLife: [60, 14_400],
    mixTime: [30, 1800],
    largestBatch: [1e-4, 0.1],
  },
  refuses: { rate: [0, 100], wetFilm: [0, 1], potLife: [0, 1e9], mixTime: [0, 1e6], largestBatch: [0, 1e4] },
  source: 'rate-of-work',
  notes: 'What is poured out at once lives longer on the floor than in the pail, so this is on the careful side.',
  noOutsideRow: ownArithmetic,
  shows: 'volume',
  inputShows: { rate: 'area-rate', wetFilm: 'film', potLife: 'duration', mixTime: 'duration', largestBatch: 'volume' },
  compute: ({ rate, wetFilm, potLife, mixTime, largestBatch }) =>
    Math.min(largestBatch, rate * wetFilm * Math.max(0, potLife - mixTime)),
});

export const onSiteTime = formula({
  id: 'schedule/on-site',
  says: 'Time a crew is on site on one day',
  equation: 'people · longest',
  takes: { people: '1', longest: 's' },
  gives: 's',
  holds: { people: [1, 40], longest: [0, 57_600] },
  refuses: { people: [0.5, 1000], longest: [0, 1e6] },
  source: 'rate-of-work',
  notes: 'From the first task of the day to the last: waiting for a window is paid like work.',
  noOutsideRow: ownArithmetic,
  shows: 'work-time',
  inputShows: { people: 'count', longest: 'duration' },
  compute: ({ people, longest }) => people * longest,
});

/** Time paid for out of a schedule: hands on site, and travel for each day each of them comes. */
export const paidOnSite = formula({
  id: 'schedule/paid-time',
  says: 'Time paid for: every hand from the first task of a day to its last, and travel',
  equation: 'paid = sum(times) + personDays · travel',
  takes: { times: 's[]', personDays: '1', travel: 's' },
  gives: 's',
  holds: { times: [0, 1.8e6], personDays: [0, 1000], travel: [0, 14_400] },
  refuses: { times: [0, 1e9], personDays: [0, 1e6], travel: [0, 1e6] },
  source: 'rate-of-work',
  noOutsideRow: ownArithmetic,
  shows: 'work-time',
  inputShows: { times: 'work-time', personDays: 'count', travel: 'duration' },
  compute: ({ times, personDays, travel }) => times.reduce((a, b) => a + b, 0) + personDays * travel,
});

export const dayFormulas: readonly AnyFormula[] = [
  airInside,
  valueAt,
  leastOf,
  mostOf,
  riseOf,
  shortOf,
  timeAtTemperature,
  layingTime,
  batchPlaceable,
  onSiteTime,
  paidOnSite,
];
