import type { AnyFormula } from '../../kernel/formula.ts';
import { dewMargin, leastSurfaceTemperature } from './dew-margin.ts';
import { dewPoint, frostPoint } from './dew-point.ts';
import { humidityRatio } from './humidity-ratio.ts';
import { pressureAtAltitude } from './pressure-at-altitude.ts';
import { saturationPressure } from './saturation-pressure.ts';
import { surfaceHumidity } from './surface-humidity.ts';
import { dewPointFromWetBulb, humidityFromWetBulb, humidityRatioFromWetBulb, wetBulb } from './wet-bulb.ts';

export * from './dew-margin.ts';
export * from './dew-point.ts';
export * from './humidity-ratio.ts';
export * from './pressure-at-altitude.ts';
export * from './saturation-pressure.ts';
export * from './surface-humidity.ts';
export * from './wet-bulb.ts';

/** Laws of moist air. */
export const airFormulas: readonly AnyFormula[] = [
  saturationPressure,
  dewPoint,
  frostPoint,
  wetBulb,
  humidityRatio,
  humidityFromWetBulb,
  humidityRatioFromWetBulb,
  dewPointFromWetBulb,
  pressureAtAltitude,
  surfaceHumidity,
  dewMargin,
  leastSurfaceTemperature,
];
