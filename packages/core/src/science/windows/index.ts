import type { AnyFormula } from '../../kernel/formula.ts';
import { barometricRise, dryPoreExpansion, expelledAir, moistPoreExpansion, sealedPorePressure } from './outgassing.ts';

export * from './chain.ts';
export * from './clocks.ts';
export * from './coat.ts';
export * from './conditions.ts';
export * from './judge-start.ts';
export * from './outgassing.ts';
export type { WindowReason } from './reasons.ts';
export * from './search.ts';
export * from './site-hours.ts';

/** Laws of what a slab breathes out as it warms. */
export const outgassingFormulas: readonly AnyFormula[] = [
  dryPoreExpansion,
  moistPoreExpansion,
  sealedPorePressure,
  expelledAir,
  barometricRise,
];
