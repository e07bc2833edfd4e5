import type { AnyFormula } from '../../kernel/formula.ts';
import { activationEnergy, rateFactor } from './arrhenius.ts';
import { solventDiffusionTime } from './film.ts';
import { materialTemperature } from './material.ts';
import { waterToSheet } from './moisture.ts';

export * from './arrhenius.ts';
export * from './film.ts';
export * from './law.ts';
export * from './material.ts';
export * from './milestones.ts';
export * from './moisture.ts';
export * from './progress.ts';

/** Laws of cure. */
export const cureFormulas: readonly AnyFormula[] = [
  rateFactor,
  activationEnergy,
  solventDiffusionTime,
  materialTemperature,
  waterToSheet,
];
