import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareCovers, type Score, scoreOf } from './covering.ts';
import { type JointNeed, type JointPack, leastJointCover } from './joint-cover.ts';

/** Every way to count the packs, and every way to share the kits out among the mixes; no code of the search in it. */
function enumerated(packs: readonly JointPack[], needs: readonly JointNeed[]): number[] | undefined {
  const parts = (packs[0] as JointPack).gives.length;
  const shared = (count: number, places: number): number[][] =>
    places === 0
      ? [[]]
      : Array.from({ length: count + 1 }, (_, here) => here).flatMap((here) =>
          shared(count - here, places - 1).map((rest) => [here, ...rest]),
        );
  const makesAll = (kits: readonly (readonly number[])[], counts: readonly number[]): boolean => {
    for (let part = 0; part < parts; part++) {
      let wanted = 0;
      needs.forEach(({ mixed, shares }, m) => {
        const made = packs.reduce(
          (sum, pack, p) => sum + ((pack.gives[part] as number) > 0 ? (kits[p]?.[m] ?? 0) * (pack.makes?.[m] ?? 0) : 0),
          0,
        );
        wanted += (shares[part] as number) * Math.max(0, mixed - made);
      });
      const held = packs.reduce(
        (sum, pack, p) => sum + (pack.makes ? 0 : (counts[p] as number) * (pack.gives[part] as number)),
        0,
      );
      if (wanted > held + 1e-6) return false;
    }
    return true;
  };
  const reaches = (counts: readonly number[], p = 0, kits: readonly (readonly number[])[] = []): boolean => {
    const pack = packs[p];
    if (!pack) return makesAll(kits, counts);
    if (!pack.makes) return reaches(counts, p + 1, [...kits, []]);
    return shared(counts[p] as number, needs.length).some((split) => reaches(counts, p + 1, [...kits, split]));
  };
  let best: number[] | undefined;
  let score: Score = [0, 0, 0];
  const counts = packs.map(() => 0);
  const walk = (p: number): void => {
    if (p === packs.length) {
      if (!reaches(counts)) return;
      const now = scoreOf(packs, counts);
      if (!best || compareCovers(now, counts, score, best) < 0) {
        best = [...counts];
        score = now;
      }
      return;
    }
    for (let count = 0; count <= 5; count++) {
      counts[p] = count;
      walk(p + 1);
    }
    counts[p] = 0;
  };
  walk(0);
  return best;
}

/** Steps large enough that the rounding of a need is nothing beside one of them. */
const STEP = 1e6;
const price = fc.integer({ min: 1, max: 30 });
// Five of the smallest hold the most that is drawn, so the enumeration misses nothing.
const size = fc.integer({ min: 5, max: 12 });

/** Component a in both mixes, b in the standard one, c in the fast one; pails of each, and a kit of a and b. */
const drawn = fc.record({
  standard: fc.integer({ min: 0, max: 18 }),
  fast: fc.integer({ min: 0, max: 18 }),
  fastShare: fc.constantFrom(0.5, 0.75),
  a: fc.tuple(size, price),
  b: fc.tuple(size, price),
  c: fc.tuple(size, price),
  kit: fc.option(fc.tuple(size, price), { nil: undefined }),
});

test('two mixes with one part in common: never dearer than any other choice (Own, enumerated)', () => {
  fc.assert(
    fc.property(drawn, ({ standard, fast, fastShare, a, b, c, kit }) => {
      const pail = (part: number, [volume, cost]: readonly [number, number]): JointPack => ({
        gives: [0, 1, 2].map((one) => (one === part ? volume * STEP : 0)),
        cost,
        volume: volume * STEP,
      });
      const packs: readonly JointPack[] = [
        ...(kit
          ? [
              {
                gives: [kit[0] * STEP * 0.5, kit[0] * STEP * 0.5, 0],
                makes: [kit[0] * STEP, 0],
                cost: kit[1],
                volume: kit[0] * STEP,
              },
            ]
          : []),
        pail(0, a),
        pail(1, b),
        pail(2, c),
      ];
      const needs: readonly JointNeed[] = [
        { mixed: standard * STEP, shares: [0.5, 0.5, 0] },
        { mixed: fast * STEP, shares: [fastShare, 0, 1 - fastShare] },
      ];
      const found = leastJointCover(packs, needs);
      const expected = enumerated(packs, needs) as number[];
      expect(found?.proven).toBe(true);
      expect(scoreOf(packs, found?.counts ?? [])).toEqual(scoreOf(packs, expected));
    }),
    { numRuns: 60 },
  );
});

test('kits of two mixes, each opened for its own', () => {
  const packs: readonly JointPack[] = [
    { gives: [6, 4, 0], makes: [10, 0], cost: 10, volume: 10 },
    { gives: [6, 0, 2], makes: [0, 8], cost: 9, volume: 8 },
  ].map((pack) => ({ ...pack, gives: pack.gives.map((g) => g * STEP), makes: pack.makes.map((m) => m * STEP) }));
  const needs = [
    { mixed: 21 * STEP, shares: [0.6, 0.4, 0] },
    { mixed: 8 * STEP, shares: [0.75, 0, 0.25] },
  ];
  expect(leastJointCover(packs, needs)).toEqual({
    counts: [3, 1],
    kits: [
      [3, 0],
      [0, 1],
    ],
    proven: true,
  });
});

test('a hall of 600 m² out of two kits, two mixes and pails beside them is proven in a blink', () => {
  const kit = (a: number, other: number, mix: number, cost: number): JointPack => ({
    gives: [a, mix === 0 ? other : 0, mix === 1 ? other : 0].map((volume) => Math.round(volume * 1e7)),
    makes: [0, 1].map((one) => (one === mix ? Math.round((a + other) * 1e7) : 0)),
    cost,
    volume: Math.round((a + other) * 1e7),
  });
  const pail = (part: number, volume: number, cost: number): JointPack => ({
    gives: [0, 1, 2].map((one) => (one === part ? Math.round(volume * 1e7) : 0)),
    cost,
    volume: Math.round(volume * 1e7),
  });
  const packs = [
    kit(12.6, 6.3, 0, 29_000),
    kit(8, 2, 1, 17_500),
    pail(0, 200, 230_000),
    pail(0, 18, 24_000),
    pail(1, 20, 42_000),
    pail(2, 10, 26_000),
  ];
  const needs: readonly JointNeed[] = [
    { mixed: 311e7, shares: [2 / 3, 1 / 3, 0] },
    { mixed: 342e7, shares: [0.8, 0, 0.2] },
  ];
  const found = leastJointCover(packs, needs);
  expect(found?.proven).toBe(true);
  const spent = (found?.counts ?? []).reduce((sum, count, i) => sum + count * (packs[i] as JointPack).cost, 0);
  // Kits alone: 17 and 35 of them.
  expect(spent).toBeLessThan(17 * 29_000 + 35 * 17_500);
});

test('a mix that no pack makes has no choice', () => {
  const packs: readonly JointPack[] = [{ gives: [10, 0], cost: 1, volume: 10 }];
  expect(leastJointCover(packs, [{ mixed: 10, shares: [0.5, 0.5] }])).toBeUndefined();
});
