import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/**
 * Scratch hardness of a slab between two picks of the Mohs set: the hardest that leaves no mark and the softest that
 * does, numbers 1 to 10.
 */
export const scratchHardness = formula({
  id: 'bond/scratch-hardness',
  says: 'Scratch hardness of a slab on the Mohs scale, from two picks',
  equation: '(noScratch + scratch) / 2',
  takes: { noScratch: '1', scratch: '1' },
  gives: '1',
  holds: { noScratch: [1, 9], scratch: [2, 9] },
  refuses: { noScratch: [0, 10], scratch: [0, 10] },
  source: 'mohs-trade-page',
  notes:
    'For choosing the bond of the diamonds: hard slab, soft bond. Test again after the first cut; laitance is softer.',
  shows: 'plain',
  compute: ({ noScratch, scratch }) => {
    if (scratch <= noScratch) throw new Refuse('softer-pick-scratches', 'scratch', [noScratch, 10]);
    return (noScratch + scratch) / 2;
  },
});
