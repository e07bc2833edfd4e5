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

const DAY_MS = 86_400_000;

/** Day of the year of an instant (ms since 1970), 1.0 at the first midnight of January, UTC. */
export const dayOfYear = (instant: number): number =>
  1 + (instant - Date.UTC(new Date(instant).getUTCFullYear(), 0, 1)) / DAY_MS;

/**
 * Yearly wave of the ground by place alone: an assumption to start from where nothing is known, with a deviation of
 * 2 K that readings on the slab then narrow.
 *
 *   mean = 27 − 0.0076 · latitude² − 6.5 K/km,   amplitude = 1 + latitude / 4
 *
 * A rough fit by eye to the zonal means of the earth: common practice, no source.
 */
export const roughAnnualWave = (latitude: number, elevation: number): AnnualWave => ({
  mean: 27 - 0.0076 * latitude * latitude - 0.0065 * elevation,
  amplitude: 1 + Math.abs(latitude) / 4,
  coldestDay: latitude >= 0 ? 20 : 203,
});

/**
 * Yearly wave out of a whole year of hourly air temperatures: its first harmonic.
 *
 * @param airTemperature °C, hourly, at least 8,700 values
 * @param start ms since 1970 of the first
 */
export const annualWaveOf = (airTemperature: Float64Array, start: number): AnnualWave => {
  const n = Math.min(airTemperature.length, YEAR * 24);
  if (n < 8700) throw new RangeError('annualWaveOf: less than a year of hours');
  let [mean, cosine, sine] = [0, 0, 0];
  const first = dayOfYear(start);
  for (let i = 0; i < n; i++) {
    const each = airTemperature[i] as number;
    const phase = ((2 * Math.PI) / YEAR) * (first + i / 24);
    mean += each / n;
    cosine += (2 * each * Math.cos(phase)) / n;
    sine += (2 * each * Math.sin(phase)) / n;
  }
  const coldest = (Math.atan2(-sine, -cosine) * YEAR) / (2 * Math.PI);
  return { mean, amplitude: Math.hypot(cosine, sine), coldestDay: coldest <= 0 ? coldest + YEAR : coldest };
};
