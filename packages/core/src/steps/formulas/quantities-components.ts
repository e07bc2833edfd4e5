import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const NO_ROW = 'Plain arithmetic on a mix ratio; worked by hand beside its test.';

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Share of the mixed volume that one component makes, 1: its parts and all parts of the ratio by volume. */
export const componentShare = formula({
  id: 'quantities/component-share',
  says: 'Share of the mixed volume that one component makes',
  equation: 'part ÷ Σ parts',
  takes: { part: '1', parts: '1[]' },
  gives: '1',
  holds: { part: [0, 1000], parts: [0, 1000] },
  refuses: { part: [0, 1e6], parts: [1e-9, 1e6] },
  source: 'mix-ratio-definition',
  noOutsideRow: NO_ROW,
  shows: 'share',
  compute: ({ part, parts }) => part / sum(parts),
});

/** Share of the mixed volume that a part of the ratio keeps beside an addition, 1. */
export const shareBesideAddition = formula({
  id: 'quantities/share-beside-addition',
  says: 'Share of the mixed volume of one component, a tint or other addition counted in',
  equation: 'share × (1 − additionShare)',
  takes: { share: '1', additionShare: '1' },
  gives: '1',
  holds: { share: [0, 1], additionShare: [0, 0.3] },
  refuses: { share: [0, 1], additionShare: [0, 0.99] },
  source: 'mix-ratio-definition',
  notes: 'An addition adds volume without being part of the ratio.',
  noOutsideRow: NO_ROW,
  shows: 'share',
  inputShows: { share: 'share', additionShare: 'share' },
  compute: ({ share, additionShare }) => share * (1 - additionShare),
});

/**
 * Share of the mixed volume that additions of a kit make, 1: volumes in m³ of the parts of the ratio, their parts,
 * volumes of all additions, and of those counted here. The whole addition goes into the whole kit.
 */
export const additionShare = formula({
  id: 'quantities/addition-share',
  says: 'Share of a mixed kit that is tint or another addition',
  equation: 'Σ counted ÷ (least of volumes ÷ parts × Σ parts + Σ additions)',
  takes: { volumes: 'm³[]', parts: '1[]', additions: 'm³[]', counted: 'm³[]' },
  gives: '1',
  holds: { volumes: [0, 2], parts: [0, 1000], additions: [0, 2], counted: [0, 2] },
  refuses: { volumes: [1e-9, 1e4], parts: [1e-9, 1e6], additions: [0, 1e4], counted: [0, 1e4] },
  together: [['volumes', 'parts']],
  source: 'mix-ratio-definition',
  noOutsideRow: NO_ROW,
  shows: 'share',
  compute: ({ volumes, parts, additions, counted }) => {
    const mixable = Math.min(...volumes.map((volume, i) => volume / (parts[i] as number))) * sum(parts);
    return sum(counted) / (mixable + sum(additions));
  },
});

/** Volume of one component in a mixed volume, m³. */
export const componentVolume = formula({
  id: 'quantities/component-volume',
  says: 'Volume of one component in a mixed volume',
  equation: 'mixed × share',
  takes: { mixed: 'm³', share: '1' },
  gives: 'm³',
  holds: { mixed: [0, 100], share: [0, 1] },
  refuses: { mixed: [0, 1e6], share: [0, 1] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  inputShows: { mixed: 'volume', share: 'share' },
  compute: ({ mixed, share }) => mixed * share,
});

/** Mass of a volume of a component, kg; density in kg/m³. */
export const componentMass = formula({
  id: 'quantities/component-mass',
  says: 'Mass of a volume of one component',
  equation: 'volume × density',
  takes: { volume: 'm³', density: 'kg/m³' },
  gives: 'kg',
  holds: { volume: [0, 100], density: [500, 4000] },
  refuses: { volume: [0, 1e6], density: [1, 25000] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'mass',
  inputShows: { volume: 'volume', density: 'density' },
  compute: ({ volume, density }) => volume * density,
});

/**
 * Mixed volume that a pack makes, m³: volumes of its components in m³ and the shares they have in the mix. A pack off
 * the ratio makes no more than its scarcest part allows.
 */
export const packMakes = formula({
  id: 'quantities/pack-makes',
  says: 'Mixed volume that a pack makes',
  equation: 'least of volumes ÷ shares',
  takes: { volumes: 'm³[]', shares: '1[]' },
  gives: 'm³',
  holds: { volumes: [0, 2], shares: [0, 1] },
  refuses: { volumes: [0, 1e4], shares: [1e-9, 1] },
  together: [['volumes', 'shares']],
  source: 'mix-ratio-definition',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  compute: ({ volumes, shares }) => Math.min(...volumes.map((volume, i) => volume / (shares[i] as number))),
});

/**
 * Mixed volume that bought packs make together, m³. `makes` holds, pack after pack, the mixed volume each would make
 * by each component; the scarcest component decides.
 */
export const packsMake = formula({
  id: 'quantities/packs-make',
  says: 'Mixed volume that all bought packs make together',
  equation: 'least over components of Σ counts × makes',
  takes: { counts: '1[]', makes: 'm³[]' },
  gives: 'm³',
  holds: { counts: [0, 5000], makes: [0, 10] },
  refuses: { counts: [0, 1e6], makes: [0, 1e4] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  compute: ({ counts, makes }) => {
    const columns = makes.length / counts.length;
    if (!Number.isInteger(columns) || columns === 0) throw new Refuse('formula-lists-differ-in-length', 'makes');
    const totals = Array.from({ length: columns }, (_, c) =>
      counts.reduce((total, count, p) => total + count * (makes[p * columns + c] as number), 0),
    );
    return Math.min(...totals);
  },
});

/** What is left of one component in bought packs, m³: counts of packs, volume of it in each, volume used. */
export const componentLeft = formula({
  id: 'quantities/component-left',
  says: 'What is left of one component in the packs bought',
  equation: 'Σ counts × volumes − used',
  takes: { counts: '1[]', volumes: 'm³[]', used: 'm³' },
  gives: 'm³',
  holds: { counts: [0, 5000], volumes: [0, 2], used: [0, 100] },
  refuses: { counts: [0, 1e6], volumes: [0, 1e4], used: [0, 1e6] },
  together: [['counts', 'volumes']],
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  compute: ({ counts, volumes, used }) =>
    counts.reduce((total, count, i) => total + count * (volumes[i] as number), 0) - used,
});

/** Part of a pack that can be got out of it, m³, where the sheet states a yield below the sum of the parts. */
export const usablePart = formula({
  id: 'quantities/usable-part',
  says: 'Volume of one component that comes out of a pack with a stated yield',
  equation: 'volume × yields ÷ Σ volumes',
  takes: { volume: 'm³', yields: 'm³', volumes: 'm³[]' },
  gives: 'm³',
  holds: { volume: [0, 2], yields: [0, 2], volumes: [0, 2] },
  refuses: { volume: [0, 1e4], yields: [0, 1e4], volumes: [1e-9, 1e4] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  compute: ({ volume, yields, volumes }) => (volume * yields) / sum(volumes),
});
