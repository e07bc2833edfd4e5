import type { CoatToPlace, WorkingHours } from './coat.ts';
import type { Conditions } from './conditions.ts';
import { type Candidate, judgeOf } from './judge-start.ts';

/** Candidate starts are tried this far apart, ms. */
export const START_SPACING = 15 * 60_000;

export interface FoundWindows {
  /** Every candidate start in order of time. */
  readonly starts: readonly Candidate[];
  /** Starts that may be used, best first: go before caution, wider margin before narrower, earlier before later. */
  readonly ranked: readonly Candidate[];
  /** Stretches of candidate starts with one verdict, ms since 1970. */
  readonly stretches: readonly { readonly from: number; readonly to: number; readonly word: Candidate['word'] }[];
}

/** Margins wider than this over the rule are equally good, K; compared in steps of half a kelvin so that noise never ranks. */
const WIDE_ENOUGH = 4;
const MARGIN_STEP = 0.5;
const RISE_STEP = 0.25;

const marginRank = (each: Candidate): number => Math.floor(Math.min(WIDE_ENOUGH, each.marginP10) / MARGIN_STEP);
const riseRank = (each: Candidate): number => Math.ceil(each.rise / RISE_STEP);

/**
 * All starts of one coat over the weather given, each judged over its whole open and sensitive time.
 *
 * @param from first start tried, ms since 1970; rounded up to a quarter of an hour
 * @param to last start tried
 */
export const findWindows = (
  conditions: Conditions,
  coat: CoatToPlace,
  hours: readonly WorkingHours[],
  from: number,
  to: number,
): FoundWindows => {
  const judge = judgeOf(conditions, coat, hours);
  const starts: Candidate[] = [];
  for (let start = Math.ceil(from / START_SPACING) * START_SPACING; start <= to; start += START_SPACING) {
    starts.push(judge(start));
  }
  const usable = starts.filter((each) => each.word === 'go' || each.word === 'caution');
  const ranked = usable.toSorted(
    (a, b) =>
      (a.word === b.word ? 0 : a.word === 'go' ? -1 : 1) ||
      marginRank(b) - marginRank(a) ||
      riseRank(a) - riseRank(b) ||
      a.start - b.start,
  );
  const stretches: { from: number; to: number; word: Candidate['word'] }[] = [];
  for (const each of starts) {
    const open = stretches.at(-1);
    if (open !== undefined && open.word === each.word) open.to = each.start;
    else stretches.push({ from: each.start, to: each.start, word: each.word });
  }
  return { starts, ranked, stretches };
};

/** Nearest start that may be used to one that is refused, ms since 1970, or undefined when there is none. */
export const nearestUsable = (found: FoundWindows, start: number): number | undefined => {
  let nearest: number | undefined;
  for (const each of found.ranked) {
    if (nearest === undefined || Math.abs(each.start - start) < Math.abs(nearest - start)) nearest = each.start;
  }
  return nearest;
};

/** Cheapest way out of a slab that warms under a porous coat. */
export type RisingWayOut =
  | { readonly code: 'lift-start-later'; readonly by: number; readonly start: number }
  | { readonly code: 'lift-shade' }
  | { readonly code: 'lift-thin-primer-first' };

/** Waiting the same day costs least (up to 8 h), shade next where the sun is what warms, a thin penetrating coat last. */
export const risingWayOut = (found: FoundWindows, start: number, sunlit: boolean): RisingWayOut => {
  const later = found.starts.find(
    (each) =>
      each.start > start &&
      each.start - start <= 8 * 3_600_000 &&
      (each.word === 'go' || each.limiting?.code === 'window-rising-little'),
  );
  if (later !== undefined) return { code: 'lift-start-later', by: (later.start - start) / 1000, start: later.start };
  return sunlit ? { code: 'lift-shade' } : { code: 'lift-thin-primer-first' };
};
