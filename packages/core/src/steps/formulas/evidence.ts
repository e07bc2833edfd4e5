import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';
import type { Shows } from '../../kernel/shows.ts';

/**
 * How far the higher of two claims lies above the lower that was measured the same way, in their unit. One formula for
 * each way of showing a number, so that a wear of 25 mm³ is not shown as a share of a gallon.
 */
const difference = (shows: Shows) =>
  formula({
    id: `evidence/difference-of-${shows}`,
    says: 'How far the higher of two claims measured the same way lies above the lower',
    equation: 'higherClaim − lowerClaim',
    takes: { lowerClaim: '*', higherClaim: '*' },
    gives: '*',
    holds: {},
    source: 'own-arithmetic',
    notes: 'Taken only where method and every condition agree.',
    noOutsideRow: 'A difference of two numbers.',
    shows,
    inputShows: { lowerClaim: shows, higherClaim: shows },
    compute: ({ lowerClaim, higherClaim }) => higherClaim - lowerClaim,
  });

const DIFFERENCES = (['plain', 'stress', 'share', 'wear', 'impact', 'film', 'voc'] as const).map(difference);

/** The difference for claims shown in one way. Throws for a way that no property of the table uses. */
export function evidenceDifference(shows: Shows): (typeof DIFFERENCES)[number] {
  const found = DIFFERENCES.find((one) => one.shows === shows);
  if (!found) throw new Error(`no difference is declared for claims shown as ${shows}`);
  return found;
}

/**
 * Most that more adhesion or a stronger film could add to what a floor holds, Pa: from its weakest coating link up to
 * the concrete, nothing where the concrete is the weakest already.
 */
export const worthOfMoreAdhesion = formula({
  id: 'governs/worth-of-more-adhesion',
  says: 'Most that more adhesion or a stronger film could add to what the floor holds',
  equation: 'max(0, concreteStrength − min(linkStrengths))',
  takes: { concreteStrength: 'Pa', linkStrengths: 'Pa[]' },
  gives: 'Pa',
  holds: { concreteStrength: [1e5, 2e7], linkStrengths: [0, 2e8] },
  refuses: { concreteStrength: [0, 1e10], linkStrengths: [0, 1e10] },
  source: 'astm-c1583',
  locator: '5.4: the mode of failure is part of the result',
  notes: 'Past the strength of the concrete nothing is gained: the concrete breaks.',
  noOutsideRow: 'A minimum and a difference.',
  shows: 'stress',
  inputShows: { concreteStrength: 'stress', linkStrengths: 'stress' },
  compute: ({ concreteStrength, linkStrengths }) =>
    Math.max(0, concreteStrength - Math.min(concreteStrength, ...linkStrengths)),
});

/** Scatter of a link that was not pulled often enough to show its own, Pa. */
export const assumedScatter = formula({
  id: 'governs/assumed-scatter',
  says: 'Scatter of a link that was not pulled often enough to show its own',
  equation: 'scatterShare × mean',
  takes: { mean: 'Pa', scatterShare: '1' },
  gives: 'Pa',
  holds: { mean: [0, 2e8], scatterShare: [0.02, 0.5] },
  refuses: { mean: [0, 1e10], scatterShare: [0, 1] },
  source: 'bond-scatter-assumption',
  noOutsideRow: 'A product; the share is an assumption.',
  shows: 'stress',
  inputShows: { mean: 'stress', scatterShare: 'share' },
  compute: ({ mean, scatterShare }) => mean * scatterShare,
});

/** Small sums of the evidence and of what governs. */
export const evidenceFormulas: readonly AnyFormula[] = [...DIFFERENCES, worthOfMoreAdhesion, assumedScatter];
