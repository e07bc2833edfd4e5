export { ZERO_CELSIUS } from '../constants.ts';

/** Stefan-Boltzmann constant, W/(m² K⁴): CODATA 2018, exact by definition of the SI. */
export const STEFAN_BOLTZMANN = 5.670374419e-8;
