import { atMinute, lowestOf } from './day-table.ts';
import type { SpreadProblem } from './problem.ts';

/** One batch on the floor. Places are positions in the order; moments are minutes after the start. */
export interface TimedPour {
  readonly first: number;
  readonly end: number;
  /** Mixing ends (just in time for the handover). */
  readonly mixedMin: number;
  readonly startMin: number;
  readonly endMin: number;
  /** Working time at the hour it was mixed. */
  readonly workingMin: number;
}

export interface SpreadClock {
  /** Moment each square is spread, min after the start. */
  readonly time: Float64Array;
  readonly pourOf: Int32Array;
  readonly pours: readonly TimedPour[];
  readonly walkM: number;
  readonly minutes: number;
  readonly lateMin: number;
  readonly workShare: number;
  readonly lowestOpenMin: number;
}

/** Metres walked from the square at `place − 1` of the order to the one at `place`. */
export type Walk = (order: Int32Array, place: number) => number;

/** A jump of no more than this many squares is part of spreading, not a walk. */
export const STEP_SQUARES = 1.6;

/**
 * Times an order that is cut into pours.
 *
 * The first batch is mixed before anything is spread. With a dedicated mixer the next one is mixed while the last is
 * spread; otherwise mixing adds to the clock. Every batch is handed over before its first square. A walk counts for
 * what it is longer than one square, the step one makes anyway. Without a `walk` people go straight, the instance
 * format's rule. `room`: arrays to write into, each as long as the floor has squares.
 */
export function timeOrder(
  problem: SpreadProblem,
  order: Int32Array,
  starts: Int32Array,
  walk: Walk | undefined,
  room?: Pick<SpreadClock, 'time' | 'pourOf'>,
): SpreadClock {
  const { squares, question } = problem;
  const { batch, crew, clock } = question;
  const { x, y, cellM, minutes } = squares;
  const time = room?.time ?? new Float64Array(squares.count);
  const pourOf = room?.pourOf ?? new Int32Array(squares.count);
  if (order.length < squares.count) {
    time.fill(0);
    pourOf.fill(-1);
  }
  const pours: TimedPour[] = [];
  const step = STEP_SQUARES * cellM;
  let now = 0;
  let walkM = 0;
  let late = 0;
  let workShare = 0;
  let startedLast = 0;
  let before = -1;
  for (let p = 0; p < starts.length; p++) {
    const first = starts[p] as number;
    const end = p + 1 < starts.length ? (starts[p + 1] as number) : order.length;
    let mixed = 0;
    let start = 0;
    if (first === end) {
      // a batch mixed for nothing, in an order drawn by hand
      mixed = crew.dedicatedMixer ? Math.max(startedLast + batch.mixMin, now) : now + batch.mixMin;
      start = mixed + batch.handoverMin;
      now = start;
    }
    for (let k = first; k < end; k++) {
      const s = order[k] as number;
      if (before >= 0) {
        let metres = 0;
        if (walk) metres = walk(order, k);
        else {
          const dx = (x[before] as number) - (x[s] as number);
          const dy = (y[before] as number) - (y[s] as number);
          metres = Math.sqrt(dx * dx + dy * dy);
        }
        if (metres > step) {
          walkM += metres;
          now += (metres - cellM) / crew.walkMPerMin;
        }
      }
      before = s;
      if (k === first) {
        mixed = crew.dedicatedMixer ? Math.max(startedLast + batch.mixMin, now) : now + batch.mixMin;
        start = mixed + batch.handoverMin;
        now = start;
      }
      now += minutes[s] as number;
      time[s] = now;
      pourOf[s] = p;
    }
    const working = atMinute(clock.workingMin, clock.startMin + mixed);
    late += Math.max(0, now - mixed - working);
    workShare = Math.max(workShare, (now - mixed) / working);
    pours.push({ first, end, mixedMin: mixed, startMin: start, endMin: now, workingMin: working });
    startedLast = start;
  }
  return {
    time,
    pourOf,
    pours,
    walkM,
    minutes: now,
    lateMin: late,
    workShare,
    lowestOpenMin: lowestOf(clock.openMin),
  };
}
