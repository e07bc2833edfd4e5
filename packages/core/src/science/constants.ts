import { toSI } from '../units/convert.ts';

/** Molar gas constant, J/(mol K). Exact since the 2019 definition of the SI units. */
export const GAS_CONSTANT = 8.31446261815324;

/** 0 °C in kelvin. Exact by definition of the Celsius scale. */
export const ZERO_CELSIUS = 273.15;

/** Standard atmosphere, Pa. Exact by definition. */
export const STANDARD_PRESSURE = 101325;

/** One pound-force per square inch, Pa. Some strength correlations are fitted in psi and hold in no other unit. */
export const PSI = toSI(1, 'psi').value;

/** One megapascal, Pa. The European strength correlations are written in MPa (N/mm²). */
export const MEGAPASCAL = toSI(1, 'MPa').value;
