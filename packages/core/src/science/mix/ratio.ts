import { formula } from '../../kernel/formula.ts';

const DENSITY_HOLDS = [600, 3000] as const;
const DENSITY_REFUSES = [1, 25000] as const;

/** Volume of part B per volume of part A, from a ratio by mass; masses in kg, densities in kg/m³. */
export const volumeRatioFromMass = formula({
  id: 'mix/volume-ratio-from-mass',
  says: 'Volume of part B per volume of part A, from a ratio by mass',
  equation: '(massB / densityB) / (massA / densityA)',
  takes: { massA: 'kg', massB: 'kg', densityA: 'kg/m³', densityB: 'kg/m³' },
  gives: '1',
  holds: { massA: [0.001, 1e4], massB: [0, 1e4], densityA: DENSITY_HOLDS, densityB: DENSITY_HOLDS },
  refuses: { massA: [1e-9, 1e9], massB: [0, 1e9], densityA: DENSITY_REFUSES, densityB: DENSITY_REFUSES },
  source: 'mix-ratio-definition',
  notes:
    'A ratio printed without "by volume" or "by mass" is not a ratio. Two parts measured by the wrong one stay soft.',
  shows: 'plain',
  compute: ({ massA, massB, densityA, densityB }) => massB / densityB / (massA / densityA),
});

/** Mass of part B per mass of part A, from a ratio by volume; volumes in m³, densities in kg/m³. */
export const massRatioFromVolume = formula({
  id: 'mix/mass-ratio-from-volume',
  says: 'Mass of part B per mass of part A, from a ratio by volume',
  equation: '(volumeB × densityB) / (volumeA × densityA)',
  takes: { volumeA: 'm³', volumeB: 'm³', densityA: 'kg/m³', densityB: 'kg/m³' },
  gives: '1',
  holds: { volumeA: [1e-6, 10], volumeB: [0, 10], densityA: DENSITY_HOLDS, densityB: DENSITY_HOLDS },
  refuses: { volumeA: [1e-12, 1e6], volumeB: [0, 1e6], densityA: DENSITY_REFUSES, densityB: DENSITY_REFUSES },
  source: 'mix-ratio-definition',
  notes: 'What a scale must show: 2 to 1 by volume of 1.15 and 1.00 kg/L is 100 to 43.5 by mass, not 100 to 50.',
  shows: 'plain',
  compute: ({ volumeA, volumeB, densityA, densityB }) => (volumeB * densityB) / (volumeA * densityA),
});

/** Volume solids of a mixture (fraction), from the volumes in m³ and the solids of its parts. */
export const mixVolumeSolids = formula({
  id: 'mix/volume-solids',
  says: 'Volume solids of a mixture',
  equation: 'Σ volumes × volumeSolids / Σ volumes',
  takes: { volumes: 'm³[]', volumeSolids: '1[]' },
  gives: '1',
  holds: { volumes: [1e-6, 10], volumeSolids: [0, 1] },
  refuses: { volumes: [0, 1e6], volumeSolids: [0, 1] },
  together: [['volumes', 'volumeSolids']],
  source: 'mix-ratio-definition',
  notes: 'Volumes are taken as additive; a sheet that states the solids of the mixture goes before.',
  shows: 'share',
  inputShows: { volumes: 'volume', volumeSolids: 'share' },
  compute: ({ volumes, volumeSolids }) => {
    let [solids, total] = [0, 0];
    volumes.forEach((volume, i) => {
      total += volume;
      solids += volume * (volumeSolids[i] as number);
    });
    return solids / total;
  },
});
