/** Stefan-Boltzmann constant, W/(m² K⁴): CODATA 2018, exact by definition of the SI. */
export const STEFAN_BOLTZMANN = 5.670374419e-8;

/** 0 °C in kelvin, exact. */
export const ZERO_CELSIUS = 273.15;
