import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const takes = { strengths: 'Pa[]', deviations: 'Pa[]' } as const;
const holds = { strengths: [1e5, 1e8], deviations: [0, 1e7] } as const;
const refuses = { strengths: [0, 1e10], deviations: [0, 1e10] } as const;
const together = [['strengths', 'deviations']] as const;
const inputShows = { strengths: 'stress', deviations: 'stress' } as const;

/** Index of the lowest mean; the first of equals, so that the concrete goes before a coating. */
function lowest(strengths: readonly number[]): number {
  if (strengths.length === 0) throw new Refuse('no-links', 'strengths');
  let found = 0;
  strengths.forEach((strength, i) => {
    if (strength < (strengths[found] as number)) found = i;
  });
  return found;
}

/** Lowest mean strength of a chain of layers and interfaces, Pa; the concrete first, deviations in Pa. */
export const weakestLink = formula({
  id: 'bond/weakest-link',
  says: 'Mean strength of the weakest of the layers and interfaces that are pulled together',
  equation: 'min(strengths)',
  takes,
  gives: 'Pa',
  holds,
  refuses,
  together,
  source: 'astm-c1583',
  locator: '5.4: the mode of failure is part of the result',
  notes:
    'Where means lie within their deviations any of them may part first: read it beside the chance that the concrete does. A strength known only from a failure elsewhere is a lower bound and makes the whole a lower bound.',
  noOutsideRow: 'A minimum; the chance beside it is checked by its closed form.',
  shows: 'stress',
  inputShows,
  compute: ({ strengths }) => strengths[lowest(strengths)] as number,
});

/** Which link of the chain is the weakest: 0 for the concrete, then in the order given. */
export const weakestLinkIndex = formula({
  id: 'bond/weakest-link-index',
  says: 'Which of the layers and interfaces has the lowest mean strength, counted from 0',
  equation: 'index of min(strengths)',
  takes,
  gives: '1',
  holds,
  refuses,
  together,
  source: 'astm-c1583',
  locator: '5.4: the mode of failure is part of the result',
  notes: 'Of equal means the first, so that the concrete goes before what lies on it.',
  noOutsideRow: 'A minimum.',
  shows: 'count',
  inputShows,
  compute: ({ strengths }) => lowest(strengths),
});
