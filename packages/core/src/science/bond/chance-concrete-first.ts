import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/** Abscissae and weights of the ten-point Gauss-Legendre rule on −1…1, positive half (Abramowitz and Stegun 25.4.30). */
const GAUSS = [
  [0.14887433898163122, 0.29552422471475287],
  [0.4333953941292472, 0.26926671930999635],
  [0.6794095682990244, 0.21908636251598204],
  [0.8650633666889845, 0.1494513491505806],
  [0.9739065285171717, 0.06667134430868814],
] as const;

interface Link {
  readonly mean: number;
  readonly deviation: number;
}

/** Chance that a link is stronger than a stress; a link without spread is either stronger or not. */
function survival({ mean, deviation }: Link, stress: number): number {
  if (deviation === 0) return mean > stress ? 1 : 0;
  return 1 - normalCdf(stress, mean, deviation);
}

/** Places where the integrand bends, so that no panel straddles the steep part of a link with little spread. */
function panels(concrete: Link, others: readonly Link[]): readonly number[] {
  const low = concrete.mean - 9 * concrete.deviation;
  const high = concrete.mean + 9 * concrete.deviation;
  const edges = [low, high];
  for (const link of [concrete, ...others]) for (let k = -8; k <= 8; k++) edges.push(link.mean + k * link.deviation);
  return [...new Set(edges.filter((edge) => edge >= low && edge <= high))].sort((a, b) => a - b);
}

/** ∫ density of the concrete × chance that every other link survives its stress. */
function integral(concrete: Link, others: readonly Link[]): number {
  const edges = panels(concrete, others);
  const at = (stress: number): number => {
    const z = (stress - concrete.mean) / concrete.deviation;
    let product = Math.exp((-z * z) / 2);
    for (const link of others) product *= survival(link, stress);
    return product;
  };
  let sum = 0;
  for (let i = 1; i < edges.length; i++) {
    const [from, to] = [edges[i - 1] as number, edges[i] as number];
    const [middle, half] = [(from + to) / 2, (to - from) / 2];
    for (const [x, weight] of GAUSS) sum += half * weight * (at(middle + half * x) + at(middle - half * x));
  }
  return sum / (concrete.deviation * Math.sqrt(2 * Math.PI));
}

/**
 * Chance that the concrete parts first when a chain of layers and interfaces is pulled (fraction).
 *
 * Means and standard deviations in Pa, the concrete first; links independent and normal. Exact for two links;
 * integrated to 1e-9 for more. Refused where two links without spread are equal: neither is first.
 */
export const chanceConcreteFirst = formula({
  id: 'bond/chance-concrete-first',
  says: 'Chance that the concrete parts before any layer or interface on it',
  equation: 'Φ((m₂ − m₁) / √(s₁² + s₂²)) for two links; ∫ φ₁(x) Π (1 − Φⱼ(x)) dx for more',
  takes: { strengths: 'Pa[]', deviations: 'Pa[]' },
  gives: '1',
  holds: { strengths: [1e5, 1e8], deviations: [0, 1e7] },
  refuses: { strengths: [0, 1e10], deviations: [0, 1e10] },
  together: [['strengths', 'deviations']],
  source: 'stress-strength-normal',
  notes:
    'Links are taken as independent; preparation faults that weaken concrete and bond together make it optimistic. Failure in the concrete is what a good coating shows, so near 1 is good news of the coating and none of the slab.',
  shows: 'share',
  inputShows: { strengths: 'stress', deviations: 'stress' },
  compute: ({ strengths, deviations }) => {
    const links = strengths.map((mean, i): Link => ({ mean, deviation: deviations[i] as number }));
    const [concrete, ...others] = links;
    if (!concrete || others.length === 0) throw new Refuse('fewer-than-two-links', 'strengths');
    if (concrete.deviation === 0) {
      if (others.some((link) => link.deviation === 0 && link.mean === concrete.mean))
        throw new Refuse('equal-links-without-spread', 'deviations');
      return others.reduce((chance, link) => chance * survival(link, concrete.mean), 1);
    }
    if (others.length === 1) {
      const [other] = others as [Link];
      return normalCdf((other.mean - concrete.mean) / Math.hypot(concrete.deviation, other.deviation), 0, 1);
    }
    return Math.min(1, Math.max(0, integral(concrete, others)));
  },
});
