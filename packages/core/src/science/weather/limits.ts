import type { WeatherField } from './series.ts';

/**
 * What a weather value can be on a working floor's planet, in SI, and what a value outside it looks like.
 *
 * Wider than any site where resin is laid, narrow enough that the usual slips (a fraction for a percentage, °F for °C,
 * hPa for Pa) fall outside or stand out.
 */
export interface FieldLimits {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  /** How the limits are said to a person, in the unit people type. */
  readonly said: readonly [string, string];
}

export const LIMITS: Readonly<Record<WeatherField, FieldLimits>> = {
  airTemperature: { least: -60, most: 60, unit: '°C', said: ['-60 °C', '60 °C'] },
  relativeHumidity: { least: 0.01, most: 1, unit: '1', said: ['1 %', '100 %'] },
  wind: { least: 0, most: 75, unit: 'm/s', said: ['0 m/s', '75 m/s'] },
  cloud: { least: 0, most: 1, unit: '1', said: ['0 %', '100 %'] },
  radiation: { least: 0, most: 1500, unit: 'W/m²', said: ['0 W/m²', '1500 W/m²'] },
  rain: { least: 0, most: 0.5, unit: 'm', said: ['0 mm', '500 mm'] },
  pressure: { least: 50_000, most: 110_000, unit: 'Pa', said: ['500 hPa', '1100 hPa'] },
};

/** Small overshoots that instruments really report and that are drawn back to the limit without a word. */
export const OVERSHOOT: Readonly<Record<WeatherField, number>> = {
  airTemperature: 0,
  relativeHumidity: 0.05,
  wind: 0,
  cloud: 0.01,
  radiation: 10,
  rain: 0,
  pressure: 0,
};
