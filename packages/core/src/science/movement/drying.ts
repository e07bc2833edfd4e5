import { formula } from '../../kernel/formula.ts';

const INCH = 0.0254;
const DAY = 86_400;
/** Days per inch of thickness: the rule's 28 and 30 after curing, the study's 140 days for 4 in. */
const DAYS_PER_INCH = [28, 30, 35] as const;

/**
 * How long a slab drying to one side may take, s: the rule of thumb's two ends and a study's average.
 *
 * The rule and the study already differ by a fifth at 4 in, so this is a range to be told, never a date and never a
 * moisture reading. A day of rewetting can cost a month.
 */
export const dryingTimes = formula({
  id: 'movement/drying-times',
  says: 'Rough drying time of a slab: both ends of the rule of thumb, then a study',
  equation: 'times = thickness (28, 30, 35 days per inch)',
  takes: { thickness: 'm' },
  gives: 's[]',
  holds: { thickness: [0.075, 0.2] },
  refuses: { thickness: [0, 2] },
  source: 'slab-drying-rule',
  notes: 'Assumed linear in thickness; thick slabs take longer than that.',
  shows: 'duration',
  inputShows: { thickness: 'small-length' },
  noOutsideRow: 'Its three rates are the read rule and study themselves; the row is own arithmetic (CALC).',
  compute: ({ thickness }) => DAYS_PER_INCH.map((days) => (thickness / INCH) * days * DAY),
});
