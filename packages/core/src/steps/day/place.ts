import type { ProductCure } from '../../science/cure/index.ts';
import {
  type Candidate,
  type ChainedCoat,
  type CoatToPlace,
  type Conditions,
  clockOn,
  type FoundWindows,
  findWindows,
  judgeStart,
  recoatAfter,
  type WorkingHours,
} from '../../science/windows/index.ts';
import { type Laid, layout, type Stretches } from '../schedule/layout.ts';
import type { CoatPhase } from '../schedule/phases.ts';

/** One coat to be placed: its law, its work, and the start somebody chose. */
export interface Wanted {
  readonly coat: ChainedCoat;
  readonly cure: ProductCure;
  readonly phase: CoatPhase;
  readonly chosen: number | undefined;
}

export interface Crew {
  readonly people: number;
  readonly hours: Stretches;
}

/** A coat with its bounds, all its starts, and the one it gets. */
export interface Placed {
  readonly found: FoundWindows;
  readonly candidate?: Candidate;
  readonly by: 'chosen' | 'proposed';
  /** Earliest moment the next coat may follow: opened, scraped, screened. */
  readonly next?: Next;
}

export interface Next {
  /** The film bears the next coat from here, on the slow side and in the middle; abrading is needed from `closes`. */
  readonly opens: number;
  readonly opensMiddle: number;
  readonly closes?: number;
  /** Scraped and screened after that. */
  readonly ready: number;
  readonly readyMiddle: number;
}

/** Starts of one coat that are followed further when a later coat finds none. */
export const WIDTH = 6;
/** Searches of a whole week made for one option at most: effort in candidates, never in time. */
const MOST_SEARCHES = 24;
const DAY = 86_400_000;

export interface Bounds {
  readonly prepared: number;
  readonly opens?: number;
  readonly closes?: number;
  /** The same in the middle of the band. */
  readonly middle?: { readonly opens: number; readonly prepared: number };
}

const toPlace = ({ coat }: Wanted, { prepared, opens, closes }: Bounds): CoatToPlace => {
  const { recoatOpens: _, recoatCloses: __, ...rest } = coat;
  return {
    ...rest,
    prepared,
    ...(opens === undefined ? {} : { recoatOpens: opens }),
    ...(closes === undefined ? {} : { recoatCloses: closes }),
  };
};

/** When the work after a coat is done and the next one may be laid. */
function readyAfter(wanted: Wanted, following: Wanted | undefined, laid: number, opens: number, crew: Crew): Laid {
  const walls = layout(wanted.phase.walls, crew.people, crew.hours, laid);
  const between = [...wanted.phase.after, ...(following?.phase.before ?? [])];
  return layout(between, crew.people, crew.hours, Math.max(walls.end, opens));
}

/**
 * Starts for all coats in order: the chosen ones as they are, the others where they first work, a go before one with
 * care on the same day. Where a later coat finds none, the next start of the coat before is tried.
 *
 * @param from earliest start looked at, ms since 1970
 * @param search how the starts of one coat are looked for: all of them to be told, or the first that serve
 */
export function placeAll(
  conditions: Conditions,
  wanted: readonly Wanted[],
  crew: Crew,
  prepared: number,
  from: number,
  search: typeof findWindows = findWindows,
): readonly Placed[] {
  const to = conditions.from + conditions.count * 300_000;
  const hours: readonly WorkingHours[] = crew.hours;
  let searches = 0;
  const follow = (index: number, bounds: Bounds): readonly Placed[] => {
    const here = wanted[index];
    if (!here) return [];
    const coat = toPlace(here, bounds);
    searches++;
    const found = search(conditions, coat, hours, from, to);
    const after = (candidate: Candidate): Placed['next'] => {
      const { opens, closes } = recoatAfter(conditions, here.coat, candidate);
      if (!Number.isFinite(opens)) return undefined;
      const law = here.coat.recoatOpens;
      const opensMiddle = (law && clockOn(conditions, law)(candidate.laid)?.at) ?? opens;
      const end = (from: number): number => readyAfter(here, wanted[index + 1], candidate.laid, from, crew).end;
      return {
        opens,
        opensMiddle,
        ready: end(opens),
        readyMiddle: end(opensMiddle),
        ...(closes === undefined ? {} : { closes }),
      };
    };
    const rest = (candidate: Candidate, by: Placed['by']): readonly Placed[] => {
      const next = after(candidate);
      const placed: Placed = { found, candidate, by, ...(next ? { next } : {}) };
      if (index + 1 >= wanted.length) return [placed];
      if (!next) return [placed, ...unplaced(index + 1)];
      const { opens, opensMiddle, closes, ready, readyMiddle } = next;
      const middle = { opens: opensMiddle, prepared: readyMiddle };
      return [
        placed,
        ...follow(index + 1, { prepared: ready, opens, middle, ...(closes === undefined ? {} : { closes }) }),
      ];
    };
    if (here.chosen !== undefined) {
      const middle = bounds.middle ? toPlace(here, { ...bounds, ...bounds.middle }) : coat;
      const judged = judgeStart(conditions, middle, hours, here.chosen);
      return rest(surely(judged, Math.max(bounds.opens ?? here.chosen, bounds.prepared)), 'chosen');
    }
    const inOrder = found.ranked.toSorted(
      (a, b) => Math.floor(a.start / DAY) - Math.floor(b.start / DAY) || rankOf(a) - rankOf(b) || a.start - b.start,
    );
    let best: readonly Placed[] | undefined;
    for (const candidate of inOrder.slice(0, WIDTH)) {
      const tried = rest(candidate, 'proposed');
      if (tried.every(({ candidate: one }) => one !== undefined)) return tried;
      if (!best || countOf(tried) > countOf(best)) best = tried;
      if (searches >= MOST_SEARCHES) break;
    }
    return best ?? [{ found, by: 'proposed' }, ...unplaced(index + 1)];
  };
  const nothing: FoundWindows = { starts: [], ranked: [], stretches: [] };
  /** Coats after one that has no start: a chosen start is still judged on its own. */
  const unplaced = (index: number): readonly Placed[] => {
    const here = wanted[index];
    if (!here) return [];
    if (here.chosen === undefined) return [{ found: nothing, by: 'proposed' }, ...unplaced(index + 1)];
    return follow(index, { prepared: Number.NEGATIVE_INFINITY });
  };
  return follow(0, { prepared });
}

/**
 * A start that somebody chose between the middle and the slow side of the recoat window is with care: a thumb on the
 * film decides on the day. Nothing is ever proposed there.
 */
function surely(judged: Candidate, slow: number): Candidate {
  const early = (slow - judged.start) / 1000;
  if (!(early > 0) || judged.word === 'stop' || !Number.isFinite(early)) return judged;
  const reason = {
    verdict: 'caution',
    code: 'window-recoat-not-surely-open',
    value: -early,
    bound: 0,
    lift: { code: 'lift-start-later', by: early },
  } as const;
  const { limiting, others } = judged;
  return limiting
    ? { ...judged, others: [...others, reason] }
    : { ...judged, word: 'caution', limiting: reason, others };
}

const rankOf = (each: Candidate): number => (each.word === 'go' ? 0 : 1);
const countOf = (placed: readonly Placed[]): number => placed.filter(({ candidate }) => candidate !== undefined).length;
