import { formula } from '../../kernel/formula.ts';
import { GAS_CONSTANT, ZERO_CELSIUS } from '../constants.ts';

/** Volume of ideal gas from a volume of liquid (or a rate from a rate). */
export const gasVolume = (
  liquid: number,
  liquidDensity: number,
  molarMass: number,
  airTemperature: number,
  pressure: number,
): number => ((liquid * liquidDensity) / molarMass) * ((GAS_CONSTANT * (airTemperature + ZERO_CELSIUS)) / pressure);

/**
 * Volume of vapour from an evaporated liquid, m³; liquid in m³, density in kg/m³, molar mass in kg/mol, air in °C and
 * Pa. The ideal gas law: within 1 % for solvent vapours thinned in air.
 */
export const vapourFromLiquid = formula({
  id: 'vapour/volume-from-liquid',
  says: 'Volume of vapour that an evaporated liquid becomes',
  equation: 'liquidVolume × liquidDensity / molarMass × R (airTemperature + 273.15) / pressure',
  takes: { liquidVolume: 'm³', liquidDensity: 'kg/m³', molarMass: 'kg/mol', airTemperature: '°C', pressure: 'Pa' },
  gives: 'm³',
  holds: {
    liquidVolume: [0, 1],
    liquidDensity: [600, 1700],
    molarMass: [0.03, 0.3],
    airTemperature: [-10, 50],
    pressure: [60000, 110000],
  },
  refuses: {
    liquidVolume: [0, 1e4],
    liquidDensity: [1, 5000],
    molarMass: [0.002, 1],
    airTemperature: [-100, 200],
    pressure: [10000, 200000],
  },
  source: 'ideal-gas',
  notes:
    'Trade tables use 387 ft³ a pound-mole at 70 °F and 8.345 lb a gallon of water, together 0.05 % above the gas law. Vapours of solvents are 2 to 6 times as heavy as air and lie on the floor: the room average hides the layer in a pit.',
  shows: 'gas-volume',
  inputShows: { liquidVolume: 'volume', liquidDensity: 'density' },
  compute: ({ liquidVolume, liquidDensity, molarMass, airTemperature, pressure }) =>
    gasVolume(liquidVolume, liquidDensity, molarMass, airTemperature, pressure),
});
