import { formula } from '../../kernel/formula.ts';
import { TENSILE_RIVALS } from './tensile-rivals.ts';

/** What each rival says, from lowest to highest, Pa. */
const estimates = (values: { readonly compressiveStrength: number }): readonly number[] =>
  TENSILE_RIVALS.map((rival) => rival.compute(values)).sort((a, b) => a - b);

/**
 * Tensile strength to expect of a slab from its specified compressive strength (cylinder), both in Pa.
 *
 * The median of seven published rivals; the band runs from the lowest to the highest of them. Which one fits a floor
 * nobody knows, and their spread is the honest uncertainty.
 */
export const tensileFromCompressive = formula({
  id: 'bond/tensile-from-compressive',
  says: 'Tensile strength to expect of a slab from its specified compressive strength',
  equation: 'median of the seven rivals; band from the lowest to the highest',
  takes: { compressiveStrength: 'Pa' },
  gives: 'Pa',
  holds: { compressiveStrength: [15e6, 60e6] },
  refuses: { compressiveStrength: [1e5, 2e8] },
  source: 'tensile-four-estimates',
  notes:
    'Takes the specified cylinder strength f′c; the European rivals treat it as fck, which is also a low fractile. A cube strength is about a quarter higher and must be brought down first. Laitance makes the surface weaker than the slab: an estimate never replaces a pull-off.',
  noOutsideRow: 'A comparison of rivals, each checked under its own id; nobody publishes their median.',
  shows: 'stress',
  inputShows: { compressiveStrength: 'stress' },
  compute: (values) => {
    const sorted = estimates(values);
    return sorted[(sorted.length - 1) / 2] as number;
  },
  band: (values) => {
    const sorted = estimates(values);
    return { band: [sorted[0] as number, sorted[sorted.length - 1] as number] };
  },
});
