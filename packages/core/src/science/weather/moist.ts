import { dewPointOf, frostPointOf, vapourPressureOf } from '../air/saturation.ts';

/** Dew point over water of air at a temperature (°C) and relative humidity (0-1), °C: the law of `air/dew-point`. */
export const dewPointAt = (airTemperature: number, relativeHumidity: number): number =>
  dewPointOf(vapourPressureOf(airTemperature, relativeHumidity));

/** What settles on a surface at the given temperature first: dew above 0 °C, frost below (the higher of the two), °C. */
export const settlingPointAt = (
  airTemperature: number,
  relativeHumidity: number,
  surfaceTemperature: number,
): number => {
  const pressure = vapourPressureOf(airTemperature, relativeHumidity);
  const frost = surfaceTemperature < 0 ? frostPointOf(pressure) : undefined;
  return frost ?? dewPointOf(pressure);
};
