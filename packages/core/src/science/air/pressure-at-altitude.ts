import { formula } from '../../kernel/formula.ts';
import { STANDARD_PRESSURE } from '../constants.ts';

/** Pressure of the standard atmosphere, Pa; altitude in m above sea level, −5000 to 11 000. */
export const pressureAtAltitude = formula({
  id: 'air/pressure-at-altitude',
  says: 'Air pressure of the standard atmosphere at an altitude',
  equation: '101325 (1 − 2.25577e-5 altitude)^5.2559',
  takes: { altitude: 'm' },
  gives: 'Pa',
  holds: { altitude: [-500, 10000] },
  refuses: { altitude: [-5000, 11000] },
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equation 3',
  notes: 'Weather moves the true pressure by about ±3 %; a barometer reading is better where there is one.',
  shows: 'pressure',
  compute: ({ altitude }) => STANDARD_PRESSURE * (1 - 2.25577e-5 * altitude) ** 5.2559,
});
