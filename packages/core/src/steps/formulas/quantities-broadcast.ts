import { formula } from '../../kernel/formula.ts';

const NO_ROW = 'A product of two measures; worked by hand beside its test.';

/** Broadcast on an area, kg: area in m², rate in kg/m². Thrown and kept are two rates, never one. */
export const broadcastMass = formula({
  id: 'quantities/broadcast-mass',
  says: 'Mass of a broadcast on an area',
  equation: 'area × rate',
  takes: { area: 'm²', rate: 'kg/m²' },
  gives: 'kg',
  holds: { area: [0, 1e5], rate: [0, 20] },
  refuses: { area: [0, 1e8], rate: [0, 1000] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'mass',
  inputShows: { area: 'area', rate: 'area-mass' },
  compute: ({ area, rate }) => area * rate,
});

/** Sum of masses, kg. */
export const totalMass = formula({
  id: 'quantities/total-mass',
  says: 'Sum of masses',
  equation: 'Σ masses',
  takes: { masses: 'kg[]' },
  gives: 'kg',
  holds: { masses: [0, 1e5] },
  refuses: { masses: [0, 1e8] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'mass',
  inputShows: { masses: 'mass' },
  compute: ({ masses }) => masses.reduce((sum, mass) => sum + mass, 0),
});
