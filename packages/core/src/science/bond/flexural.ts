import { formula } from '../../kernel/formula.ts';
import { PSI } from '../constants.ts';

const takes = { compressiveStrength: 'Pa' } as const;
const refuses = { compressiveStrength: [1e5, 2e8] } as const;
const inputShows = { compressiveStrength: 'stress' } as const;

/** Modulus of rupture of concrete by the American root, Pa, from the specified cylinder strength in Pa. */
export const ruptureRoot = formula({
  id: 'bond/rupture-from-compressive/root-7.5',
  says: 'Modulus of rupture of concrete by the square root of the compressive strength',
  equation: '7.5 √compressiveStrength in psi',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [15e6, 60e6] },
  refuses,
  source: 'tensile-four-estimates',
  notes: 'Bending, about half as much again as direct tension: never to be compared with a pull-off. In psi only.',
  shows: 'stress',
  inputShows,
  compute: ({ compressiveStrength }) => 7.5 * Math.sqrt(compressiveStrength / PSI) * PSI,
});

/** Modulus of rupture of pavement concrete by the fit of FHWA-HRT-12-030, Pa, from the cylinder strength in Pa. */
export const ruptureFhwa2012 = formula({
  id: 'bond/rupture-from-compressive/fhwa-2012',
  says: 'Modulus of rupture of pavement concrete by the fit of FHWA-HRT-12-030',
  equation: '22.7741 compressiveStrength^0.4082 in psi',
  takes,
  gives: 'Pa',
  holds: { compressiveStrength: [15e6, 60e6] },
  refuses,
  source: 'fhwa-hrt-12-030',
  locator: 'modulus of rupture of portland cement concrete',
  notes: '185 tests, R² 45 %, root mean square error 69 psi (0.48 MPa). In psi only.',
  shows: 'stress',
  inputShows,
  compute: ({ compressiveStrength }) => 22.7741 * (compressiveStrength / PSI) ** 0.4082 * PSI,
});
