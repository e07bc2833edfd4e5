import { formula } from '../../kernel/formula.ts';
import { saturationPressureAt } from './saturation.ts';

/**
 * Pressure of water vapour in saturated air, Pa; temperature in °C, −100 to 200.
 *
 * Over ice below the triple point (0.01 °C), over water above. Within 0.03 % of the handbook's table.
 */
export const saturationPressure = formula({
  id: 'air/saturation-pressure',
  says: 'Pressure of water vapour in saturated air',
  equation: 'ln p = a/T + b + c T + d T² + e T³ + f T⁴ + g ln T, T = temperature + 273.15',
  takes: { temperature: '°C' },
  gives: 'Pa',
  holds: { temperature: [-100, 200] },
  refuses: { temperature: [-100, 200] },
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equations 5 and 6',
  notes:
    'Hyland and Wexler, chosen over the Magnus forms because one law then serves frost and hot summer slabs; the Magnus sets differ from it by at most 0.5 %. The two curves are joined at the triple point, not at 0 °C as printed, where they leave a jump. The enhancement factor of air is left out: up to 0.5 % of the pressure.',
  shows: 'pressure',
  compute: ({ temperature }) => saturationPressureAt(temperature),
});
