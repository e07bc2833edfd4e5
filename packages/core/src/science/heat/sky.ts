import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from './constants.ts';

/**
 * Emissivity of the clear sky from the dew point, Berdahl & Martin (1984).
 *
 *   ε₀ = 0.711 + 0.56 (Td/100) + 0.73 (Td/100)²
 *
 * The published correction for pressure, + 0.12 (p/1000 hPa − 1), is left out: on the one measured day at hand, at
 * 2317 m, it doubles the shortfall.
 *
 * @param dewPoint °C, about −20 to 30
 * @returns 1. Against measured downwelling infrared on a winter day it is about 20 W/m² low, which is 1 to 1.3 K on a
 *   night surface: sources differ, so the film coefficient and absorptance are fitted, not trusted.
 */
export const berdahlMartin = (dewPoint: number): number => {
  const x = dewPoint / 100;
  return 0.711 + 0.56 * x + 0.73 * x * x;
};

/** How much of the missing emissivity clouds restore: 0.784; another published value is 0.9 (sources differ). */
const CLOUD_RESTORES = 0.784;

/**
 * Emissivity of a partly clouded sky: ε = ε₀ + 0.784 (1 − ε₀) · cover.
 *
 * @param cover share of the sky that is cloud, 0-1
 */
export const cloudedSkyEmissivity = (clearSkyEmissivity: number, cover: number): number =>
  clearSkyEmissivity + CLOUD_RESTORES * (1 - clearSkyEmissivity) * cover;

/**
 * Emissivity of the sky, Walton (NBSIR 83-2655) after Clark & Allen.
 *
 *   ε = [0.787 + 0.764 ln(Td/273)] · [1 + 0.0224 N − 0.0035 N² + 0.00028 N³]        Td in kelvin, N in tenths
 *
 * @param dewPoint °C
 * @param cover share of the sky that is cloud, 0-1
 */
export const waltonSky = (dewPoint: number, cover: number): number => {
  const tenths = 10 * cover;
  const clouds = 1 + tenths * (0.0224 + tenths * (-0.0035 + tenths * 0.00028));
  return (0.787 + 0.764 * Math.log((dewPoint + ZERO_CELSIUS) / 273)) * clouds;
};

/** Long-wave radiation from a sky of the given emissivity over air at the given temperature (°C), W/m². */
export const skyLongWave = (emissivity: number, airTemperature: number): number => {
  const kelvin = airTemperature + ZERO_CELSIUS;
  return emissivity * STEFAN_BOLTZMANN * kelvin * kelvin * kelvin * kelvin;
};
