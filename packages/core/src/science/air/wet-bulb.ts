import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import {
  dewPointOf,
  humidityRatioOf,
  saturationPressureAt,
  TRIPLE_POINT,
  vapourPressureOf,
  vapourPressureOfRatio,
} from './saturation.ts';

const PRESSURE_HOLDS = [60000, 110000] as const;
const PRESSURE_REFUSES = [10000, 200000] as const;

/**
 * The energy balance of a wet wick: the humidity ratio of air at a temperature whose wet bulb reads another, both in
 * °C. Latent and specific heats in kJ/kg and kJ/(kg K), as the handbook prints them.
 */
function ratioAtWetBulb(airTemperature: number, wetBulb: number, pressure: number): number {
  const saturated = humidityRatioOf(saturationPressureAt(wetBulb), pressure);
  const fall = airTemperature - wetBulb;
  return wetBulb < TRIPLE_POINT
    ? ((2830 - 0.24 * wetBulb) * saturated - 1.006 * fall) / (2830 + 1.86 * airTemperature - 2.1 * wetBulb)
    : ((2501 - 2.326 * wetBulb) * saturated - 1.006 * fall) / (2501 + 1.86 * airTemperature - 4.186 * wetBulb);
}

/** The humidity ratio of a pair of readings, refused where the wick could not have read so. */
function ratioOfPair(airTemperature: number, wetBulbTemperature: number, pressure: number): number {
  if (wetBulbTemperature > airTemperature)
    throw new Refuse('wet-bulb-above-air', 'wetBulbTemperature', [-100, airTemperature]);
  const ratio = ratioAtWetBulb(airTemperature, wetBulbTemperature, pressure);
  if (ratio < 0) throw new Refuse('wet-bulb-too-low', 'wetBulbTemperature');
  return ratio;
}

const pairTakes = { airTemperature: '°C', wetBulbTemperature: '°C', pressure: 'Pa' } as const;
const pairHolds = { airTemperature: [-40, 60], wetBulbTemperature: [-40, 60], pressure: PRESSURE_HOLDS } as const;
const pairRefuses = { airTemperature: [-100, 90], wetBulbTemperature: [-100, 90], pressure: PRESSURE_REFUSES } as const;

/** Wet-bulb temperature, °C; air temperature in °C, relative humidity as a fraction, pressure in Pa. */
export const wetBulb = formula({
  id: 'air/wet-bulb',
  says: 'Temperature of a wet wick in moving air',
  equation:
    'W(relativeHumidity) = ((2501 − 2.326 t) Ws(t) − 1.006 (airTemperature − t)) / (2501 + 1.86 airTemperature − 4.186 t), t the wet bulb',
  takes: { airTemperature: '°C', relativeHumidity: '1', pressure: 'Pa' },
  gives: '°C',
  holds: { airTemperature: [-40, 60], relativeHumidity: [0.01, 1], pressure: PRESSURE_HOLDS },
  refuses: { airTemperature: [-100, 90], relativeHumidity: [1e-6, 1], pressure: PRESSURE_REFUSES },
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equations 33 and 35',
  notes:
    'The full energy balance, because the one-line fit in use elsewhere errs by up to 0.83 K. Below the triple point the wick is taken as iced. Between the two balances humidity has a small overlap at freezing, where a wick may be wet or iced; the wet reading is given.',
  shows: 'temperature',
  inputShows: { relativeHumidity: 'humidity' },
  compute: ({ airTemperature, relativeHumidity, pressure }) => {
    const wanted = humidityRatioOf(vapourPressureOf(airTemperature, relativeHumidity), pressure);
    const wetAboveFreezing =
      airTemperature >= TRIPLE_POINT && wanted >= ratioAtWetBulb(airTemperature, TRIPLE_POINT, pressure);
    let low = wetAboveFreezing ? TRIPLE_POINT : -150;
    let high = wetAboveFreezing ? airTemperature : Math.min(airTemperature, TRIPLE_POINT - Number.EPSILON);
    for (let pass = 0; pass < 60; pass++) {
      const middle = (low + high) / 2;
      if (ratioAtWetBulb(airTemperature, middle, pressure) > wanted) high = middle;
      else low = middle;
    }
    return (low + high) / 2;
  },
});

/** Humidity ratio from a pair of dry and wet thermometers, kg/kg; temperatures in °C, pressure in Pa. */
export const humidityRatioFromWetBulb = formula({
  id: 'air/humidity-ratio-from-wet-bulb',
  says: 'Water vapour per dry air, from a dry and a wet thermometer',
  equation:
    '((2501 − 2.326 wetBulbTemperature) Ws − 1.006 (airTemperature − wetBulbTemperature)) / (2501 + 1.86 airTemperature − 4.186 wetBulbTemperature)',
  takes: pairTakes,
  gives: '1',
  holds: pairHolds,
  refuses: pairRefuses,
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equations 33 and 35',
  notes: 'Below the triple point the wick is taken as iced: 2830 − 0.24 t and 2830 + 1.86 T − 2.1 t.',
  compute: ({ airTemperature, wetBulbTemperature, pressure }) =>
    ratioOfPair(airTemperature, wetBulbTemperature, pressure),
});

/** Relative humidity (fraction) from a pair of dry and wet thermometers; temperatures in °C, pressure in Pa. */
export const humidityFromWetBulb = formula({
  id: 'air/humidity-from-wet-bulb',
  says: 'Relative humidity, from a dry and a wet thermometer',
  equation: 'vapourPressure(humidityRatioFromWetBulb) / saturationPressure(airTemperature)',
  takes: pairTakes,
  gives: '1',
  holds: pairHolds,
  refuses: pairRefuses,
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equations 22, 33 and 35',
  notes: 'Half a degree of error in the wet bulb is about 4 % of humidity at room temperature.',
  shows: 'humidity',
  compute: ({ airTemperature, wetBulbTemperature, pressure }) =>
    vapourPressureOfRatio(ratioOfPair(airTemperature, wetBulbTemperature, pressure), pressure) /
    saturationPressureAt(airTemperature),
});

/** Dew point over water, °C, from a pair of dry and wet thermometers in °C at a pressure in Pa. */
export const dewPointFromWetBulb = formula({
  id: 'air/dew-point-from-wet-bulb',
  says: 'Dew point, from a dry and a wet thermometer',
  equation: 'saturationPressureOverWater(dewPoint) = vapourPressure(humidityRatioFromWetBulb)',
  takes: pairTakes,
  gives: '°C',
  holds: pairHolds,
  refuses: pairRefuses,
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equations 6, 33 and 35',
  notes: 'The way of the sling psychrometer, whose reading needs no calibration of a humidity sensor.',
  shows: 'temperature',
  compute: ({ airTemperature, wetBulbTemperature, pressure }) => {
    const ratio = ratioOfPair(airTemperature, wetBulbTemperature, pressure);
    if (ratio === 0) throw new Refuse('air-too-dry-for-dew-point', 'wetBulbTemperature');
    return dewPointOf(vapourPressureOfRatio(ratio, pressure));
  },
});
