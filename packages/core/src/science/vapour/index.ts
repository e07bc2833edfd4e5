import type { AnyFormula } from '../../kernel/formula.ts';
import { additiveExposure, dilutionForExposure, dilutionForFire } from './dilution.ts';
import { airToQuarterLimit, blendLimit, roomFractionOfLimit } from './explosive.ts';
import { vapourFromLiquid } from './from-liquid.ts';
import { roomConcentration, timeToConcentration } from './room.ts';

export * from './dilution.ts';
export * from './explosive.ts';
export { vapourFromLiquid } from './from-liquid.ts';
export * from './room.ts';

/** Solvent vapour in a room. Figures without verdict: the safety data sheet and the local code go before. */
export const vapourFormulas: readonly AnyFormula[] = [
  vapourFromLiquid,
  airToQuarterLimit,
  roomFractionOfLimit,
  roomConcentration,
  timeToConcentration,
  dilutionForExposure,
  dilutionForFire,
  blendLimit,
  additiveExposure,
];
