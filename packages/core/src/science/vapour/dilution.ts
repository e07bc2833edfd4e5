import { formula } from '../../kernel/formula.ts';
import { gasVolume } from './from-liquid.ts';

const liquidTakes = {
  evaporationRate: 'm³/s',
  liquidDensity: 'kg/m³',
  molarMass: 'kg/mol',
  airTemperature: '°C',
  pressure: 'Pa',
} as const;
const liquidHolds = {
  evaporationRate: [0, 1e-3],
  liquidDensity: [600, 1700],
  molarMass: [0.03, 0.3],
  airTemperature: [-10, 50],
  pressure: [60000, 110000],
} as const;
const liquidRefuses = {
  evaporationRate: [0, 1],
  liquidDensity: [1, 5000],
  molarMass: [0.002, 1],
  airTemperature: [-100, 200],
  pressure: [10000, 200000],
} as const;

/**
 * Airflow that keeps an evaporating solvent at an exposure limit on average, m³/s.
 *
 * Evaporation of liquid in m³/s, density in kg/m³, molar mass in kg/mol, air in °C and Pa, limit as a volume fraction
 * (100 ppm is 1e-4), mixing factor 1 (perfect) to 10 (poor).
 */
export const dilutionForExposure = formula({
  id: 'vapour/dilution-for-exposure',
  says: 'Airflow that keeps an evaporating solvent at an exposure limit',
  equation:
    'evaporationRate × liquidDensity / molarMass × R (airTemperature + 273.15) / pressure / exposureLimit × mixingFactor',
  takes: { ...liquidTakes, exposureLimit: '1', mixingFactor: '1' },
  gives: 'm³/s',
  holds: { ...liquidHolds, exposureLimit: [1e-6, 0.01], mixingFactor: [1, 10] },
  refuses: { ...liquidRefuses, exposureLimit: [1e-9, 1], mixingFactor: [1, 100] },
  source: 'dilution-ventilation-formulas',
  locator: 'Q = 403e6 SG ER K / (MW C)',
  notes:
    'Shows how far dilution alone is from being enough indoors: a litre of xylene an hour asks for some 90 air changes an hour in a garage. Respirators are chosen by a competent person. The printed constant 403 is rounded; the gas law gives 0.1 % more, and 0.05 % less than 387 × 8.345.',
  shows: 'airflow',
  inputShows: { liquidDensity: 'density', exposureLimit: 'concentration' },
  compute: ({ evaporationRate, liquidDensity, molarMass, airTemperature, pressure, exposureLimit, mixingFactor }) =>
    (gasVolume(evaporationRate, liquidDensity, molarMass, airTemperature, pressure) / exposureLimit) * mixingFactor,
});

/**
 * Airflow that keeps an evaporating solvent below its lower explosive limit by a safety factor, m³/s.
 *
 * The warmth factor is 1 up to 120 °C (250 °F) and 0.7 above, because the limit falls as the air warms.
 */
export const dilutionForFire = formula({
  id: 'vapour/dilution-for-fire',
  says: 'Airflow that keeps an evaporating solvent below its explosive limit by a safety factor',
  equation:
    'evaporationRate × liquidDensity / molarMass × R (airTemperature + 273.15) / pressure × safetyFactor / (lowerExplosiveLimit × warmthFactor)',
  takes: { ...liquidTakes, lowerExplosiveLimit: '1', safetyFactor: '1', warmthFactor: '1' },
  gives: 'm³/s',
  holds: { ...liquidHolds, lowerExplosiveLimit: [0.005, 0.2], safetyFactor: [4, 12], warmthFactor: [0.7, 1] },
  refuses: { ...liquidRefuses, lowerExplosiveLimit: [1e-4, 0.99], safetyFactor: [1, 100], warmthFactor: [0.1, 1] },
  source: 'acgih-industrial-ventilation',
  notes: 'Safety factor 4 for continuous work, 10 to 12 for batches. From memory: the safety data sheet goes before.',
  shows: 'airflow',
  inputShows: { liquidDensity: 'density', lowerExplosiveLimit: 'concentration' },
  compute: (v) =>
    (gasVolume(v.evaporationRate, v.liquidDensity, v.molarMass, v.airTemperature, v.pressure) * v.safetyFactor) /
    (v.lowerExplosiveLimit * v.warmthFactor),
});

/** Sum of concentrations over their exposure limits; 1 is at the limit for substances that act alike. */
export const additiveExposure = formula({
  id: 'vapour/additive-exposure',
  says: 'Concentrations as shares of their exposure limits, added',
  equation: 'Σ (concentrations / exposureLimits)',
  takes: { concentrations: '1[]', exposureLimits: '1[]' },
  gives: '1',
  holds: { concentrations: [0, 0.01], exposureLimits: [1e-6, 0.01] },
  refuses: { concentrations: [0, 1], exposureLimits: [1e-9, 1] },
  together: [['concentrations', 'exposureLimits']],
  source: 'dilution-ventilation-formulas',
  locator: 'sum of C / TLV',
  notes: 'For substances that act on the same organ, as most solvents do.',
  noOutsideRow: 'The form was read, a worked example with numbers was not.',
  shows: 'plain',
  inputShows: { concentrations: 'concentration', exposureLimits: 'concentration' },
  compute: ({ concentrations, exposureLimits }) =>
    concentrations.reduce((sum, concentration, i) => sum + concentration / (exposureLimits[i] as number), 0),
});
