import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/** Areas this close to a whole number of portions are whole: 3 × 92.903 m² is not four portions. */
const WHOLE = 1e-9;

/**
 * How many tests an area needs: some for the first area, some for each further one, a part counting up.
 *
 * Areas in m². The basis is an input because methods differ (3 for 1000 ft² or 100 m² and 1 per further; 2 per
 * 500 ft²), and 1000 ft² is not 100 m².
 */
export const testsNeeded = formula({
  id: 'moisture/tests-needed',
  says: 'How many tests an area needs',
  equation: 'firstTests + furtherTests × ceil((area − firstArea) / furtherArea); firstTests where area ≤ firstArea',
  takes: { area: 'm²', firstArea: 'm²', firstTests: '1', furtherArea: 'm²', furtherTests: '1' },
  gives: '1',
  holds: {
    area: [0, 1e5],
    firstArea: [10, 1000],
    firstTests: [1, 10],
    furtherArea: [10, 1000],
    furtherTests: [0, 10],
  },
  refuses: {
    area: [0, 1e8],
    firstArea: [1e-3, 1e6],
    firstTests: [0, 1000],
    furtherArea: [1e-3, 1e6],
    furtherTests: [0, 1000],
  },
  source: 'astm-f2170',
  locator: '3 for the first 1000 ft² (100 m²), 1 for each further 1000 ft²',
  notes:
    'That a part counts up is our reading of the rule. 600 m² need 9 tests by 1000 ft² and 8 by 100 m². Counts say nothing of where: the wettest places must be among them.',
  shows: 'count',
  inputShows: {
    area: 'area',
    firstArea: 'area',
    firstTests: 'count',
    furtherArea: 'area',
    furtherTests: 'count',
  },
  compute: ({ area, firstArea, firstTests, furtherArea, furtherTests }) => {
    if (!Number.isInteger(firstTests)) throw new Refuse('tests-not-whole', 'firstTests', [0, 1000]);
    if (!Number.isInteger(furtherTests)) throw new Refuse('tests-not-whole', 'furtherTests', [0, 1000]);
    const further = Math.max(0, Math.ceil((area - firstArea) / furtherArea - WHOLE));
    return firstTests + furtherTests * further;
  },
});

/** Depth of a humidity probe in a slab, m: 40 % of the thickness drying on one side, 20 % on both. */
export const probeDepth = formula({
  id: 'moisture/probe-depth',
  says: 'Depth at which a humidity probe sits in a slab',
  equation: '0.4 × slabThickness where dryingSides = 1, 0.2 × slabThickness where dryingSides = 2',
  takes: { slabThickness: 'm', dryingSides: '1' },
  gives: 'm',
  holds: { slabThickness: [0.05, 0.5], dryingSides: [1, 2] },
  refuses: { slabThickness: [0.001, 5], dryingSides: [1, 2] },
  source: 'astm-f2170',
  locator: '40 % of the thickness drying on one side, 20 % on two',
  notes: 'Where the slab will later stand at equilibrium under a coating; a shallower hole reads a drier slab.',
  shows: 'small-length',
  inputShows: { slabThickness: 'small-length', dryingSides: 'count' },
  compute: ({ slabThickness, dryingSides }) => {
    if (!Number.isInteger(dryingSides)) throw new Refuse('one-or-two-sides', 'dryingSides', [1, 2]);
    return slabThickness * (dryingSides === 1 ? 0.4 : 0.2);
  },
});
