/** Ordinary step, s. Backward Euler at 5 min keeps the worst error of smooth weather near 0.05 K. */
export const STEP = 300;

/**
 * Length of the next step, s, by the time passed since the last jump of the surface balance (a door that opens, the
 * sun that leaves a strip, a start from rest).
 *
 * Just after a jump the surface moves with the square root of time, so equal steps would leave tenths of a kelvin
 * there. Steps start at a sixteenth and double as the jump recedes; all of them divide `STEP`, so the clock stays on
 * its 5-minute marks when the jump was on one.
 *
 * @param sinceJump s, not negative
 */
export const stepAfterJump = (sinceJump: number): number => {
  if (sinceJump < 2 * STEP) return STEP / 16;
  if (sinceJump < 4 * STEP) return STEP / 8;
  if (sinceJump < 8 * STEP) return STEP / 4;
  if (sinceJump < 16 * STEP) return STEP / 2;
  return STEP;
};
