import { formula } from '../../kernel/formula.ts';

/** Coating that disappears in the voids of a rough slab, m³; area in m², mean depth below the peaks in m. */
export const profileFill = formula({
  id: 'film/profile-fill',
  says: 'Coating that fills the profile of the slab before a film begins',
  equation: 'area × meanVoidDepth',
  takes: { area: 'm²', meanVoidDepth: 'm' },
  gives: 'm³',
  holds: { area: [0, 1e5], meanVoidDepth: [0, 0.003] },
  refuses: { area: [0, 1e8], meanVoidDepth: [0, 0.1] },
  source: 'profile-fill-geometry',
  notes:
    'Takes the mean depth, about half of peak to valley. No published mean depth exists for a profile class: measure it (replica, sand patch), or show the guess as an assumption. One reading is not a profile: single traces miss by up to half.',
  shows: 'volume',
  inputShows: { area: 'area', meanVoidDepth: 'film' },
  compute: ({ area, meanVoidDepth }) => area * meanVoidDepth,
});

/** Coating that fills the texture of a broadcast layer, m³; area in m², mean texture depth in m. */
export const textureFill = formula({
  id: 'film/texture-fill',
  says: 'Coating that fills the texture of sand or flake before a film begins',
  equation: 'area × textureDepth',
  takes: { area: 'm²', textureDepth: 'm' },
  gives: 'm³',
  holds: { area: [0, 1e5], textureDepth: [0, 0.003] },
  refuses: { area: [0, 1e8], textureDepth: [0, 0.1] },
  source: 'profile-fill-geometry',
  notes: 'Forgotten, it empties the pail mid-floor: a full broadcast takes 0.06 to 0.25 mm more than the film.',
  noOutsideRow: 'A product of two measures; no published worked example was found.',
  shows: 'volume',
  inputShows: { area: 'area', textureDepth: 'film' },
  compute: ({ area, textureDepth }) => area * textureDepth,
});

/** Mean texture depth by the volumetric patch, m: a volume in m³ spread to a circle of a diameter in m. */
export const meanTextureDepth = formula({
  id: 'film/mean-texture-depth',
  says: 'Mean depth of a texture, from a measured volume spread flush into a circle',
  equation: '4 volume / (π diameter²)',
  takes: { volume: 'm³', diameter: 'm' },
  gives: 'm',
  holds: { volume: [5e-6, 1e-4], diameter: [0.05, 0.5] },
  refuses: { volume: [0, 0.01], diameter: [0.001, 5] },
  source: 'astm-e965',
  notes: 'One agency keeps the method to depths above 0.30 mm: it cannot tell the finest profiles apart.',
  shows: 'film',
  inputShows: { volume: 'volume', diameter: 'small-length' },
  compute: ({ volume, diameter }) => (4 * volume) / (Math.PI * diameter ** 2),
});
