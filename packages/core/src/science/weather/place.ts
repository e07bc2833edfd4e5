import type { Place } from './series.ts';

/**
 * A site as it may leave the machine: rounded to 0.01° (about a kilometre), elevation to 10 m. A forecast grid is
 * coarser than that, and a client's address is nobody's business.
 */
export const roundedPlace = (place: Place): Place => {
  const hundredth = (value: number): number => Math.round(value * 100) / 100;
  return {
    latitude: hundredth(place.latitude),
    longitude: hundredth(place.longitude),
    ...(place.elevation === undefined ? {} : { elevation: Math.round(place.elevation / 10) * 10 }),
  };
};
