import type { AnyFormula } from '../../kernel/formula.ts';
import { haurwitz } from './clear-sky.ts';

export * from './clear-sky.ts';
export * from './diffuse-share.ts';
export * from './door-sun.ts';
export * from './position.ts';

/** Laws of the sun. */
export const sunFormulas: readonly AnyFormula[] = [haurwitz];
