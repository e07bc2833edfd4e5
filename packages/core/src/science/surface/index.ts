import type { AnyFormula } from '../../kernel/formula.ts';
import { flatnessNumber, levelnessNumber, wornVolume } from './flatness.ts';
import { scratchHardness } from './scratch.ts';
import { slipPotential } from './slip.ts';

export * from './flatness.ts';
export * from './scratch.ts';
export * from './slip.ts';

export const surfaceFormulas: readonly AnyFormula[] = [
  scratchHardness,
  slipPotential,
  flatnessNumber,
  levelnessNumber,
  wornVolume,
];
