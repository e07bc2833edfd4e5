import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { dewPointOf, frostPointOf, MOST_OVER_ICE, saturationPressureAt, vapourPressureOf } from './saturation.ts';

const takes = { airTemperature: '°C', relativeHumidity: '1' } as const;
const refuses = { airTemperature: [-100, 200], relativeHumidity: [1e-6, 1] } as const;
const inputShows = { relativeHumidity: 'humidity' } as const;

/**
 * Dew point over liquid water, °C, of air at a temperature in °C and a relative humidity (fraction).
 *
 * Refused for air so dry that water would not condense down to −100 °C.
 */
export const dewPoint = formula({
  id: 'air/dew-point',
  says: 'Temperature at which the moisture of the air begins to condense as water',
  equation: 'saturationPressureOverWater(dewPoint) = relativeHumidity × saturationPressure(airTemperature)',
  takes,
  gives: '°C',
  holds: { airTemperature: [-40, 100], relativeHumidity: [0.01, 1] },
  refuses,
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equations 5, 6 and 22',
  notes:
    'Solved from the one saturation law by a bracketed Newton step, not by a rival Magnus form; the Magnus sets differ by at most 0.06 K between 0 and 45 °C. Instruments matter more: 3 % of humidity moves it by 0.5 to 0.8 K. Over liquid water at every temperature; on a surface below 0 °C the frost point is the higher and governs. Air below 0.01 °C is taken as saturated over ice: a hygrometer that states humidity over supercooled water reads lower for the same air.',
  shows: 'temperature',
  inputShows,
  compute: ({ airTemperature, relativeHumidity }) => dewPointOf(vapourPressureOf(airTemperature, relativeHumidity)),
});

/**
 * Frost point over ice, °C, of air at a temperature in °C and a relative humidity (fraction).
 *
 * Refused when above 0.01 °C: there the moisture condenses as water and the dew point is meant.
 */
export const frostPoint = formula({
  id: 'air/frost-point',
  says: 'Temperature at which the moisture of the air begins to settle as ice',
  equation: 'saturationPressureOverIce(frostPoint) = relativeHumidity × saturationPressure(airTemperature)',
  takes,
  gives: '°C',
  holds: { airTemperature: [-40, 100], relativeHumidity: [0.01, 1] },
  refuses,
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equation 5',
  notes:
    'Higher than the dew point of the same air below 0 °C, by up to 2.1 K at −20 °C, and so the one to keep a cold slab above.',
  shows: 'temperature',
  inputShows,
  compute: ({ airTemperature, relativeHumidity }) => {
    const frost = frostPointOf(vapourPressureOf(airTemperature, relativeHumidity));
    if (frost === undefined) {
      const most = MOST_OVER_ICE / saturationPressureAt(airTemperature);
      throw new Refuse('no-frost-above-freezing', 'relativeHumidity', [0, most]);
    }
    return frost;
  },
});
