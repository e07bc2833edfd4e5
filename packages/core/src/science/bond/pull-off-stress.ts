import { formula } from '../../kernel/formula.ts';

/** Stress under a pulled dolly, Pa; force in N, dolly diameter in m. */
export const pullOffStress = formula({
  id: 'bond/pull-off-stress',
  says: 'Stress under a pulled dolly',
  equation: '4 force / (π dollyDiameter²)',
  takes: { force: 'N', dollyDiameter: 'm' },
  gives: 'Pa',
  holds: { force: [0, 30000], dollyDiameter: [0.02, 0.1] },
  refuses: { force: [0, 1e7], dollyDiameter: [0.005, 1] },
  source: 'pull-off-geometry',
  notes:
    'Compare the unrounded stress with a limit: 628 lbf on 2 in is 199.9 psi and below 200. A number without its failure mode says nothing: failure in the glue is a lower bound, and only results of one mode may be averaged. Dolly size, score and rate must match to compare.',
  shows: 'stress',
  inputShows: { force: 'force', dollyDiameter: 'small-length' },
  compute: ({ force, dollyDiameter }) => (4 * force) / (Math.PI * dollyDiameter ** 2),
});
