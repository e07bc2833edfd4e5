import { type CoverPack, compareCovers, leastCover, type Score, scoreOf } from './covering.ts';

/**
 * Exact least-cost packs for several mixes that share components. A part sold alone goes wherever it is needed; a kit
 * is opened whole for one mix. So the search walks over how many kits each mix opens, and covers what is then missing
 * of each component exactly.
 */

export interface JointPack {
  readonly cost: number;
  readonly volume: number;
  /** What it gives of each component, in whole steps. */
  readonly gives: readonly number[];
  /** Only of a kit that is opened whole: what it makes of each mix, in steps; nothing where it does not serve it. */
  readonly makes?: readonly number[];
}

export interface JointNeed {
  /** Mixed volume, in steps. */
  readonly mixed: number;
  /** Share of each component in this mix; nothing of those it lacks. */
  readonly shares: readonly number[];
}

export interface JointCover {
  /** How many of each pack. */
  readonly counts: readonly number[];
  /** Kits by mix, for each pack that is opened whole. */
  readonly kits: readonly (readonly number[])[];
  readonly proven: boolean;
}

/** Ways of opening kits that are looked at before the search is cut off, and candidates of packs for each of them. */
export const JOINT_EFFORT = 3_000;
const LOOSE_EFFORT = 20_000;

interface Use {
  readonly pack: number;
  readonly mix: number;
  readonly makes: number;
  readonly holds: readonly boolean[];
}

/** Steps that rounding of a component's need may be off: less than a thousandth of a millilitre. */
const ROUNDING = 2;

/**
 * Least-cost counts. `slack` is what may be missing of each mix, in steps.
 * @returns undefined where no number of packs makes every mix.
 */
export function leastJointCover(
  packs: readonly JointPack[],
  needs: readonly JointNeed[],
  slack = 0,
): JointCover | undefined {
  const parts = packs[0]?.gives.length ?? 0;
  const loose = packs.flatMap((pack, i) => (pack.makes ? [] : [i]));
  const loosePacks: readonly CoverPack[] = loose.map((i) => packs[i] as JointPack);
  const uses: readonly Use[] = packs.flatMap(({ makes, gives }, pack) =>
    (makes ?? []).flatMap((made, mix) =>
      made > 0 ? [{ pack, mix, makes: made, holds: gives.map((give) => give > 0) }] : [],
    ),
  );
  // Mixed volume of each mix that no kit makes yet, by component: a kit without the hardener leaves the hardener open.
  const open = needs.map(({ mixed, shares }) => shares.map((share) => (share > 0 ? Math.max(0, mixed - slack) : 0)));
  const needOf = (part: number): number =>
    needs.reduce((sum, { shares }, m) => sum + (shares[part] as number) * Math.max(0, open[m]?.[part] as number), 0);
  const cheapest = uses.map((_, depth) => cheapestFrom(depth)).concat([cheapestFrom(uses.length)]);

  function cheapestFrom(depth: number): readonly number[] {
    return Array.from({ length: parts }, (_, part) => {
      let least = Number.POSITIVE_INFINITY;
      for (const { cost, gives } of loosePacks) {
        if ((gives[part] as number) > 0) least = Math.min(least, cost / (gives[part] as number));
      }
      for (const { pack, mix, makes, holds } of uses.slice(depth)) {
        const covers = makes * (needs[mix]?.shares[part] as number);
        if (holds[part] && covers > 0) least = Math.min(least, (packs[pack] as JointPack).cost / covers);
      }
      return least;
    });
  }

  let best: { readonly counts: readonly number[]; readonly used: readonly number[] } | undefined;
  let bestScore: Score = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let looked = 0;
  let proven = true;
  const used = uses.map(() => 0);

  const close = (): void => {
    looked++;
    const missing = Array.from({ length: parts }, (_, part) => Math.ceil(needOf(part)));
    const bare = missing.every((need) => need <= ROUNDING);
    const cover = bare
      ? { counts: loosePacks.map(() => 0), proven: true }
      : leastCover(loosePacks, missing, ROUNDING, LOOSE_EFFORT);
    if (!cover) return;
    proven &&= cover.proven;
    const counts = packs.map(() => 0);
    loose.forEach((pack, i) => {
      counts[pack] = cover.counts[i] as number;
    });
    uses.forEach(({ pack }, i) => {
      counts[pack] = (counts[pack] as number) + (used[i] as number);
    });
    const score = scoreOf(packs, counts);
    if (best && compareCovers(score, counts, bestScore, best.counts) >= 0) return;
    best = { counts, used: [...used] };
    bestScore = score;
  };

  const visit = (depth: number, cost: number): void => {
    if (looked > JOINT_EFFORT && best) {
      proven = false;
      return;
    }
    let bound = 0;
    for (let part = 0; part < parts; part++) {
      const need = needOf(part);
      if (need > ROUNDING) bound = Math.max(bound, (need - ROUNDING) * (cheapest[depth]?.[part] as number));
    }
    // A hair below, because the bound is a quotient.
    if (cost + bound > bestScore[0] * (1 + 1e-12) + 1e-6) return;
    const use = uses[depth];
    if (!use) {
      close();
      return;
    }
    const row = open[use.mix] as number[];
    const most = Math.max(0, ...row.map((left, part) => (use.holds[part] ? Math.ceil(left / use.makes) : 0)));
    const before = [...row];
    for (let count = most; count >= 0; count--) {
      used[depth] = count;
      before.forEach((left, part) => {
        row[part] = use.holds[part] ? left - count * use.makes : left;
      });
      visit(depth + 1, cost + count * (packs[use.pack] as JointPack).cost);
    }
    used[depth] = 0;
    before.forEach((left, part) => {
      row[part] = left;
    });
  };
  visit(0, 0);

  if (!best) return undefined;
  const { counts, used: chosen } = best;
  return {
    counts,
    kits: packs.map((_, pack) =>
      needs.map((_, mix) =>
        uses.reduce((sum, use, i) => sum + (use.pack === pack && use.mix === mix ? (chosen[i] as number) : 0), 0),
      ),
    ),
    proven,
  };
}
