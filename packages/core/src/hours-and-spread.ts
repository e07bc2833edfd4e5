import type { Entry } from './kernel/entry.ts';
import { epochOf } from './kernel/instant.ts';
import type { Recorder } from './kernel/trace.ts';
import type { CoatDay } from './steps/results.ts';
import { STANDS_STILL } from './steps/spread/rounds.ts';

/**
 * Hours and spread ask each other: how long a coat takes decides when it may start, and the hour decides how long an
 * edge stays open. They are worked out in turn until the starts stand still.
 */

/** No more rounds than these; what still moves then is told. */
export const MOST_ROUNDS = 3;

/** Keeps the entries of a round back until it is known whether the round stands. */
export class Held implements Recorder {
  private readonly entries: Entry[] = [];
  put(entry: Entry): void {
    this.entries.push(entry);
  }
  into(recorder: Recorder): void {
    for (const entry of this.entries) recorder.put(entry);
  }
}

/** Largest move of a start between two rounds, s; a start that appears or vanishes moves without limit. */
export function startsMoved(before: readonly CoatDay[], now: readonly CoatDay[]): number {
  return Math.max(
    0,
    ...now.map((coat) => {
      const earlier = before.find(({ layer }) => layer === coat.layer)?.start;
      if (!earlier && !coat.start) return 0;
      if (!earlier || !coat.start) return Number.POSITIVE_INFINITY;
      return Math.abs(epochOf(coat.start.at) - epochOf(earlier.at)) / 1000;
    }),
  );
}

const sameTimes = (a: ReadonlyMap<string, number>, b: ReadonlyMap<string, number>): boolean =>
  a.size === b.size && [...a].every(([layer, seconds]) => b.get(layer) === seconds);

/** The two halves of a round; each puts its entries into the recorder it is handed. */
export interface Turns<D, S> {
  /** Every start was chosen by somebody: none can move, so the first round is the last. */
  readonly fixed: boolean;
  /** Windows and starts, from the seconds that the pours of each coat take; none are known at first. */
  place(poured: ReadonlyMap<string, number>, recorder: Recorder): D;
  coatsOf(placed: D): readonly CoatDay[];
  /** The pours at those starts: roughly while only the minutes matter, then with care. */
  pour(placed: D, rough: boolean, recorder: Recorder): S;
  pouredBy(spread: S): ReadonlyMap<string, number>;
}

export interface Settled<D, S> {
  readonly placed: D;
  readonly spread: S;
  readonly rounds: number;
  /** How far the last round moved a start, s. */
  readonly moved: number;
}

/** Runs rounds until the starts stand still, at most {@link MOST_ROUNDS}; only the last one reaches `recorder`. */
export function untilSettled<D, S>(turns: Turns<D, S>, recorder: Recorder): Settled<D, S> {
  let poured: ReadonlyMap<string, number> = new Map();
  let before: readonly CoatDay[] | undefined;
  for (let rounds = 1; ; rounds++) {
    const held = new Held();
    const placed = turns.place(poured, held);
    const coats = turns.coatsOf(placed);
    const moved = before ? startsMoved(before, coats) : turns.fixed ? 0 : Number.POSITIVE_INFINITY;
    if (moved < STANDS_STILL || rounds === MOST_ROUNDS) {
      const poursHeld = new Held();
      const spread = turns.pour(placed, false, poursHeld);
      // the careful pours take their own minutes: what follows the last metre is counted from them
      const careful = turns.pouredBy(spread);
      const againHeld = new Held();
      const again = sameTimes(poured, careful) ? undefined : turns.place(careful, againHeld);
      const same = again !== undefined && startsMoved(coats, turns.coatsOf(again)) === 0;
      (same ? againHeld : held).into(recorder);
      poursHeld.into(recorder);
      return { placed: same ? again : placed, spread, rounds, moved };
    }
    poured = turns.pouredBy(turns.pour(placed, true, new Held()));
    before = coats;
  }
}
