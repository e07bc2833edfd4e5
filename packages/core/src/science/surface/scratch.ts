import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/** Scratch hardness of a slab on the Mohs scale: halfway between the last pick that did not mark it and the first that did. */
export const scratchHardness = formula({
  id: 'surface/scratch-hardness',
  says: 'Scratch hardness between the last pick that did not mark and the first that did',
  equation: 'hardness = (lastWithoutMark + firstWithMark) / 2',
  takes: { lastWithoutMark: '1', firstWithMark: '1' },
  gives: '1',
  holds: { lastWithoutMark: [2, 9], firstWithMark: [2, 9] },
  refuses: { lastWithoutMark: [0, 10], firstWithMark: [0, 10] },
  source: 'mohs-scratch-test',
  notes:
    'An order, not a measure: hard concrete takes a soft bond, soft concrete a hard one. Test again after a first cut.',
  compute: ({ lastWithoutMark, firstWithMark }) => {
    if (!(firstWithMark > lastWithoutMark)) {
      throw new Refuse('picks-out-of-order', 'firstWithMark', [lastWithoutMark, 10]);
    }
    return (lastWithoutMark + firstWithMark) / 2;
  },
});
