import { formula } from '../../kernel/formula.ts';

const NO_ROW = 'Counting; both sides of a whole pack are tested.';

/** Half a millilitre, m³: decisions about volumes compare whole millilitres. */
export const VOLUME_GUARD = 0.5e-6;
/** Half a gram, kg. */
export const MASS_GUARD = 0.5e-3;

/** Least whole number of packs; an exact multiple needs no further one, whatever the last binary digit says. */
const least = (needed: number, each: number, guard: number): number => Math.max(0, Math.ceil((needed - guard) / each));

/** Whole kits that hold a volume, 1: both in m³. Thirty litres out of kits of fifteen are two, not three. */
export const wholeKits = formula({
  id: 'quantities/whole-kits',
  says: 'Whole kits that hold a volume',
  equation: '⌈(needed − 0.5 mL) ÷ each⌉',
  takes: { needed: 'm³', each: 'm³' },
  gives: '1',
  holds: { needed: [0, 100], each: [1e-5, 2] },
  refuses: { needed: [0, 1e6], each: [1e-6, 1e4] },
  source: 'own-arithmetic',
  notes: 'A kit is opened whole: part A and part B are dosed to each other.',
  noOutsideRow: NO_ROW,
  shows: 'count',
  inputShows: { needed: 'volume', each: 'volume' },
  compute: ({ needed, each }) => least(needed, each, VOLUME_GUARD),
});

/** Whole bags that hold a mass, 1: both in kg. */
export const wholeBags = formula({
  id: 'quantities/whole-bags',
  says: 'Whole bags that hold a mass',
  equation: '⌈(needed − 0.5 g) ÷ each⌉',
  takes: { needed: 'kg', each: 'kg' },
  gives: '1',
  holds: { needed: [0, 1e5], each: [0.1, 2000] },
  refuses: { needed: [0, 1e8], each: [1e-3, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'count',
  inputShows: { needed: 'mass', each: 'mass' },
  compute: ({ needed, each }) => least(needed, each, MASS_GUARD),
});

/** Mass in whole bags, kg. */
export const bagsHold = formula({
  id: 'quantities/bags-hold',
  says: 'Mass in whole bags',
  equation: 'count × each',
  takes: { count: '1', each: 'kg' },
  gives: 'kg',
  holds: { count: [0, 1e5], each: [0.1, 2000] },
  refuses: { count: [0, 1e8], each: [0, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'mass',
  inputShows: { count: 'count', each: 'mass' },
  compute: ({ count, each }) => count * each,
});

/** A count beside another, 1: one more, or one fewer. */
export const countBeside = formula({
  id: 'quantities/count-beside',
  says: 'A count that much more or fewer',
  equation: 'count + change',
  takes: { count: '1', change: '1' },
  gives: '1',
  holds: { count: [0, 1e5], change: [-1, 1] },
  refuses: { count: [0, 1e8], change: [-1, 1] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'count',
  inputShows: { count: 'count', change: 'count' },
  compute: ({ count, change }) => count + change,
});
