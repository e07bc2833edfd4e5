import gammaln from '@stdlib/math-base-special-gammaln';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

const PANELS = 1200;

/** Points of w = sqrt(chi²/freedom) with the weight of the rule times the density there. */
interface Nodes {
  readonly w: Float64Array;
  readonly weight: Float64Array;
}

/**
 * Simpson's rule over ten standard deviations of w on each side. What is integrated is a smooth bell times a smooth
 * step, on which the rule converges far faster than its order.
 */
function nodesFor(freedom: number): Nodes {
  const spread = 10 / Math.sqrt(2 * freedom);
  const from = Math.max(0, 1 - spread);
  const step = (1 + spread - from) / PANELS;
  const half = freedom / 2;
  const constant = Math.LN2 + half * Math.log(half) - gammaln(half) + Math.log(step / 3);
  const w = new Float64Array(PANELS + 1);
  const weight = new Float64Array(PANELS + 1);
  for (let i = 0; i <= PANELS; i++) {
    const at = from + i * step;
    w[i] = at;
    // At w = 0 the density of one degree of freedom is finite, of more it is nothing.
    const power = at > 0 ? (freedom - 1) * Math.log(at) : freedom === 1 ? 0 : Number.NEGATIVE_INFINITY;
    const rule = i === 0 || i === PANELS ? 1 : i % 2 === 1 ? 4 : 2;
    weight[i] = rule * Math.exp(constant + power - half * at * at);
  }
  return { w, weight };
}

function chanceBelow(t: number, noncentrality: number, { w, weight }: Nodes): number {
  let sum = 0;
  for (let i = 0; i <= PANELS; i++) {
    sum += (weight[i] as number) * normalCdf(t * (w[i] as number) - noncentrality, 0, 1);
  }
  return sum;
}

/**
 * Distribution function of the noncentral t distribution.
 *
 *   P(T <= t) = integral over w > 0 of Φ(t w - noncentrality) f(w),   w = sqrt(chi²/freedom)
 *
 * `freedom` is a whole number from 1 up. Good to 1e-6 for one degree of freedom, to 1e-8 and better from three up.
 */
export const noncentralTCdf = (t: number, freedom: number, noncentrality: number): number =>
  chanceBelow(t, noncentrality, nodesFor(freedom));

/**
 * Quantile of the noncentral t distribution, found between brackets by the Illinois rule.
 * @throws Error when the search does not settle: a mistake of ours, for the ranges of the callers are checked.
 */
export function noncentralTQuantile(chance: number, freedom: number, noncentrality: number): number {
  const nodes = nodesFor(freedom);
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
