import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/** A rest below this share of a batch is rounding of a computer, not coating. */
const NEGLIGIBLE = 1e-9;

/** The last batch is what makes the sum come out exactly, so it is computed from the sum of the others. */
function closed(total: number, others: readonly number[]): readonly number[] {
  const before = others.reduce((sum, volume) => sum + volume, 0);
  let last = total - before;
  // Adding back may round: step to a neighbouring number until the list sums exactly.
  for (let pass = 0; pass < 4 && before + last !== total; pass++) last += total - (before + last);
  return [...others, last];
}

/**
 * Batches that make up a total, m³: as many largest ones as fit, then the rest.
 *
 * A rest below the smallest batch is evened with the batch before it, or with all where that is not enough. The list
 * sums exactly to the total. Refused where no split exists: the smallest is larger than the largest, the total less
 * than the smallest, or the fewest batches that hold the total would each be below the smallest.
 */
export const batchSplit = formula({
  id: 'mix/batch-split',
  says: 'Batches that make up a volume, none above the largest or below the smallest',
  equation: 'largestBatch, largestBatch, …, rest; the last two evened where rest < smallestBatch',
  takes: { totalVolume: 'm³', largestBatch: 'm³', smallestBatch: 'm³' },
  gives: 'm³[]',
  holds: { totalVolume: [1e-4, 20], largestBatch: [1e-4, 0.1], smallestBatch: [0, 0.1] },
  refuses: { totalVolume: [1e-9, 1e4], largestBatch: [1e-9, 1e4], smallestBatch: [0, 1e4] },
  source: 'own-arithmetic',
  notes:
    'What a person can pour and spread in the working time sets the largest; what can still be measured and mixed without error the smallest.',
  noOutsideRow: 'A rule of our own about sums; its laws are tested as properties.',
  shows: 'volume',
  inputShows: { totalVolume: 'volume', largestBatch: 'volume', smallestBatch: 'volume' },
  compute: ({ totalVolume, largestBatch, smallestBatch }) => {
    if (smallestBatch > largestBatch)
      throw new Refuse('smallest-batch-above-largest', 'smallestBatch', [0, largestBatch]);
    if (totalVolume < smallestBatch)
      throw new Refuse('volume-below-smallest-batch', 'totalVolume', [smallestBatch, 1e4]);
    const ratio = totalVolume / largestBatch;
    if (ratio > 1e5) throw new Refuse('too-many-batches', 'largestBatch', [totalVolume / 1e5, totalVolume]);
    const whole = Math.max(1, Math.floor(ratio + NEGLIGIBLE));
    const rest = totalVolume - whole * largestBatch;
    if (rest <= NEGLIGIBLE * largestBatch) return closed(totalVolume, Array<number>(whole - 1).fill(largestBatch));
    if (rest >= smallestBatch) return closed(totalVolume, Array<number>(whole).fill(largestBatch));
    const evened = (largestBatch + rest) / 2;
    if (evened >= smallestBatch) return closed(totalVolume, [...Array<number>(whole - 1).fill(largestBatch), evened]);
    const equal = totalVolume / (whole + 1);
    if (equal < smallestBatch) throw new Refuse('no-split-between-smallest-and-largest', 'smallestBatch', [0, equal]);
    return closed(totalVolume, Array<number>(whole).fill(equal));
  },
});
