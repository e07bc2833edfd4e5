import { formula } from '../../kernel/formula.ts';

/**
 * Slip potential of a finished floor from its pendulum test value: 1 low, 2 moderate, 3 high.
 *
 * Values run from 0 to about 150. Gives a class and no verdict: what a floor must reach is agreed with the owner.
 */
export const slipPotential = formula({
  id: 'film/slip-potential',
  says: 'Slip potential class of a floor from its pendulum test value: 1 low, 2 moderate, 3 high',
  equation: '3 where pendulumTestValue < 25, 2 where < 36, else 1',
  takes: { pendulumTestValue: '1' },
  gives: '1',
  holds: { pendulumTestValue: [0, 150] },
  refuses: { pendulumTestValue: [0, 1000] },
  source: 'pendulum-slip-classes',
  notes:
    'Whole pendulum values are printed: high 0-24, moderate 25-35, low 36 and above. No conversion to other friction numbers exists. A page that prints the scale upside down is not followed.',
  shows: 'plain',
  compute: ({ pendulumTestValue }) => (pendulumTestValue < 25 ? 3 : pendulumTestValue < 36 ? 2 : 1),
});
