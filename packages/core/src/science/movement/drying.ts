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

/** Length that the square of the thickness is measured in, m, and the days its drying is slowed by at that length. */
const REFERENCE_LENGTH = 0.05;
const DAYS_AT_REFERENCE = 350;

/**
 * Share of all its drying shrinkage that concrete has behind it after a time of drying.
 *
 * `volumeToSurface` is the volume over the surface that dries: the thickness of a slab that dries to its top alone. A
 * film on the slab slows what is left; that is not counted.
 */
export const dryingShrinkageShare = formula({
  id: 'movement/drying-shrinkage-share',
  says: 'Share of its drying shrinkage that concrete has behind it',
  equation: 'share = √(days / (350 (volumeToSurface / 50 mm)² + days))',
  takes: { dryingTime: 's', volumeToSurface: 'm' },
  gives: '1',
  holds: { dryingTime: [0, 100 * 365.25 * DAY], volumeToSurface: [0.05, 0.3] },
  refuses: { dryingTime: [0, 1e11], volumeToSurface: [1e-4, 10] },
  source: 'shrinkage-guide-209-2r',
  locator: 'appendix A, equation A-68 and its table',
  notes: 'The table ends after a year of drying; later years are the law alone.',
  shows: 'share',
  inputShows: { dryingTime: 'duration', volumeToSurface: 'small-length' },
  compute: ({ dryingTime, volumeToSurface }) => {
    const days = dryingTime / DAY;
    return days === 0 ? 0 : Math.sqrt(days / (DAYS_AT_REFERENCE * (volumeToSurface / REFERENCE_LENGTH) ** 2 + days));
  },
});
