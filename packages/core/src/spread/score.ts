import type { SpreadClock } from './clock.ts';
import { atMinute } from './day-table.ts';
import type { SpreadProblem } from './problem.ts';
import { scratchOf } from './scratch.ts';

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
  const { cellM } = squares;
  const { time, pourOf } = clock;
  const open = question.clock.openMin;
  const { pairs, clock: room } = scratchOf(squares);
  const { tied, free } = pairs;
  const { ages } = room;
  let seams = 0;
  let maxAge = 0;
  let cold = 0;
  let freeSeam = 0;
  let share = 0;
  const lowestOpen = clock.lowestOpenMin;
  for (let k = 0; k < tied.length; k += 2) {
    const s = tied[k] as number;
    const other = tied[k + 1] as number;
    const pour = pourOf[s] as number;
    const otherPour = pourOf[other] as number;
    // an order drawn by hand may leave squares out
    if (pour < 0 || otherPour < 0) continue;
    const a = time[s] as number;
    const b = time[other] as number;
    const age = a > b ? a - b : b - a;
    if (pour !== otherPour) ages[seams++] = age;
    if (age > maxAge) maxAge = age;
    // an age below the shortest open time is no cold edge, and below the largest share so far no larger one
    if (age > lowestOpen || age > share * lowestOpen) {
      const limit = atMinute(open, question.clock.startMin + Math.min(a, b));
      if (age / limit > share) share = age / limit;
      if (age > limit) cold += 1;
    }
  }
  for (let k = 0; k < free.length; k += 2)
    if (pourOf[free[k] as number] !== pourOf[free[k + 1] as number]) freeSeam += 1;
  const p95 = percentile95(ages, seams);
  const seamM = seams * cellM;
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

/** 95th percentile by rank of the first `count` values, which it puts into another order; 0 of nothing. */
export function percentile95(values: Float64Array, count: number): number {
  if (count === 0) return 0;
  const rank = Math.min(count - 1, Math.floor(0.95 * count));
  // the value of that rank by splitting again and again (Hoare), since the rest need no order
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = values[(low + high) >> 1] as number;
    let i = low;
    let j = high;
    while (i <= j) {
      while ((values[i] as number) < middle) i += 1;
      while ((values[j] as number) > middle) j -= 1;
      if (i > j) break;
      const swapped = values[i] as number;
      values[i] = values[j] as number;
      values[j] = swapped;
      i += 1;
      j -= 1;
    }
    if (rank <= j) high = j;
    else if (rank >= i) low = i;
    else break;
  }
  return values[rank] as number;
}
