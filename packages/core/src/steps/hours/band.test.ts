import { expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import workshopCatalogue from '../../../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../../../jobs/workshop/job.json' with { type: 'json' };
import workshopPrices from '../../../../../jobs/workshop/price-book.json' with { type: 'json' };
import { Z90 } from '../../kernel/band.ts';
import type { Known } from '../../kernel/entry.ts';
import { costing } from '../testing/costed.ts';

const costed = costing({
  garage: { job: garageJob, catalogue: garageCatalogue, priceBook: garagePrices },
  workshop: { job: workshopJob, catalogue: workshopCatalogue, priceBook: workshopPrices },
});

/** Standard normal numbers from a seed: a small generator (mulberry32) and the polar-free Box-Muller pair. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/**
 * Person-time drawn instead of propagated: each rate lognormal between the ends of its own band, half of its variance
 * from the crew, times recomputed from the rates. Quantities stay as they are.
 */
function drawn(which: 'garage' | 'workshop', draws: number): readonly [number, number] {
  const { hours, entries } = costed(which);
  const gauss = normals(20_261_125);
  const sums: number[] = [];
  const baseOf = (rate: Known): Known => {
    const from = rate.kind === 'figure' ? rate.inputs.rate : undefined;
    const found = typeof from === 'string' ? entries.get(from) : undefined;
    return found?.kind === 'given' ? found : rate;
  };
  for (let draw = 0; draw < draws; draw++) {
    const crew = gauss();
    const own = new Map<string, number>();
    let sum = 0;
    for (const { rate, time } of hours.tasks) {
      const base = baseOf(rate);
      const [low, high] = base.band ?? [base.value, base.value];
      const spread = Math.log(high / low) / (2 * Z90);
      const mine = own.get(base.id) ?? gauss();
      own.set(base.id, mine);
      // Slower crew: lower rates, longer whole times.
      const z = Math.SQRT1_2 * (crew + mine) * spread;
      sum += time.value * Math.exp(z + Math.log(Math.sqrt(low * high) / base.value) * (base.unit === 's' ? 1 : -1));
    }
    sums.push(sum);
  }
  sums.sort((a, b) => a - b);
  return [sums[Math.floor(draws * 0.1)] as number, sums[Math.floor(draws * 0.9)] as number];
}

/** Own arithmetic against own arithmetic: two ways to one band, allowed the 20 % within which a band counts as even. */
test.each(['garage', 'workshop'] as const)('%s: band by first order and by seeded draws agree', (which) => {
  const [low, high] = costed(which).hours.personTime?.band ?? [0, 0];
  const [drawnLow, drawnHigh] = drawn(which, 4000);
  expect(Math.abs(drawnHigh - drawnLow - (high - low))).toBeLessThan(0.2 * (high - low));
  expect(Math.abs(drawnLow - low)).toBeLessThan(0.2 * low);
  expect(Math.abs(drawnHigh - high)).toBeLessThan(0.2 * high);
});
