import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/**
 * Current a motor draws, A, from the power at its shaft.
 *
 * Voltage between lines for three phases. Starting draws several times as much; voltage drop and generators are for
 * a licensed electrician.
 */
export const currentDrawn = formula({
  id: 'power/current',
  says: 'Current a machine draws',
  equation: 'current = activePower / (efficiency voltage powerFactor), three phases: a further / sqrt(3)',
  takes: { activePower: 'W', voltage: 'V', powerFactor: '1', efficiency: '1', phases: '1' },
  gives: 'A',
  holds: {
    activePower: [100, 50_000],
    voltage: [100, 700],
    powerFactor: [0.5, 1],
    efficiency: [0.5, 1],
    phases: [1, 3],
  },
  refuses: {
    activePower: [0, 1e7],
    voltage: [1, 50_000],
    powerFactor: [0.05, 1],
    efficiency: [0.05, 1],
    phases: [1, 3],
  },
  source: 'alternating-current',
  shows: 'current',
  inputShows: { activePower: 'power', powerFactor: 'share', efficiency: 'share', phases: 'count' },
  noOutsideRow: 'Definition of active power; worked by hand (CALC).',
  compute: ({ activePower, voltage, powerFactor, efficiency, phases }) => {
    if (phases !== 1 && phases !== 3) throw new Refuse('phases-one-or-three', 'phases');
    return activePower / (efficiency * voltage * powerFactor * Math.sqrt(phases));
  },
});

/** Smallest breaker for a load that runs three hours or more, A: 125 % of its current. A rule of place and edition. */
export const continuousBreaker = formula({
  id: 'power/continuous-breaker',
  says: 'Least breaker rating for a load that runs three hours or more',
  equation: 'rating = 1.25 sum(currents)',
  takes: { currents: 'A[]' },
  gives: 'A',
  holds: { currents: [0, 200] },
  refuses: { currents: [0, 10_000] },
  source: 'nec-continuous-load',
  notes: 'From memory of one national code; the code of the place decides.',
  shows: 'current',
  inputShows: { currents: 'current' },
  noOutsideRow: 'The rule is from memory (MEM); no worked example was read.',
  compute: ({ currents }) => 1.25 * currents.reduce((sum, one) => sum + one, 0),
});
