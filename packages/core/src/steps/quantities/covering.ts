/**
 * Exact least-cost covering: how many of each pack, so that every part is covered. Integers inside, so that every
 * engine decides alike; depth-first with a bound, after packs that others replace are limited (a cheap exchange).
 */

export interface CoverPack {
  /** What one pack gives of each part, in whole steps. */
  readonly gives: readonly number[];
  /** What it costs, in whole steps of whatever is saved first: money, or volume where no price is known. */
  readonly cost: number;
  /** Volume of the pack in whole steps: the first tie-break, least left over. */
  readonly volume: number;
}

export interface Cover {
  readonly counts: readonly number[];
  /** False when the search was cut off: a cover, but not proven the least. */
  readonly proven: boolean;
}

/** Candidates looked at before the search is cut off. Ordinary sheets need a few hundred. */
export const COVER_EFFORT = 500_000;

/** Named order of preference: cost, then volume, then number of packs, then more of the pack the sheet lists first. */
export type Score = readonly [cost: number, volume: number, packs: number];

export const scoreOf = (packs: readonly CoverPack[], counts: readonly number[]): Score => {
  let [cost, volume, number] = [0, 0, 0];
  packs.forEach((pack, i) => {
    const count = counts[i] as number;
    cost += count * pack.cost;
    volume += count * pack.volume;
    number += count;
  });
  return [cost, volume, number];
};

/** Negative when `a` is better. Equal scores fall to the pack listed first in the sheet. */
export function compareCovers(a: Score, aCounts: readonly number[], b: Score, bCounts: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return (a[i] as number) - (b[i] as number);
  for (let i = 0; i < aCounts.length; i++) {
    const difference = (bCounts[i] as number) - (aCounts[i] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Steps of rounding that an exchange of packs may lose: each pack is rounded by half a step at most. */
const ROUNDING = 1;
const MOST_EXCHANGED = 40;

/**
 * Most of one pack that a best cover can hold. Where `a` of it can be replaced by `b` of another that give at least as
 * much and score better, fewer than `a` are in any best cover.
 */
function mostUseful(packs: readonly CoverPack[], p: number): number {
  const pack = packs[p] as CoverPack;
  let most = Number.POSITIVE_INFINITY;
  packs.forEach((other, o) => {
    if (o === p) return;
    for (let a = 1; a <= MOST_EXCHANGED && a < most; a++) {
      let b = 0;
      for (let part = 0; part < pack.gives.length; part++) {
        const give = pack.gives[part] as number;
        const gets = other.gives[part] as number;
        if (give === 0) continue;
        b = gets === 0 ? Number.POSITIVE_INFINITY : Math.max(b, Math.ceil((a * give - ROUNDING * a) / gets));
      }
      if (!Number.isFinite(b)) break;
      const difference =
        b * other.cost - a * pack.cost || b * other.volume - a * pack.volume || b - a || (o < p ? -1 : 1);
      if (difference < 0) most = a - 1;
    }
  });
  return most;
}

/**
 * Least-cost counts that give `need` of every part, one need for all or one for each. `slack` is what may be missing (half a millilitre): equal amounts
 * written in other units must count as equal.
 * @returns undefined when no number of packs covers every part.
 */
export function leastCover(
  packs: readonly CoverPack[],
  need: number | readonly number[],
  slack = 0,
  effort = COVER_EFFORT,
): Cover | undefined {
  const parts = packs[0]?.gives.length ?? 0;
  const wantedOf = (part: number): number =>
    Math.max(0, (typeof need === 'number' ? need : (need[part] as number)) - slack);
  for (let part = 0; part < parts; part++)
    if (wantedOf(part) > 0 && !packs.some((pack) => (pack.gives[part] as number) > 0)) return undefined;
  if (parts === 0) return undefined;

  const limits = packs.map((_, p) => mostUseful(packs, p));
  // The best giver for its cost first: good covers early make the bound cut early.
  const order = packs.map((_, p) => p).filter((p) => (packs[p] as CoverPack).gives.some((give) => give > 0));
  const worth = (p: number): number => {
    const { gives, cost } = packs[p] as CoverPack;
    return cost / gives.reduce((sum, give) => sum + give, 0);
  };
  order.sort((a, b) => worth(a) - worth(b) || b - a);

  // Least cost of one step of a part with the packs from a depth on.
  const cheapest = order.map((_, depth) =>
    Array.from({ length: parts }, (_, part) => {
      let least = Number.POSITIVE_INFINITY;
      for (const p of order.slice(depth)) {
        const { gives, cost } = packs[p] as CoverPack;
        if ((gives[part] as number) > 0) least = Math.min(least, cost / (gives[part] as number));
      }
      return least;
    }),
  );

  let best: number[] | undefined;
  let bestScore: Score = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let looked = 0;
  const counts = packs.map(() => 0);
  const missing = Array.from({ length: parts }, (_, part) => wantedOf(part));

  const bound = (depth: number): number => {
    let least = 0;
    for (let part = 0; part < parts; part++) {
      const lack = missing[part] as number;
      if (lack <= 0) continue;
      const row = cheapest[depth];
      least = Math.max(least, row ? lack * (row[part] as number) : Number.POSITIVE_INFINITY);
    }
    return least;
  };

  const visit = (depth: number, cost: number): void => {
    looked++;
    if (missing.every((lack) => lack <= 0)) {
      const score = scoreOf(packs, counts);
      if (!best || compareCovers(score, counts, bestScore, best) < 0) {
        best = [...counts];
        bestScore = score;
      }
      return;
    }
    if (looked > effort && best) return;
    // A hair below, because the bound is a quotient of whole numbers.
    if (cost + bound(depth) > bestScore[0] * (1 + 1e-12) + 1e-6) return;
    const p = order[depth];
    if (p === undefined) return;
    const pack = packs[p] as CoverPack;
    let most = 0;
    for (let part = 0; part < parts; part++) {
      const give = pack.gives[part] as number;
      if (give > 0) most = Math.max(most, Math.ceil((missing[part] as number) / give));
    }
    most = Math.min(most, limits[p] as number);
    for (let count = most; count >= 0; count--) {
      counts[p] = count;
      for (let part = 0; part < parts; part++)
        missing[part] = (missing[part] as number) - count * (pack.gives[part] as number);
      visit(depth + 1, cost + count * pack.cost);
      for (let part = 0; part < parts; part++)
        missing[part] = (missing[part] as number) + count * (pack.gives[part] as number);
    }
    counts[p] = 0;
  };
  visit(0, 0);
  return best ? { counts: best, proven: looked <= effort } : undefined;
}
