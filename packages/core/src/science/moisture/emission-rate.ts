import { formula } from '../../kernel/formula.ts';

/**
 * Moisture emission of a slab from the weight that a dish of calcium chloride gains, kg/(m² s).
 *
 * Mass in kg, exposure in s, area in m²: the *net* area under the dome, less the dish.
 */
export const emissionRate = formula({
  id: 'moisture/emission-rate',
  says: 'Moisture that leaves a slab, from the weight a dish of calcium chloride gains',
  equation: 'massGain / (exposure × dishArea)',
  takes: { massGain: 'kg', exposure: 's', dishArea: 'm²' },
  gives: 'kg/(m² s)',
  holds: { massGain: [0, 0.05], exposure: [216000, 259200], dishArea: [0.03, 0.06] },
  refuses: { massGain: [0, 10], exposure: [60, 1e7], dishArea: [1e-4, 10] },
  source: 'astm-f1869',
  locator: '60 to 72 h of exposure',
  notes:
    'The area decides: kits compute with 0.4487, 0.44486 or 0.486 ft², 9 % apart, enough to turn a limit of 5 lb, so it is an input with its origin. Reads the top of the slab only; not for lightweight aggregate or over a coating.',
  shows: 'emission',
  inputShows: { exposure: 'duration', dishArea: 'area' },
  compute: ({ massGain, exposure, dishArea }) => massGain / (exposure * dishArea),
});
