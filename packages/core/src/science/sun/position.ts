import { getPosition, getTimes } from 'suncalc';

export interface SunPosition {
  /** Apparent elevation over the horizon, refraction included, rad. */
  readonly elevation: number;
  /** Clockwise from north, rad, 0 to 2π. */
  readonly azimuth: number;
}

const RADIANS = Math.PI / 180;

/**
 * Where the sun stands. Within 0.013° in elevation of an ephemeris over a year; at the poles the azimuth has no
 * meaning but stays a number.
 *
 * @param instant ms since 1970
 * @param latitude ° north, −90 to 90
 * @param longitude ° east, −180 to 180
 */
export const sunPosition = (instant: number, latitude: number, longitude: number): SunPosition => {
  const { altitude, azimuth } = getPosition(new Date(instant), latitude, longitude);
  return { elevation: altitude * RADIANS, azimuth: azimuth * RADIANS };
};

export type SunDay =
  | { readonly kind: 'rises'; readonly rise: number; readonly noon: number; readonly set: number }
  | { readonly kind: 'always up'; readonly noon: number }
  | { readonly kind: 'always down'; readonly noon: number };

/**
 * Sunrise, solar noon and sunset of the solar day that holds an instant, ms since 1970; at high latitudes the sun may
 * stay up or down all day.
 *
 * @throws RangeError when the latitude is none: weather and sites are checked before
 */
export const sunDay = (instant: number, latitude: number, longitude: number): SunDay => {
  if (!(latitude >= -90 && latitude <= 90))
    throw new RangeError(`sunDay: latitude ${latitude} is not between -90 and 90°`);
  const times = getTimes(new Date(instant), latitude, longitude);
  const noon = times.solarNoon.getTime();
  const { sunrise, sunset } = times;
  if (sunrise !== null && sunset !== null)
    return { kind: 'rises', rise: sunrise.getTime(), noon, set: sunset.getTime() };
  return { kind: sunPosition(noon, latitude, longitude).elevation > 0 ? 'always up' : 'always down', noon };
};
