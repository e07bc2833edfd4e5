import type { AnyFormula } from '../../kernel/formula.ts';
import { chanceConcreteFirst } from './chance-concrete-first.ts';
import { ruptureFhwa2012, ruptureRoot } from './flexural.ts';
import { pullOffStress } from './pull-off-stress.ts';
import { scratchHardness } from './scratch-hardness.ts';
import { tensileFromCompressive } from './tensile-from-compressive.ts';
import { TENSILE_RIVALS } from './tensile-rivals.ts';
import { weakestLink, weakestLinkIndex } from './weakest-link.ts';

export * from './chance-concrete-first.ts';
export * from './flexural.ts';
export * from './pull-off-stress.ts';
export * from './scratch-hardness.ts';
export * from './tensile-from-compressive.ts';
export * from './tensile-rivals.ts';
export * from './weakest-link.ts';

/** Bond, tensile strength and the weakest link. */
export const bondFormulas: readonly AnyFormula[] = [
  pullOffStress,
  tensileFromCompressive,
  ...TENSILE_RIVALS,
  ruptureRoot,
  ruptureFhwa2012,
  weakestLink,
  weakestLinkIndex,
  chanceConcreteFirst,
  scratchHardness,
];
