import { diffusivity, type Material } from './materials.ts';

/**
 * Undisturbed ground through the year (Kusuda & Achenbach 1965).
 *
 *   T(z, t) = Tm − A e^{−z√(π/365α)} cos(2π/365 · [t − t₀ − z/2 · √(365/πα)])        α in m²/day, t in days
 */
export interface AnnualWave {
  /** Mean surface temperature over the year, °C. */
  readonly mean: number;
  /** Half of the yearly swing of the surface, K. */
  readonly amplitude: number;
  /** Day of the year on which the surface is coldest, 1-365. */
  readonly coldestDay: number;
}

const YEAR = 365;
const DAY = 86400;

/**
 * Ground temperature at a depth on a day of the year, °C.
 *
 * @param depth m
 * @param day day of the year, 1-366, may carry a fraction
 */
export const annualWaveAt = (wave: AnnualWave, soil: Material, depth: number, day: number): number => {
  const perDay = diffusivity(soil) * DAY;
  const damping = depth * Math.sqrt(Math.PI / (YEAR * perDay));
  const delay = (depth / 2) * Math.sqrt(YEAR / (Math.PI * perDay));
  return (
    wave.mean - wave.amplitude * Math.exp(-damping) * Math.cos(((2 * Math.PI) / YEAR) * (day - wave.coldestDay - delay))
  );
};
