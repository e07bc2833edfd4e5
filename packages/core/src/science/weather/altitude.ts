import { pressureAtAltitude } from '../air/pressure-at-altitude.ts';
import { STANDARD_PRESSURE } from '../constants.ts';

/** Pressure at an elevation (m) over that at sea level, in the standard atmosphere. */
export const pressureRatioAt = (elevation: number): number =>
  pressureAtAltitude.compute({ altitude: Math.min(4000, Math.max(-300, elevation)) }) / STANDARD_PRESSURE;
