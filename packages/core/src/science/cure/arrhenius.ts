import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { GAS_CONSTANT, ZERO_CELSIUS } from '../constants.ts';

/**
 * How much faster a reaction runs at a temperature than at a reference, by Arrhenius.
 *
 * @param energy J/mol
 * @param temperature °C
 * @param reference °C
 */
export const rateFactorAt = (energy: number, temperature: number, reference: number): number =>
  Math.exp((-energy / GAS_CONSTANT) * (1 / (temperature + ZERO_CELSIUS) - 1 / (reference + ZERO_CELSIUS)));

export const rateFactor = formula({
  id: 'cure/rate-factor',
  says: 'How many times faster a resin cures at one temperature than at another',
  equation: 'exp(−(activationEnergy / R) · (1 / temperature − 1 / reference))',
  takes: { activationEnergy: 'J/mol', temperature: '°C', reference: '°C' },
  gives: '1',
  holds: { activationEnergy: [10_000, 80_000], temperature: [0, 45], reference: [0, 45] },
  refuses: { activationEnergy: [0, 200_000], temperature: [-60, 150], reference: [-60, 150] },
  source: 'astm-c1074',
  notes:
    'The maturity method of concrete, used for resins with the energy fitted to the product’s own sheet. It stops holding below the sheet’s least temperature, where the film turns to glass before it is cured.',
  inputShows: { activationEnergy: 'energy-per-mole' },
  compute: ({ activationEnergy, temperature, reference }) => rateFactorAt(activationEnergy, temperature, reference),
});

export const activationEnergy = formula({
  id: 'cure/activation-energy',
  says: 'Activation energy that makes a cure take one time at one temperature and another at a second',
  equation: 'R · ln(firstTime / secondTime) / (1 / firstTemperature − 1 / secondTemperature)',
  takes: { firstTemperature: '°C', firstTime: 's', secondTemperature: '°C', secondTime: 's' },
  gives: 'J/mol',
  holds: { firstTemperature: [0, 45], secondTemperature: [0, 45], firstTime: [60, 3e6], secondTime: [60, 3e6] },
  refuses: { firstTemperature: [-60, 150], secondTemperature: [-60, 150], firstTime: [1, 1e9], secondTime: [1, 1e9] },
  source: 'astm-c1074',
  notes: 'Two temperatures closer than 5 K give an energy that the rounding of the times decides.',
  shows: 'energy-per-mole',
  compute: ({ firstTemperature, firstTime, secondTemperature, secondTime }) => {
    const apart = 1 / (firstTemperature + ZERO_CELSIUS) - 1 / (secondTemperature + ZERO_CELSIUS);
    if (apart === 0) throw new Refuse('temperatures-equal', 'secondTemperature');
    return (GAS_CONSTANT * Math.log(firstTime / secondTime)) / apart;
  },
});

/**
 * Age at a reference temperature that gives the same cure as a temperature history, s: Σ rate · Δt.
 *
 * @param temperatures °C, each lasting `spacing`
 * @param spacing s
 */
export const equivalentAge = (
  energy: number,
  reference: number,
  temperatures: ArrayLike<number>,
  spacing: number,
): number => {
  let age = 0;
  for (let i = 0; i < temperatures.length; i++)
    age += rateFactorAt(energy, temperatures[i] as number, reference) * spacing;
  return age;
};
