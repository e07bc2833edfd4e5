import { formula } from '../../kernel/formula.ts';
import { saturationPressureAt, vapourPressureOf } from './saturation.ts';

/**
 * Relative humidity of the air in touch with a surface (fraction); temperatures in °C.
 *
 * Above 1 water condenses. The number is not clipped, so that how far above can be seen.
 */
export const surfaceHumidity = formula({
  id: 'air/surface-humidity',
  says: 'Relative humidity of the air where it touches the surface',
  equation: 'relativeHumidity × saturationPressure(airTemperature) / saturationPressure(surfaceTemperature)',
  takes: { airTemperature: '°C', relativeHumidity: '1', surfaceTemperature: '°C' },
  gives: '1',
  holds: { airTemperature: [-40, 100], relativeHumidity: [0.01, 1], surfaceTemperature: [-40, 100] },
  refuses: { airTemperature: [-100, 200], relativeHumidity: [0, 1], surfaceTemperature: [-100, 200] },
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equation 22',
  notes: 'The vapour pressure of room air is the same at the slab; only what it can hold there differs.',
  shows: 'humidity',
  inputShows: { relativeHumidity: 'humidity' },
  compute: ({ airTemperature, relativeHumidity, surfaceTemperature }) =>
    vapourPressureOf(airTemperature, relativeHumidity) / saturationPressureAt(surfaceTemperature),
});
