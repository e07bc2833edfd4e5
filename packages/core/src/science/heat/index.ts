import type { AnyFormula } from '../../kernel/formula.ts';
import { clearSkyEmissivity, dailyDepth, resinOnSlab, waltonSkyEmissivity } from './laws.ts';
import { slabUnderAir } from './slab-under-air.ts';

export * from './annual-wave.ts';
export * from './calibrate.ts';
export * from './check.ts';
export * from './closed-forms.ts';
export * from './conduction.ts';
export * from './exposure.ts';
export * from './films.ts';
export * from './forcing.ts';
export * from './forecast.ts';
export * from './grid.ts';
export * from './laws.ts';
export * from './least-squares.ts';
export * from './materials.ts';
export * from './parameters.ts';
export * from './sky.ts';
export * from './slab-day.ts';
export * from './slab-under-air.ts';
export * from './surface-balance.ts';
export * from './time-steps.ts';

/** Laws of heat in a slab. */
export const heatFormulas: readonly AnyFormula[] = [
  dailyDepth,
  resinOnSlab,
  clearSkyEmissivity,
  waltonSkyEmissivity,
  slabUnderAir,
];
