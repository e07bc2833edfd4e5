import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CoverPack, compareCovers, leastCover, type Score, scoreOf } from './covering.ts';

/** Looks at every combination: the law the search must obey, in no common code but the order of preference. */
function bruteForce(packs: readonly CoverPack[], need: number): number[] | undefined {
  let best: number[] | undefined;
  let score: Score = [0, 0, 0];
  const counts = packs.map(() => 0);
  const covered = (): boolean =>
    (packs[0] as CoverPack).gives.every(
      (_, part) =>
        packs.reduce((sum, pack, p) => sum + (counts[p] as number) * (pack.gives[part] as number), 0) >= need,
    );
  const walk = (p: number): void => {
    if (p === packs.length) {
      if (!covered()) return;
      const now = scoreOf(packs, counts);
      if (!best || compareCovers(now, counts, score, best) < 0) {
        best = [...counts];
        score = now;
      }
      return;
    }
    const least = Math.min(...(packs[p] as CoverPack).gives.filter((give) => give > 0), need + 1);
    for (let count = 0; count <= Math.ceil(need / least); count++) {
      counts[p] = count;
      walk(p + 1);
    }
    counts[p] = 0;
  };
  walk(0);
  return best;
}

const sized = fc.record({ size: fc.integer({ min: 3, max: 40 }), cost: fc.integer({ min: 1, max: 100 }) });

test('one part: never dearer than any other choice, the same by every tie-break (Own, enumerated)', () => {
  fc.assert(
    fc.property(fc.array(sized, { minLength: 1, maxLength: 3 }), fc.integer({ min: 1, max: 60 }), (sizes, need) => {
      // In steps of a thousand, so that the half step of rounding an exchange may lose is nothing.
      const packs = sizes.map(({ size, cost }) => ({ gives: [size * 1000], cost, volume: size * 1000 }));
      const found = leastCover(packs, need * 1000);
      const expected = bruteForce(packs, need * 1000) as number[];
      expect(found?.proven).toBe(true);
      expect(scoreOf(packs, found?.counts ?? [])).toEqual(scoreOf(packs, expected));
    }),
  );
});

test('least volume: no combination leaves less', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 3, max: 40 }), { minLength: 1, maxLength: 3 }),
      fc.integer({ min: 1, max: 80 }),
      (sizes, need) => {
        const packs = sizes.map((size) => ({ gives: [size * 1000], cost: size * 1000, volume: size * 1000 }));
        const found = leastCover(packs, need * 1000);
        expect(scoreOf(packs, found?.counts ?? [])).toEqual(scoreOf(packs, bruteForce(packs, need * 1000) as number[]));
      },
    ),
  );
});

const two = fc.record({
  a: fc.integer({ min: 0, max: 12 }),
  b: fc.integer({ min: 0, max: 12 }),
  cost: fc.integer({ min: 1, max: 50 }),
});

test('A and B in unlike packs: each part covered, least cost', () => {
  fc.assert(
    fc.property(fc.array(two, { minLength: 1, maxLength: 3 }), fc.integer({ min: 1, max: 20 }), (raw, need) => {
      const packs = raw
        .filter(({ a, b }) => a + b > 0)
        .map(({ a, b, cost }) => ({ gives: [a * 1000, b * 1000], cost, volume: (a + b) * 1000 }));
      fc.pre(packs.length > 0);
      const expected = bruteForce(packs, need * 1000);
      const found = leastCover(packs, need * 1000);
      expect(found === undefined).toBe(expected === undefined);
      if (!expected || !found) return;
      expect(found.proven).toBe(true);
      expect(scoreOf(packs, found.counts)).toEqual(scoreOf(packs, expected));
    }),
  );
});
