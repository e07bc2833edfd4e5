import { formula } from '../../kernel/formula.ts';

/** Area that a volume of coating covers at a dry film, without loss, 1/m (m² per m³); film in m, solids a fraction. */
export const spreadRate = formula({
  id: 'film/spread-rate',
  says: 'Area a volume of coating covers, without any loss',
  equation: 'volumeSolids / dryFilm',
  takes: { dryFilm: 'm', volumeSolids: '1' },
  gives: '1/m',
  holds: { dryFilm: [1e-5, 0.01], volumeSolids: [0.05, 1] },
  refuses: { dryFilm: [1e-9, 1], volumeSolids: [1e-9, 1] },
  source: 'film-thickness-trade-tables',
  locator: '1604 × solids / mils; 10 × solids % / µm',
  notes:
    'Exact: one US gallon is 231 cubic inches and covers 1604.17 ft² at 1 mil. Sources round that to 1604 or 1600, and one prints 100 for 1000 in the metric form while computing with 1000.',
  shows: 'spread-rate',
  inputShows: { dryFilm: 'film', volumeSolids: 'share' },
  compute: ({ dryFilm, volumeSolids }) => volumeSolids / dryFilm,
});

/** Spread rate that remains when a share of what is used never reaches the film, 1/m; loss a fraction below 1. */
export const practicalSpreadRate = formula({
  id: 'film/practical-spread-rate',
  says: 'Area a volume of coating covers when part of it is lost',
  equation: 'spreadRate × (1 − lossFraction)',
  takes: { spreadRate: '1/m', lossFraction: '1' },
  gives: '1/m',
  holds: { spreadRate: [10, 50000], lossFraction: [0, 0.5] },
  refuses: { spreadRate: [0, 1e9], lossFraction: [0, 0.99] },
  source: 'loss-factors-trade-sheet',
  notes:
    'Loss is a share of what is used: 100 m² at 5 m²/L with 20 % loss needs 25.0 L. A surplus is a share of what is needed and gives 24.0 L; the two are different numbers and carry different names.',
  shows: 'spread-rate',
  inputShows: { spreadRate: 'spread-rate', lossFraction: 'share' },
  compute: ({ spreadRate, lossFraction }) => spreadRate * (1 - lossFraction),
});

/** Coating to be mixed for an area, m³: area in m², spread rate without loss in 1/m, loss a fraction of what is used. */
export const volumeForArea = formula({
  id: 'film/volume-for-area',
  says: 'Coating that an area takes, loss included',
  equation: 'area / (spreadRate × (1 − lossFraction))',
  takes: { area: 'm²', spreadRate: '1/m', lossFraction: '1' },
  gives: 'm³',
  holds: { area: [0, 1e5], spreadRate: [10, 50000], lossFraction: [0, 0.5] },
  refuses: { area: [0, 1e8], spreadRate: [1e-9, 1e9], lossFraction: [0, 0.99] },
  source: 'loss-factors-trade-sheet',
  notes: 'Divided by (1 − loss), never multiplied by (1 + loss).',
  shows: 'volume',
  inputShows: { area: 'area', spreadRate: 'spread-rate', lossFraction: 'share' },
  compute: ({ area, spreadRate, lossFraction }) => area / (spreadRate * (1 - lossFraction)),
});

/** Wet film that a spread rate lays down, m; spread rate in 1/m. */
export const wetFilmFromSpreadRate = formula({
  id: 'film/wet-from-spread-rate',
  says: 'Wet film that a spread rate lays down',
  equation: '1 / spreadRate',
  takes: { spreadRate: '1/m' },
  gives: 'm',
  holds: { spreadRate: [10, 50000] },
  refuses: { spreadRate: [1e-3, 1e9] },
  source: 'spread-rate-lesson',
  notes: 'A film on a flat floor: profile and texture take their own volume first.',
  shows: 'film',
  inputShows: { spreadRate: 'spread-rate' },
  compute: ({ spreadRate }) => 1 / spreadRate,
});
