import type { SpreadClock } from './clock.ts';
import { atMinute } from './day-table.ts';
import type { SpreadProblem } from './problem.ts';

/** What a sequence costs; lower is better in every field. Minutes, metres, litres. */
export interface SpreadScore {
  /** 100·coldM + 100·lateMin + maxAge + 0.5·p95Age + 0.02·seamM + 0.005·walkM + 5·batches above the fewest. */
  readonly score: number;
  /** Largest age of a wet edge: difference of the spread times of two squares that must tie in. */
  readonly maxAgeMin: number;
  /** 95th percentile of the ages where two pours meet. */
  readonly p95AgeMin: number;
  readonly seamM: number;
  /** Metres where two pours meet on a stop line. */
  readonly freeSeamM: number;
  /** Metres of edge closed after its open time. */
  readonly coldM: number;
  /** Minutes past the working time, summed over pours. */
  readonly lateMin: number;
  readonly walkM: number;
  readonly minutes: number;
  readonly pours: number;
  /** Largest share age / open time over all edges. */
  readonly ageShare: number;
  /** Largest share of working time used by a pour. */
  readonly workShare: number;
}

/**
 * Scores a timed sequence by the instance format's rules. The age of every link that is not free counts, lane to lane
 * inside a pour too; only links between pours enter the percentile and the seam length.
 */
export function scoreOf(problem: SpreadProblem, clock: SpreadClock): SpreadScore {
  const { squares, question } = problem;
  const { link, free, cellM } = squares;
  const { time, pourOf } = clock;
  const open = question.clock.openMin;
  const ages: number[] = [];
  let maxAge = 0;
  let cold = 0;
  let freeSeam = 0;
  let share = 0;
  const lowestOpen = clock.lowestOpenMin;
  for (let s = 0; s < squares.count; s++) {
    for (let side = 0; side < 2; side++) {
      const other = link[4 * s + side] as number;
      if (other < 0) continue;
      const between = pourOf[s] !== pourOf[other];
      if (free[4 * s + side]) {
        if (between) freeSeam += 1;
        continue;
      }
      const a = time[s] as number;
      const b = time[other] as number;
      const age = a > b ? a - b : b - a;
      if (between) ages.push(age);
      if (age > maxAge) maxAge = age;
      if (age > share * lowestOpen) {
        const limit = atMinute(open, question.clock.startMin + Math.min(a, b));
        if (age / limit > share) share = age / limit;
        if (age > limit) cold += 1;
      }
    }
  }
  const p95 = percentile95(ages);
  const seamM = ages.length * cellM;
  const over = Math.max(0, clock.pours.length - problem.leastBatches);
  return {
    score:
      100 * cold * cellM + 100 * clock.lateMin + maxAge + 0.5 * p95 + 0.02 * seamM + 0.005 * clock.walkM + 5 * over,
    maxAgeMin: maxAge,
    p95AgeMin: p95,
    seamM,
    freeSeamM: freeSeam * cellM,
    coldM: cold * cellM,
    lateMin: clock.lateMin,
    walkM: clock.walkM,
    minutes: clock.minutes,
    pours: clock.pours.length,
    ageShare: share,
    workShare: clock.workShare,
  };
}

/** 95th percentile by rank; 0 of nothing. */
export function percentile95(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(0.95 * sorted.length))] as number;
}
