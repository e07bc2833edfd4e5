import type { Known } from '../../kernel/entry.ts';
import type { Unit } from '../../kernel/unit.ts';

/**
 * The same entry without its causes, for formulas that step: the slope of a whole number means nothing, so a count has
 * no band. How sure it is, its break point says.
 */
export function certain<U extends Unit>(known: Known<U>): Known<U> {
  const { causes, band, ...rest } = known;
  return rest as Known<U>;
}
