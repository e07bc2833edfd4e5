import { formula } from '../../kernel/formula.ts';

/**
 * Slip potential by the pendulum: 1 low, 2 moderate, 3 high.
 *
 * High up to 24, moderate from 25 to 35, low from 36. A reading between two whole values belongs to the worse class.
 * One public page has the scale upside down. Pendulum values and friction coefficients do not convert.
 */
export const slipPotential = formula({
  id: 'surface/slip-potential',
  says: 'Slip potential by the pendulum: 1 low, 2 moderate, 3 high',
  equation: '1 if pendulumValue ≥ 36, 2 if ≥ 25, else 3',
  takes: { pendulumValue: '1' },
  gives: '1',
  holds: { pendulumValue: [0, 100] },
  refuses: { pendulumValue: [0, 150] },
  source: 'pendulum-classes',
  notes: 'Name the slider and whether the floor was wet; without them two readings are not comparable.',
  compute: ({ pendulumValue }) => (pendulumValue >= 36 ? 1 : pendulumValue >= 25 ? 2 : 3),
});
