import { formula } from '../../kernel/formula.ts';

/** Modulus of lightweight concrete, Pa: that of normal concrete of the same class times (density / 2200 kg/m³)². */
export const lightweightModulus = formula({
  id: 'movement/lightweight-modulus',
  says: 'Modulus of elasticity of lightweight concrete',
  equation: 'modulus = normalModulus (density / 2200)²',
  takes: { normalModulus: 'Pa', density: 'kg/m³' },
  gives: 'Pa',
  holds: { normalModulus: [20e9, 45e9], density: [800, 2200] },
  refuses: { normalModulus: [1e6, 1e12], density: [100, 5000] },
  source: 'concrete-fingertips-525',
  locator: 'lightweight concrete, class 25/30',
  shows: 'stress',
  inputShows: { normalModulus: 'stress', density: 'density' },
  compute: ({ normalModulus, density }) => normalModulus * (density / 2200) ** 2,
});
