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

/** The instance format's walk: straight. */
export function straightWalk(problem: SpreadProblem): Walk {
  const { x, y } = problem.squares;
  return (order, place) => {
    const a = order[place - 1] as number;
    const b = order[place] as number;
    const dx = (x[a] as number) - (x[b] as number);
    const dy = (y[a] as number) - (y[b] as number);
    return Math.sqrt(dx * dx + dy * dy);
  };
}

/**
 * Times an order that is cut into pours.
 *
 * The first batch is mixed before anything is spread. With a dedicated mixer the next one is mixed while the last is
 * spread; otherwise mixing adds to the clock. Every batch is handed over before its first square. A walk counts for
 * what it is longer than one square, the step one makes anyway.
 */
export function timeOrder(problem: SpreadProblem, order: Int32Array, starts: Int32Array, walk: Walk): SpreadClock {
  const { squares, question } = problem;
  const { batch, crew } = question;
  const time = new Float64Array(squares.count);
  const pourOf = new Int32Array(squares.count).fill(-1);
  const pours: TimedPour[] = [];
  const step = STEP_SQUARES * squares.cellM;
  let now = 0;
  let walkM = 0;
  let late = 0;
  let workShare = 0;
  let startedLast = 0;
  for (let p = 0; p < starts.length; p++) {
    const first = starts[p] as number;
    const end = p + 1 < starts.length ? (starts[p + 1] as number) : order.length;
    if (p > 0) {
      const metres = walk(order, first);
      if (metres > step) {
        walkM += metres;
        now += (metres - squares.cellM) / crew.walkMPerMin;
      }
    }
    const mixed = crew.dedicatedMixer ? Math.max(startedLast + batch.mixMin, now) : now + batch.mixMin;
    const start = mixed + batch.handoverMin;
    now = start;
    for (let k = first; k < end; k++) {
      const s = order[k] as number;
      if (k > first) {
        const metres = walk(order, k);
        if (metres > step) {
          walkM += metres;
          now += (metres - squares.cellM) / crew.walkMPerMin;
        }
      }
      now += squares.minutes[s] as number;
      time[s] = now;
      pourOf[s] = p;
    }
    const working = atMinute(question.clock.workingMin, question.clock.startMin + mixed);
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
    lowestOpenMin: lowestOf(question.clock.openMin),
  };
}
