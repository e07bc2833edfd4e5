import type { AnyFormula } from './kernel/formula.ts';
import { FORMULAS } from './science/formulas.ts';
import { stepFormulas } from './steps/formulas/index.ts';

/** Every formula of the core by id: laws of the science and the small sums of the steps. */
export const ALL_FORMULAS: ReadonlyMap<string, AnyFormula> = (() => {
  const all = new Map(FORMULAS);
  for (const f of stepFormulas) {
    if (all.has(f.id)) throw new Error(`two formulas with the id ${f.id}`);
    all.set(f.id, f);
  }
  return all;
})();
