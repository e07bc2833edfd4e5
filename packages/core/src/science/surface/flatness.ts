import { formula } from '../../kernel/formula.ts';

const INCH = 0.0254;
const memory = 'The constants of the flatness numbers are from memory (MEM); worked by hand (CALC).';
const refuses = { deviation: [1e-6, 1], mean: [-1, 1] } as const;
const inputShows = { deviation: 'small-length', mean: 'small-length' } as const;

/** Flatness number from the bends over 24 in: their standard deviation and mean. */
export const flatnessNumber = formula({
  id: 'surface/flatness-number',
  says: 'Flatness number from the bends of a floor over 24 in',
  equation: 'FF = 4.57 in / (3 deviation + |mean|)',
  takes: { deviation: 'm', mean: 'm' },
  gives: '1',
  holds: { deviation: [1e-4, 0.01], mean: [-0.01, 0.01] },
  refuses,
  source: 'astm-e1155',
  inputShows,
  noOutsideRow: memory,
  compute: ({ deviation, mean }) => (4.57 * INCH) / (3 * deviation + Math.abs(mean)),
});

/** Levelness number from the differences over 10 ft: their standard deviation and mean. */
export const levelnessNumber = formula({
  id: 'surface/levelness-number',
  says: 'Levelness number from the height differences of a floor over 10 ft',
  equation: 'FL = 12.5 in / (3 deviation + |mean|)',
  takes: { deviation: 'm', mean: 'm' },
  gives: '1',
  holds: { deviation: [1e-4, 0.05], mean: [-0.05, 0.05] },
  refuses,
  source: 'astm-e1155',
  inputShows,
  noOutsideRow: memory,
  compute: ({ deviation, mean }) => (12.5 * INCH) / (3 * deviation + Math.abs(mean)),
});

/** Volume worn off in an abrasion test, m³: what compares films of different density, on the same wheel, load and cycles. */
export const wornVolume = formula({
  id: 'surface/worn-volume',
  says: 'Volume worn off in an abrasion test',
  equation: 'volume = massLoss / density',
  takes: { massLoss: 'kg', density: 'kg/m³' },
  gives: 'm³',
  holds: { massLoss: [0, 0.003], density: [800, 3000] },
  refuses: { massLoss: [0, 10], density: [1, 30_000] },
  source: 'astm-d4060',
  notes: 'Comparable only on the same wheel, load and number of cycles.',
  shows: 'wear',
  inputShows: { massLoss: 'wear', density: 'density' },
  noOutsideRow: 'Definition of density; worked by hand (CALC).',
  compute: ({ massLoss, density }) => massLoss / density,
});
