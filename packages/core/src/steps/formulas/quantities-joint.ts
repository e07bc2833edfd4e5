import { formula } from '../../kernel/formula.ts';

const NO_ROW = 'Plain arithmetic on mix ratios; worked by hand beside its test.';
const VOLUME = [0, 100] as const;
const WIDE = [0, 1e6] as const;

const openIn = (needed: number, share: number, kits: number): number => share * Math.max(0, needed - kits);

/**
 * Mixed volume of all mixes together, in the proportion they are needed in, for which one component suffices, m³.
 * `needed`, `shares` and `kits` are by mix: mixed volume in m³, share of the component in it, and what whole kits make
 * of it; `loose` is the component in packs sold apart, `total` the sum over all mixes of what is needed.
 */
export const componentLasts = formula({
  id: 'quantities/component-lasts',
  says: 'Mixed volume of all mixes, in their proportion, for which one component suffices',
  equation: 'total × λ where Σ shares × max(0, λ × needed − kits) = loose',
  takes: { needed: 'm³[]', shares: '1[]', kits: 'm³[]', loose: 'm³', total: 'm³' },
  gives: 'm³',
  holds: { needed: VOLUME, shares: [0, 1], kits: VOLUME, loose: VOLUME, total: VOLUME },
  refuses: { needed: [1e-9, 1e6], shares: [1e-9, 1], kits: WIDE, loose: WIDE, total: [1e-9, 1e6] },
  together: [['needed', 'shares', 'kits']],
  source: 'mix-ratio-definition',
  notes: 'A kit opened whole serves its own mix alone; what is sold apart serves all.',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  compute: ({ needed, shares, kits, loose, total }) => {
    // Where a mix has used up its kits it begins to draw on the loose packs: the sum is straight between those points.
    const begins = needed.map((volume, i) => (kits[i] as number) / volume);
    const used = (scale: number): number =>
      needed.reduce((sum, volume, i) => sum + openIn(scale * volume, shares[i] as number, kits[i] as number), 0);
    const order = begins.toSorted((a, b) => a - b);
    let from = order[0] as number;
    for (const next of order.slice(1)) {
      if (used(next) > loose) break;
      from = next;
    }
    const slope = needed.reduce(
      (sum, volume, i) => sum + ((begins[i] as number) <= from ? volume * (shares[i] as number) : 0),
      0,
    );
    return total * (from + (loose - used(from)) / slope);
  },
});

/** Mixed volume that jointly bought packs make, m³: the component that runs out first decides. */
export const jointPacksMake = formula({
  id: 'quantities/joint-packs-make',
  says: 'Mixed volume that packs bought for several mixes make, in their proportion',
  equation: 'least of what the components suffice for',
  takes: { lasts: 'm³[]' },
  gives: 'm³',
  holds: { lasts: VOLUME },
  refuses: { lasts: WIDE },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  compute: ({ lasts }) => Math.min(...lasts),
});

/**
 * Volume of one mix that the packs reach to while the other mixes stay as they are, m³: by component, what is needed or
 * made by whole kits, whichever is more, what is left loose, and the share in this mix.
 */
export const mixReaches = formula({
  id: 'quantities/mix-reaches',
  says: 'Volume of one mix that the packs reach to, the other mixes left as they are',
  equation: 'least of covered + left ÷ shares',
  takes: { covered: 'm³[]', left: 'm³[]', shares: '1[]' },
  gives: 'm³',
  holds: { covered: VOLUME, left: VOLUME, shares: [0, 1] },
  refuses: { covered: WIDE, left: [-1, 1e6], shares: [1e-9, 1] },
  together: [['covered', 'left', 'shares']],
  source: 'mix-ratio-definition',
  noOutsideRow: NO_ROW,
  shows: 'volume',
  compute: ({ covered, left, shares }) =>
    Math.min(...covered.map((start, i) => start + (left[i] as number) / (shares[i] as number))),
});
