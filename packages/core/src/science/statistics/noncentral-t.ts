import gammaln from '@stdlib/math-base-special-gammaln';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

/** Steps to the narrowest feature; what the rule then leaves lies beyond the digits of a float. */
const STEPS = 2.5;
/** Even broad features need this: beyond π/4 beside the real line the density no longer dies away. */
const WIDEST = 0.1;
/** Natural logarithm of the weight below which a point adds nothing. */
const NOTHING = -45;

/** Points of w = sqrt(chi²/freedom) with the weight of the rule times the density there. */
interface Nodes {
  readonly w: readonly number[];
  readonly weight: readonly number[];
}

/**
 * Equal steps in v = ln w. In v the integrand is smooth and dies away on both sides, and there the plain sum over
 * equal steps converges exponentially: a hundred points do what thousands do in w, where the density of few degrees
 * of freedom starts with a corner.
 */
function nodesFor(freedom: number, noncentrality: number): Nodes {
  // Width of the bell in v is 1/sqrt(2 freedom), that of the step it is multiplied with 1/noncentrality.
  const step = Math.min(WIDEST, 1 / (STEPS * Math.sqrt(2 * freedom + noncentrality * noncentrality)));
  const half = freedom / 2;
  const constant = Math.LN2 + half * Math.log(half) - gammaln(half) + Math.log(step);
  const w: number[] = [];
  const weight: number[] = [];
  for (const [first, direction] of [
    [0, 1],
    [-1, -1],
  ] as const) {
    for (let i = first; ; i += direction) {
      const at = Math.exp(i * step);
      const logWeight = constant + freedom * i * step - half * at * at;
      if (logWeight < NOTHING) break;
      w.push(at);
      weight.push(Math.exp(logWeight));
    }
  }
  return { w, weight };
}

function chanceBelow(t: number, noncentrality: number, { w, weight }: Nodes): number {
  let sum = 0;
  for (const [i, at] of w.entries()) sum += (weight[i] as number) * normalCdf(t * at - noncentrality, 0, 1);
  return sum;
}

/**
 * Distribution function of the noncentral t distribution.
 *
 *   P(T <= t) = integral over w > 0 of Φ(t w - noncentrality) f(w),   w = sqrt(chi²/freedom)
 *
 * `freedom` is from 1 up; any `t` and `noncentrality`. Good to 1e-10 and better.
 */
export const noncentralTCdf = (t: number, freedom: number, noncentrality: number): number =>
  chanceBelow(t, noncentrality, nodesFor(freedom, noncentrality));

/**
 * Quantile of the noncentral t distribution, found between brackets by the Illinois rule.
 * @throws Error when the search does not settle: a mistake of ours, for the ranges of the callers are checked.
 */
export function noncentralTQuantile(chance: number, freedom: number, noncentrality: number): number {
  const nodes = nodesFor(freedom, noncentrality);
  const miss = (t: number): number => chanceBelow(t, noncentrality, nodes) - chance;
  let width = 1 + Math.abs(noncentrality);
  let [low, high] = [noncentrality - width, noncentrality + width];
  let [missLow, missHigh] = [miss(low), miss(high)];
  while (missLow > 0) {
    width *= 2;
    low = noncentrality - width;
    missLow = miss(low);
  }
  while (missHigh < 0) {
    width *= 2;
    high = noncentrality + width;
    missHigh = miss(high);
  }
  for (let round = 0; round < 200; round++) {
    const t = high - (missHigh * (high - low)) / (missHigh - missLow);
    const at = miss(t);
    if (Math.abs(at) < 1e-13 || high - low < 1e-12 * (1 + Math.abs(t))) return t;
    // The end that stays put has its weight halved, so that neither end is kept for ever.
    if (at > 0) {
      [high, missHigh] = [t, at];
      missLow /= 2;
    } else {
      [low, missLow] = [t, at];
      missHigh /= 2;
    }
  }
  throw new Error('noncentral t quantile did not settle');
}
