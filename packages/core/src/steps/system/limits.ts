import { round9 } from '../../kernel/canonical.ts';

/** Nine digits are only asked for where two numbers are this close: rounding moves neither by more than a tenth of it. */
const CLOSE = 1e-7;

const isClose = (a: number, b: number): boolean => Math.abs(a - b) <= CLOSE * Math.max(Math.abs(a), Math.abs(b));

/** Comparisons of a reading with a limit: at the limit is within it, whatever the last binary digit says. */
export const above = (value: number, limit: number): boolean =>
  isClose(value, limit) ? round9(value) > round9(limit) : value > limit;
export const below = (value: number, limit: number): boolean =>
  isClose(value, limit) ? round9(value) < round9(limit) : value < limit;
