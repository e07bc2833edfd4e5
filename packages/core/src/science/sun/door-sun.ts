import type { SunPosition } from './position.ts';

/** A door or opening through which the sun reaches the floor. */
export interface Opening {
  /** Direction the opening looks to, clockwise from north, rad. */
  readonly facing: number;
  /** Height of its top over the floor, m. */
  readonly height: number;
}

/**
 * How far into the room the direct sun reaches on the floor behind an opening, m; 0 when the sun is not in front.
 *
 *   reach = height · cos(azimuth − facing) / tan(elevation)
 */
export const sunReach = (sun: SunPosition, opening: Opening): number => {
  const ahead = Math.cos(sun.azimuth - opening.facing);
  if (sun.elevation <= 0 || ahead <= 0) return 0;
  return (opening.height * ahead) / Math.tan(sun.elevation);
};
