import type { SlabSetup } from './slab-day.ts';

/**
 * What readings on the slab can teach, each with the spread it has before any reading.
 *
 * Film coefficient and conductivity are fitted as logarithms (they cannot be negative, and their published spreads are
 * factors); gain and ground as kelvins.
 */
export type ParameterName = 'film' | 'conductivity' | 'share' | 'gain' | 'absorptance' | 'ground';

/** Standard deviation before any reading. Film and absorptance: ln; share: plain; gain and ground: K. */
export const PRIOR_DEVIATION: Readonly<Record<ParameterName, number>> = {
  film: 0.35,
  // 0.3 W/(m K) on 1.5.
  conductivity: 0.2,
  share: 0.2,
  gain: 1.5,
  absorptance: 0.15,
  ground: 2,
};

export const parametersOf = (setup: SlabSetup): readonly ParameterName[] => {
  switch (setup.exposure.kind) {
    case 'garage':
      return ['film', 'conductivity', 'share', 'gain', 'ground'];
    case 'room':
      return ['film', 'conductivity', 'gain', 'ground'];
    case 'patio':
      return ['film', 'conductivity', 'absorptance', 'ground'];
  }
};

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** The setup with each parameter moved from its prior by the given amount. */
export const withParameters = (
  setup: SlabSetup,
  names: readonly ParameterName[],
  values: ArrayLike<number>,
): SlabSetup => {
  const move = (name: ParameterName): number => {
    const at = names.indexOf(name);
    return at < 0 ? 0 : (values[at] as number);
  };
  const [first, ...rest] = setup.layers;
  if (first === undefined) return setup;
  const layers = [{ ...first, conductivity: first.conductivity * Math.exp(move('conductivity')) }, ...rest];
  const groundShift = setup.groundShift + move('ground');
  const { exposure } = setup;
  const filmScale = exposure.filmScale * Math.exp(move('film'));
  switch (exposure.kind) {
    case 'garage': {
      const shareShut = clamp(exposure.shareShut + move('share'), 0, 1.2);
      return {
        layers,
        ground: setup.ground,
        groundShift,
        exposure: { ...exposure, filmScale, shareShut, gain: exposure.gain + move('gain') },
      };
    }
    case 'room':
      return {
        layers,
        ground: setup.ground,
        groundShift,
        exposure: { ...exposure, filmScale, airTemperature: exposure.airTemperature + move('gain') },
      };
    case 'patio': {
      const absorptance = clamp(exposure.absorptance * Math.exp(move('absorptance')), 0, 1);
      return { layers, ground: setup.ground, groundShift, exposure: { ...exposure, filmScale, absorptance } };
    }
  }
};
