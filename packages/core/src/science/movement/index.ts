import type { AnyFormula } from '../../kernel/formula.ts';
import { dryingShrinkageShare, dryingTimes } from './drying.ts';
import { filmStrain } from './film-strain.ts';
import { jointOpening, jointSpacing, sawcutWidth, sealSqueeze, sealWidth } from './joint.ts';
import { lightweightModulus } from './lightweight-modulus.ts';

export * from './drying.ts';
export * from './film-strain.ts';
export * from './joint.ts';
export * from './lightweight-modulus.ts';

export const movementFormulas: readonly AnyFormula[] = [
  jointOpening,
  sealWidth,
  sealSqueeze,
  sawcutWidth,
  jointSpacing,
  filmStrain,
  dryingTimes,
  dryingShrinkageShare,
  lightweightModulus,
];
