import type { AnyFormula } from '../../kernel/formula.ts';
import { coatsFormulas } from './coats.ts';
import { cracksFormulas } from './cracks.ts';
import { dayFormulas } from './day.ts';
import { evidenceFormulas } from './evidence.ts';
import { fitsFormulas } from './fits.ts';
import { hoursFormulas } from './hours-index.ts';
import { priceStepFormulas } from './price-index.ts';
import { quantitiesFormulas } from './quantities-index.ts';
import { safetyFormulas } from './safety.ts';
import { spreadFormulas } from './spread.ts';
import { stepFormulasSurvey } from './survey-index.ts';
import { systemFormulas } from './system-index.ts';
import { thinnerFormulas } from './thinner.ts';

/** Small sums of the steps that are no law of nature, each with its working like every other number. */
export const stepFormulas: readonly AnyFormula[] = [
  ...stepFormulasSurvey,
  ...systemFormulas,
  ...thinnerFormulas,
  ...evidenceFormulas,
  ...quantitiesFormulas,
  ...hoursFormulas,
  ...dayFormulas,
  ...coatsFormulas,
  ...cracksFormulas,
  ...spreadFormulas,
  ...fitsFormulas,
  ...safetyFormulas,
  ...priceStepFormulas,
];
