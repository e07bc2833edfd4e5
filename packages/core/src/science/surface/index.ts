import type { AnyFormula } from '../../kernel/formula.ts';
import { flatnessNumber, levelnessNumber, wornVolume } from './flatness.ts';

export * from './flatness.ts';

export const surfaceFormulas: readonly AnyFormula[] = [flatnessNumber, levelnessNumber, wornVolume];
