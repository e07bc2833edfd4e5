import { formula } from '../../kernel/formula.ts';

const NO_ROW = 'Plain arithmetic on measures; worked by hand beside its test.';
const VOLUME = [0, 100] as const;
const AREA = [0, 1e5] as const;

/** Liquid that lies on an area as a film of one thickness, m³: area in m², film in m. */
export const filmVolume = formula({
  id: 'quantities/film-volume',
  says: 'Coating that lies on an area as a film',
  equation: 'area × film',
  takes: { area: 'm²', film: 'm' },
  gives: 'm³',
  holds: { area: AREA, film: [0, 0.02] },
  refuses: { area: [0, 1e8], film: [0, 1] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  inputShows: { area: 'area', film: 'film' },
  compute: ({ area, film }) => area * film,
});

/** Sum of volumes, m³. */
export const totalVolume = formula({
  id: 'quantities/total-volume',
  says: 'Sum of volumes',
  equation: 'Σ volumes',
  takes: { volumes: 'm³[]' },
  gives: 'm³',
  holds: { volumes: VOLUME },
  refuses: { volumes: [0, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  inputShows: { volumes: 'volume' },
  compute: ({ volumes }) => volumes.reduce((sum, volume) => sum + volume, 0),
});

/** Sum of areas, m²: floor and the faces that are coated with it. */
export const totalArea = formula({
  id: 'quantities/total-area',
  says: 'Sum of areas',
  equation: 'Σ areas',
  takes: { areas: 'm²[]' },
  gives: 'm²',
  holds: { areas: AREA },
  refuses: { areas: [0, 1e8] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'area',
  inputShows: { areas: 'area' },
  compute: ({ areas }) => areas.reduce((sum, area) => sum + area, 0),
});

/**
 * Coating to be mixed, m³, for a net volume in m³.
 *
 * Two ways of allowing for what never becomes film, never mixed up: a surplus is added to the net quantity; a loss is
 * a share of what is used. 20 % surplus on 20 L is 24 L, 20 % loss is 25 L.
 */
export const neededVolume = formula({
  id: 'quantities/needed',
  says: 'Coating to be mixed, with surplus and loss',
  equation: 'net × (1 + surplus) ÷ (1 − loss)',
  takes: { net: 'm³', surplus: '1', loss: '1' },
  gives: 'm³',
  holds: { net: VOLUME, surplus: [0, 1], loss: [0, 0.5] },
  refuses: { net: [0, 1e6], surplus: [0, 10], loss: [0, 0.95] },
  defaults: { surplus: 0, loss: 0 },
  source: 'loss-factors-trade-sheet',
  noOutsideRow: 'The loss half is checked as film/practical-spread-rate; a surplus is plain multiplication.',
  shows: 'volume',
  inputShows: { net: 'volume', surplus: 'share', loss: 'share' },
  compute: ({ net, surplus, loss }) => (net * (1 + surplus)) / (1 - loss),
});

/** Volume to buy, m³: what is to be mixed and a reserve that is bought but not spread. */
export const withReserve = formula({
  id: 'quantities/with-reserve',
  says: 'Coating to buy: what is to be mixed and a reserve kept back',
  equation: 'needed × (1 + reserve)',
  takes: { needed: 'm³', reserve: '1' },
  gives: 'm³',
  holds: { needed: VOLUME, reserve: [0, 1] },
  refuses: { needed: [0, 1e6], reserve: [0, 10] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  inputShows: { needed: 'volume', reserve: 'share' },
  compute: ({ needed, reserve }) => needed * (1 + reserve),
});

/** Part of a wet film that is coating as it comes from the pail, m; the rest is thinner. */
export const filmBeforeThinning = formula({
  id: 'quantities/film-before-thinning',
  says: 'Part of a thinned wet film that is coating out of the pail',
  equation: 'wetFilm ÷ (1 + thinnerRatio)',
  takes: { wetFilm: 'm', thinnerRatio: '1' },
  gives: 'm',
  holds: { wetFilm: [0, 0.02], thinnerRatio: [0, 0.5] },
  refuses: { wetFilm: [0, 1], thinnerRatio: [0, 100] },
  source: 'conservation-of-solids',
  notes: 'Thinner raises the gauge target, not the litres of coating: for one dry film they stay the same.',
  noOutsideRow: 'The same conservation as film/solids-after-thinning, whose rows check it.',
  shows: 'film',
  inputShows: { wetFilm: 'film', thinnerRatio: 'share' },
  compute: ({ wetFilm, thinnerRatio }) => wetFilm / (1 + thinnerRatio),
});

/** Thinner for a volume of mixed coating, m³: coating in m³, ratio thinner per coating by volume. */
export const thinnerVolume = formula({
  id: 'quantities/thinner',
  says: 'Thinner for a volume of mixed coating',
  equation: 'coating × thinnerRatio',
  takes: { coating: 'm³', thinnerRatio: '1' },
  gives: 'm³',
  holds: { coating: VOLUME, thinnerRatio: [0, 0.5] },
  refuses: { coating: [0, 1e6], thinnerRatio: [0, 100] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  inputShows: { coating: 'volume', thinnerRatio: 'share' },
  compute: ({ coating, thinnerRatio }) => coating * thinnerRatio,
});

/** What is left of a volume, m³; below zero it is what is short. */
export const volumeLeft = formula({
  id: 'quantities/volume-left',
  says: 'What is left of a volume; below zero it is short',
  equation: 'held − needed',
  takes: { held: 'm³', needed: 'm³' },
  gives: 'm³',
  holds: { held: VOLUME, needed: VOLUME },
  refuses: { held: [0, 1e6], needed: [0, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  inputShows: { held: 'volume', needed: 'volume' },
  compute: ({ held, needed }) => held - needed,
});

/** What is left of a mass, kg; below zero it is what is short. */
export const massLeft = formula({
  id: 'quantities/mass-left',
  says: 'What is left of a mass; below zero it is short',
  equation: 'held − needed',
  takes: { held: 'kg', needed: 'kg' },
  gives: 'kg',
  holds: { held: [0, 1e5], needed: [0, 1e5] },
  refuses: { held: [0, 1e8], needed: [0, 1e8] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'mass',
  inputShows: { held: 'mass', needed: 'mass' },
  compute: ({ held, needed }) => held - needed,
});
