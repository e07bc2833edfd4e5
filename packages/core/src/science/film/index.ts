import type { AnyFormula } from '../../kernel/formula.ts';
import { dryFilmFromWet } from './dry-from-wet.ts';
import { meanTextureDepth, profileFill, textureFill } from './fill.ts';
import { slipPotential } from './slip-potential.ts';
import { solidsAfterThinning } from './solids-after-thinning.ts';
import { practicalSpreadRate, spreadRate, volumeForArea, wetFilmFromSpreadRate } from './spread-rate.ts';
import { wetFilmFromDry } from './wet-from-dry.ts';

export * from './dry-from-wet.ts';
export * from './fill.ts';
export * from './slip-potential.ts';
export * from './solids-after-thinning.ts';
export * from './spread-rate.ts';
export * from './wet-from-dry.ts';

/** Film, solids and the volume a floor takes. */
export const filmFormulas: readonly AnyFormula[] = [
  wetFilmFromDry,
  dryFilmFromWet,
  spreadRate,
  solidsAfterThinning,
  practicalSpreadRate,
  volumeForArea,
  wetFilmFromSpreadRate,
  profileFill,
  textureFill,
  meanTextureDepth,
  slipPotential,
];
