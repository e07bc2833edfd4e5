/**
 * Film coefficients of a floor, W/(m² K).
 *
 * Indoor values carry convection and radiation together. From the film resistances 0.61 (heat up), 0.92 (heat down)
 * h·ft²·°F/Btu of WAC 51-11-0526; ISO 6946 gives 10 and 5.9 for the same two cases.
 */
export const FILM_FLOOR_WARMER = 9.3;
export const FILM_FLOOR_COOLER = 6.2;

/** Garage with its door open: 10 to 15 is common practice; the middle is taken and its spread is fitted. */
export const FILM_DOOR_OPEN = 12;

/**
 * Convection from a floor in the open by wind.
 *
 *   h = 5.6 + 4.0 v   up to 5 m/s,   7.2 v^0.78   above
 *
 * From memory, as used in NISTIR 6551 (Bentz 2000); published wind formulas differ widely, so it is fitted to readings.
 *
 * @param wind m/s
 */
export const windFilm = (wind: number): number => (wind <= 5 ? 5.6 + 4.0 * wind : 7.2 * wind ** 0.78);
