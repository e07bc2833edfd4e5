import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { needWhole } from './moments.ts';
import { noncentralTQuantile } from './noncentral-t.ts';

const takes = { count: '1', coverage: '1', confidence: '1' } as const;
const holds = { count: [3, 200], coverage: [0.75, 0.99], confidence: [0.75, 0.99] } as const;
const refuses = { count: [2, 5000], coverage: [0.5, 0.9999], confidence: [0.01, 0.9999] } as const;
const inputShows = { count: 'count', coverage: 'share', confidence: 'share' } as const;

/** Exact one-sided tolerance factor for `count` values of a normal population. */
export const toleranceFactorFor = (count: number, coverage: number, confidence: number): number =>
  noncentralTQuantile(confidence, count - 1, normalQuantile(coverage, 0, 1) * Math.sqrt(count)) / Math.sqrt(count);

/**
 * Exact one-sided tolerance factor k: mean - k x deviation is below which, with the stated confidence, no more than
 * 1 - coverage of the population lies. From the noncentral t distribution.
 */
export const toleranceFactor = formula({
  id: 'statistics/tolerance-factor',
  says: 'Exact one-sided tolerance factor',
  equation: 'k = noncentral t(confidence; n - 1, z(coverage) sqrt(n)) / sqrt(n)',
  takes,
  gives: '1',
  holds,
  refuses,
  source: 'iso-16269-6',
  locator: 'one-sided interval, both parameters unknown',
  notes: 'Normal population. For three to six pull-offs the factor is large: the bound says little, and says so.',
  inputShows,
  noOutsideRow: 'Published factors of this exact form are from memory (MEM); the approximate rival has a read row.',
  compute: ({ count, coverage, confidence }) => {
    needWhole(count, 'count');
    return toleranceFactorFor(count, coverage, confidence);
  },
});

function approximate({ count, coverage, confidence }: Values<typeof takes>): number {
  needWhole(count, 'count');
  const [zp, zc] = [normalQuantile(coverage, 0, 1), normalQuantile(confidence, 0, 1)];
  const a = 1 - zc ** 2 / (2 * (count - 1));
  const b = zp ** 2 - zc ** 2 / count;
  const inside = zp ** 2 - a * b;
  // Few values with a high confidence: the approximation has no real answer there.
  if (a <= 0 || inside < 0) throw new Refuse('approximation-needs-more-values', 'count');
  return (zp + Math.sqrt(inside)) / a;
}

/** Natrella's approximation of the factor, as many tables and handbooks print it. A rival to compare with. */
export const toleranceFactorNatrella = formula({
  id: 'statistics/tolerance-factor-natrella',
  says: 'One-sided tolerance factor by the handbook approximation',
  equation: 'k = (z_p + sqrt(z_p² - a b)) / a, a = 1 - z_c²/(2(n-1)), b = z_p² - z_c²/n',
  takes,
  gives: '1',
  holds: { ...holds, count: [10, 5000] },
  refuses,
  source: 'nist-handbook-tolerance',
  locator: '7.2.6.3, one-sided',
  notes: 'Off in the fourth digit at n = 43 and useless below about n = 10; the exact factor decides.',
  inputShows,
  compute: approximate,
});
