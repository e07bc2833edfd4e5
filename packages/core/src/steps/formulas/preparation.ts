import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const own = 'A product or quotient of two measures; worked by hand (own arithmetic).';

/** Person-time of work on an area, s. */
export const timeFromArea = formula({
  id: 'preparation/area-time',
  says: 'Person-time of work on an area at a rate',
  equation: 'time = area / rate',
  takes: { area: 'm²', rate: 'm²/s' },
  gives: 's',
  holds: { area: [0, 50_000], rate: [1e-5, 1] },
  refuses: { area: [0, 1e9], rate: [1e-9, 1e6] },
  source: 'rate-of-work',
  noOutsideRow: own,
  shows: 'duration',
  inputShows: { area: 'area', rate: 'area-rate' },
  compute: ({ area, rate }) => area / rate,
});

/** Person-time of work along a length, s. */
export const timeFromLength = formula({
  id: 'preparation/length-time',
  says: 'Person-time of work along a length at a rate',
  equation: 'time = length / rate',
  takes: { length: 'm', rate: 'm/s' },
  gives: 's',
  holds: { length: [0, 10_000], rate: [1e-5, 1] },
  refuses: { length: [0, 1e7], rate: [1e-9, 1e6] },
  source: 'rate-of-work',
  noOutsideRow: own,
  shows: 'duration',
  inputShows: { length: 'length', rate: 'length-rate' },
  compute: ({ length, rate }) => length / rate,
});

/** Person-time of a task the firm counts as a whole, s. */
export const timeFromCount = formula({
  id: 'preparation/count-time',
  says: 'Person-time of a task counted as a whole',
  equation: 'time = count × each',
  takes: { count: '1', each: 's' },
  gives: 's',
  holds: { count: [0, 1000], each: [0, 1_440_000] },
  refuses: { count: [0, 1e6], each: [0, 1e9] },
  source: 'rate-of-work',
  noOutsideRow: own,
  shows: 'duration',
  inputShows: { count: 'count', each: 'duration' },
  compute: ({ count, each }) => count * each,
});

/** Area gone over several times, m². */
export const sweptArea = formula({
  id: 'preparation/swept-area',
  says: 'Area gone over several times',
  equation: 'swept = area × times',
  takes: { area: 'm²', times: '1' },
  gives: 'm²',
  holds: { area: [0, 50_000], times: [0, 20] },
  refuses: { area: [0, 1e9], times: [0, 1000] },
  source: 'rate-of-work',
  noOutsideRow: own,
  shows: 'area',
  inputShows: { area: 'area', times: 'count' },
  compute: ({ area, times }) => area * times,
});

/** What is left of an area that another task takes first, m². */
export const restOfArea = formula({
  id: 'preparation/rest-of-area',
  says: 'What is left of an area beside the part another task takes',
  equation: 'rest = area − part',
  takes: { area: 'm²', part: 'm²' },
  gives: 'm²',
  holds: { area: [0, 50_000], part: [0, 50_000] },
  refuses: { area: [0, 1e9], part: [0, 1e9] },
  source: 'plane-geometry',
  noOutsideRow: own,
  shows: 'area',
  inputShows: { area: 'area', part: 'area' },
  compute: ({ area, part }) => {
    if (part > area) throw new Refuse('part-larger-than-the-whole', 'part', [0, area]);
    return area - part;
  },
});

/** Dry film of a whole system, m: films of all its layers, broadcast grain not counted. */
export const systemDryFilm = formula({
  id: 'preparation/system-dry-film',
  says: 'Dry film of all layers together, broadcast grain not counted',
  equation: 'film = sum(dryFilms)',
  takes: { dryFilms: 'm[]' },
  gives: 'm',
  holds: { dryFilms: [0, 0.02] },
  refuses: { dryFilms: [0, 1] },
  source: 'conservation-of-solids',
  noOutsideRow: 'A sum; worked by hand (own arithmetic).',
  shows: 'film',
  inputShows: { dryFilms: 'film' },
  compute: ({ dryFilms }) => {
    if (dryFilms.length === 0) throw new Refuse('too-few-values', 'dryFilms');
    return dryFilms.reduce((sum, film) => sum + film, 0);
  },
});

/** This floor's own rate from a timed test patch, m²/s. */
export const patchRate = formula({
  id: 'preparation/patch-rate',
  says: "This floor's own rate from a timed test patch",
  equation: 'rate = area / time; deviation = spread × rate',
  takes: { area: 'm²', time: 's', spread: '1' },
  gives: 'm²/s',
  holds: { area: [0.5, 50], time: [60, 14_400], spread: [0, 0.5] },
  refuses: { area: [1e-3, 1e4], time: [1, 1e6], spread: [0, 2] },
  defaults: { spread: 0.15 },
  source: 'rate-of-work',
  notes:
    'How far a whole floor departs from one patch has no published figure; a standard deviation of 15 % is assumed.',
  noOutsideRow: own,
  shows: 'area-rate',
  inputShows: { area: 'area', time: 'duration', spread: 'share' },
  compute: ({ area, time }) => area / time,
  band: ({ spread }, rate) => ({ causes: { 'patch for the floor': spread * rate } }),
});

/** Share of a time that one crew of several people needs, s. */
export const crewTime = formula({
  id: 'preparation/crew-time',
  says: 'Clock time of person-time shared by a crew',
  equation: 'time = sum(personTimes) / people',
  takes: { personTimes: 's[]', people: '1' },
  gives: 's',
  holds: { personTimes: [0, 3.6e6], people: [1, 40] },
  refuses: { personTimes: [0, 1e9], people: [1, 1000] },
  source: 'rate-of-work',
  noOutsideRow: own,
  shows: 'duration',
  inputShows: { personTimes: 'duration', people: 'count' },
  compute: ({ personTimes, people }) => personTimes.reduce((sum, time) => sum + time, 0) / people,
});

/** Least of several strengths a single pull-off may show, as the share of the mean that is asked. */
export const singleFromMean = formula({
  id: 'preparation/single-from-mean',
  says: 'Least a single pull-off may show where only the mean is asked',
  equation: 'single = mean × share',
  takes: { mean: 'Pa', share: '1' },
  gives: 'Pa',
  holds: { mean: [0, 1e7], share: [0.3, 1] },
  refuses: { mean: [0, 1e9], share: [0, 1] },
  source: 'resin-floor-guides-surface-tensile',
  noOutsideRow: own,
  shows: 'stress',
  inputShows: { mean: 'stress', share: 'share' },
  compute: ({ mean, share }) => mean * share,
});
