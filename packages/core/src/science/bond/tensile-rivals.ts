import { formula } from '../../kernel/formula.ts';
import { MEGAPASCAL, PSI } from '../constants.ts';

/**
 * Rival estimates of the tensile strength of concrete from its specified compressive strength (cylinder), all in Pa.
 *
 * They were fitted to different tests (direct, splitting), ages and aggregates and spread by a factor of two: an
 * estimate never replaces a pull-off, and the surface is usually weaker than the slab.
 */
const takes = { compressiveStrength: 'Pa' } as const;
const refuses = { compressiveStrength: [1e5, 2e8] } as const;
const inputShows = { compressiveStrength: 'stress' } as const;

/** Mean tensile strength of EN 1992-1-1, MPa, of a characteristic cylinder strength in MPa; two branches at C50. */
const eurocodeMean = (fck: number): number => (fck <= 50 ? 0.3 * fck ** (2 / 3) : 2.12 * Math.log(1 + (fck + 8) / 10));

/** Characteristic compressive strength in MPa to Pa of tensile strength. */
const inMegapascal = (law: (fck: number) => number) => (v: { readonly compressiveStrength: number }) =>
  law(v.compressiveStrength / MEGAPASCAL) * MEGAPASCAL;

/** The American fits hold in psi only: the roots and powers are not homogeneous. */
const inPsi = (law: (strength: number) => number) => (v: { readonly compressiveStrength: number }) =>
  law(v.compressiveStrength / PSI) * PSI;

export const tensileEurocodeMean = formula({
  id: 'bond/tensile-from-compressive/en-1992-mean',
  says: 'Mean tensile strength of concrete by EN 1992-1-1',
  equation: '0.30 fck^(2/3) up to C50, 2.12 ln(1 + (fck + 8)/10) above, in MPa',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [12e6, 90e6] },
  refuses,
  source: 'en-1992-table-3-1-reprint',
  locator: 'table 3.1',
  notes:
    'fck is the characteristic cylinder strength. The logarithm takes the mean strength fck + 8: one public page prints fck, another works ln 9.8 where the table has ln 8.8.',
  shows: 'stress',
  inputShows,
  compute: inMegapascal(eurocodeMean),
});

export const tensileEurocodeLower = formula({
  id: 'bond/tensile-from-compressive/en-1992-lower',
  says: 'Lower characteristic tensile strength of concrete by EN 1992-1-1 (5 % fall below)',
  equation: '0.7 × mean tensile strength',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [12e6, 90e6] },
  refuses,
  source: 'en-1992-table-3-1-reprint',
  locator: 'table 3.1',
  notes: 'Answers how weak a slab of that class may be, not what to expect of it.',
  shows: 'stress',
  inputShows,
  compute: inMegapascal((fck) => 0.7 * eurocodeMean(fck)),
});

export const tensileTenPercent = formula({
  id: 'bond/tensile-from-compressive/ten-percent',
  says: 'Tensile strength of concrete as a tenth of the compressive',
  equation: '0.1 × compressiveStrength',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [10e6, 60e6] },
  refuses,
  source: 'tensile-four-estimates',
  notes: 'A rule of thumb; too high for strong concrete.',
  shows: 'stress',
  inputShows,
  compute: ({ compressiveStrength }) => compressiveStrength / 10,
});

export const tensileSplittingRoot = formula({
  id: 'bond/tensile-from-compressive/root-6.7',
  says: 'Splitting tensile strength of concrete by the square root of the compressive',
  equation: '6.7 √compressiveStrength in psi',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [15e6, 60e6] },
  refuses,
  source: 'tensile-four-estimates',
  notes: 'Splitting strength, higher than direct tension. In psi only.',
  shows: 'stress',
  inputShows,
  compute: inPsi((strength) => 6.7 * Math.sqrt(strength)),
});

export const tensileDirectRoot = formula({
  id: 'bond/tensile-from-compressive/root-4',
  says: 'Direct tensile strength of concrete by the square root of the compressive',
  equation: '4 √compressiveStrength in psi',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [15e6, 60e6] },
  refuses,
  source: 'tensile-four-estimates',
  notes: 'The lowest of the rivals and the nearest to what a pull-off loads. In psi only.',
  shows: 'stress',
  inputShows,
  compute: inPsi((strength) => 4 * Math.sqrt(strength)),
});

export const tensilePowerTwoThirds = formula({
  id: 'bond/tensile-from-compressive/power-two-thirds',
  says: 'Tensile strength of concrete by the two-thirds power of the compressive',
  equation: '2.3 compressiveStrength^(2/3) in psi',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [15e6, 60e6] },
  refuses,
  source: 'tensile-four-estimates',
  notes: 'The highest of the rivals: flexural strength rather than tension. In psi only.',
  shows: 'stress',
  inputShows,
  compute: inPsi((strength) => 2.3 * strength ** (2 / 3)),
});

export const tensileFhwa2012 = formula({
  id: 'bond/tensile-from-compressive/fhwa-2012-splitting',
  says: 'Splitting tensile strength of pavement concrete by the fit of FHWA-HRT-12-030',
  equation: '8.9068 compressiveStrength^0.4785 in psi',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [15e6, 60e6] },
  refuses,
  source: 'fhwa-hrt-12-030',
  locator: 'splitting tensile strength of portland cement concrete',
  notes: '541 cores of road slabs, R² 42 %, root mean square error 61 psi (0.42 MPa). In psi only.',
  shows: 'stress',
  inputShows,
  compute: inPsi((strength) => 8.9068 * strength ** 0.4785),
});

/** All rivals, in the order they were declared. */
export const TENSILE_RIVALS = [
  tensileEurocodeMean,
  tensileEurocodeLower,
  tensileTenPercent,
  tensileSplittingRoot,
  tensileDirectRoot,
  tensilePowerTwoThirds,
  tensileFhwa2012,
] as const;
