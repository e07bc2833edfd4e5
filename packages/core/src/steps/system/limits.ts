import { round9 } from '../../kernel/canonical.ts';

/** Comparisons of a reading with a limit: at the limit is within it, whatever the last binary digit says. */
export const above = (value: number, limit: number): boolean => round9(value) > round9(limit);
export const below = (value: number, limit: number): boolean => round9(value) < round9(limit);
