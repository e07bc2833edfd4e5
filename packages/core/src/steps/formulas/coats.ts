import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { batchSplit } from '../../science/mix/index.ts';

/** Volume of one batch of a split, m³; `place` counts from 1. Refused where the split has no such batch. */
export const batchOfSplit = formula({
  id: 'coats/batch-of-split',
  says: 'Volume of one batch of the split',
  equation: 'batch number place of the split of totalVolume',
  takes: { totalVolume: 'm³', largestBatch: 'm³', smallestBatch: 'm³', place: '1' },
  gives: 'm³',
  holds: { totalVolume: [1e-4, 20], largestBatch: [1e-4, 0.1], smallestBatch: [0, 0.1], place: [1, 10_000] },
  refuses: { totalVolume: [1e-9, 1e4], largestBatch: [1e-9, 1e4], smallestBatch: [0, 1e4], place: [1, 1e5] },
  source: 'own-arithmetic',
  noOutsideRow: 'One item of the list of batches, whose own laws are tested as properties.',
  shows: 'volume',
  inputShows: { totalVolume: 'volume', largestBatch: 'volume', smallestBatch: 'volume', place: 'count' },
  compute: ({ totalVolume, largestBatch, smallestBatch, place }) => {
    const volume = batchSplit.compute({ totalVolume, largestBatch, smallestBatch })[place - 1];
    if (volume === undefined) throw new Refuse('formula-input-refused', 'place');
    return volume;
  },
});

export const coatsFormulas: readonly AnyFormula[] = [batchOfSplit];
