import { formula } from '../../kernel/formula.ts';

/** A need this close above a whole number of packs is that number: 0.1 x 3 / 0.3 is one pack, not two. */
const GUARD = 1e-9;

/** Whole packs that cover a need. */
export const wholePacks = formula({
  id: 'price/whole-packs',
  says: 'Whole packs that cover a need',
  equation: 'packs = ceil(need / pack - 1e-9)',
  takes: { need: '*', pack: '*' },
  gives: '1',
  holds: {},
  refuses: { need: [0, 1e12], pack: [1e-12, 1e12] },
  source: 'money-in-minor-units',
  locator: 'whole packs',
  notes:
    'One size of pack. Several sizes together are a choice of their own: the cheapest cover is not the greedy one.',
  shows: 'count',
  noOutsideRow: 'Rounding up; exact by definition (CALC).',
  compute: ({ need, pack }) => Math.max(0, Math.ceil(need / pack - GUARD)),
});
