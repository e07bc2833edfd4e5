import { formula } from '../../kernel/formula.ts';
import { humidityRatioOf, vapourPressureOf } from './saturation.ts';

/** Humidity ratio, kg of vapour per kg of dry air; temperature in °C, humidity as a fraction, pressure in Pa. */
export const humidityRatio = formula({
  id: 'air/humidity-ratio',
  says: 'Water vapour per dry air, by mass',
  equation: '0.621945 pw / (pressure − pw), pw = relativeHumidity × saturationPressure(airTemperature)',
  takes: { airTemperature: '°C', relativeHumidity: '1', pressure: 'Pa' },
  gives: '1',
  holds: { airTemperature: [-60, 90], relativeHumidity: [0.01, 1], pressure: [60000, 110000] },
  refuses: { airTemperature: [-100, 200], relativeHumidity: [0, 1], pressure: [10000, 200000] },
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equation 20',
  notes:
    'Ideal gases: the enhancement factor of real air is left out, so saturated values lie up to 0.5 % below the handbook table near room temperature and up to 2 % at 85 °C.',
  inputShows: { relativeHumidity: 'humidity' },
  compute: ({ airTemperature, relativeHumidity, pressure }) =>
    humidityRatioOf(vapourPressureOf(airTemperature, relativeHumidity), pressure),
});
