import type { AnyFormula } from '../../kernel/formula.ts';
import { batchSplit } from './batch-split.ts';
import { massRatioFromVolume, mixVolumeSolids, volumeRatioFromMass } from './ratio.ts';

export * from './batch-split.ts';
export * from './ratio.ts';

/** Ratios, solids and batches of a mixture. */
export const mixFormulas: readonly AnyFormula[] = [
  volumeRatioFromMass,
  massRatioFromVolume,
  mixVolumeSolids,
  batchSplit,
];
