import type { CureLaw } from '../cure/law.ts';
import { clockOn } from './clocks.ts';
import type { CoatToPlace, WorkingHours } from './coat.ts';
import type { Conditions } from './conditions.ts';
import type { Candidate } from './judge-start.ts';
import { findWindows } from './search.ts';

/** One coat of a system, with what it asks of the coat after it. */
export interface ChainedCoat extends Omit<CoatToPlace, 'recoatOpens' | 'recoatCloses'> {
  /** When it may be recoated and until when without abrading. */
  readonly recoatOpens?: CureLaw;
  readonly recoatCloses?: CureLaw;
}

export interface PlacedChain {
  /** One start for each coat placed, in order. */
  readonly placed: readonly Candidate[];
  /** Index of the first coat for which no start was found, and the starts it was refused; absent when all are placed. */
  readonly stuck?: { readonly coat: number; readonly refused: readonly Candidate[] };
}

/** Starts of one coat that are followed further; a job has a handful of coats, a week some hundred starts. */
const WIDTH = 12;

/** When the coat after one laid from `candidate` may follow: opens at the long bound, closes at the short one. */
export const recoatAfter = (
  conditions: Conditions,
  coat: ChainedCoat,
  candidate: Candidate,
): { readonly opens: number; readonly closes?: number } => {
  // The part laid last opens last; the part laid first closes first.
  const opens = coat.recoatOpens === undefined ? undefined : clockOn(conditions, coat.recoatOpens)(candidate.laid);
  const closes = coat.recoatCloses === undefined ? undefined : clockOn(conditions, coat.recoatCloses)(candidate.start);
  return {
    opens: coat.recoatOpens === undefined ? candidate.sensitiveUntil : (opens?.high ?? Number.POSITIVE_INFINITY),
    ...(closes === undefined ? {} : { closes: closes.low }),
  };
};

/**
 * Starts for all coats of a system, each in the recoat window that the one before leaves.
 *
 * The earliest usable starts of each coat are tried first, a go before a caution within one day; when a later coat
 * finds none, the next start of the coat before is tried. The chain that ends soonest among those tried is not sought:
 * a crew wants the first that works.
 */
export const placeChain = (
  conditions: Conditions,
  coats: readonly ChainedCoat[],
  hours: readonly WorkingHours[],
  from: number,
  to: number,
): PlacedChain => {
  let deepest: { coat: number; placed: readonly Candidate[]; refused: readonly Candidate[] } = {
    coat: -1,
    placed: [],
    refused: [],
  };
  const follow = (
    index: number,
    placed: readonly Candidate[],
    opens: number,
    closes: number | undefined,
  ): readonly Candidate[] | undefined => {
    const coat = coats[index];
    if (coat === undefined) return placed;
    // A coat that never opens for the next one leaves it stuck without any start to look at.
    if (opens === Number.POSITIVE_INFINITY) {
      if (index > deepest.coat) deepest = { coat: index, placed, refused: [] };
      return undefined;
    }
    const { recoatOpens: _, recoatCloses: __, ...rest } = coat;
    const bounds = { recoatOpens: opens, ...(closes === undefined ? {} : { recoatCloses: closes }) };
    const found = findWindows(conditions, { ...rest, ...bounds }, hours, Math.max(from, Math.min(opens, to)), to);
    const inOrder = found.ranked.toSorted((a, b) => dayOf(a) - dayOf(b) || rank(a) - rank(b) || a.start - b.start);
    for (const candidate of inOrder.slice(0, WIDTH)) {
      const next = recoatAfter(conditions, coat, candidate);
      const rests = follow(index + 1, [...placed, candidate], next.opens, next.closes);
      if (rests !== undefined) return rests;
    }
    if (index > deepest.coat) deepest = { coat: index, placed, refused: found.starts };
    return undefined;
  };
  const all = follow(0, [], Number.NEGATIVE_INFINITY, undefined);
  return all === undefined
    ? { placed: deepest.placed, stuck: { coat: deepest.coat, refused: deepest.refused } }
    : { placed: all };
};

const DAY = 86_400_000;
const dayOf = (each: Candidate): number => Math.floor(each.start / DAY);
const rank = (each: Candidate): number => (each.word === 'go' ? 0 : 1);
