import { atMinute } from './day-table.ts';
import type { SpreadProblem } from './problem.ts';

/** Why it cannot be done, as figures for one sentence. `certain`: arithmetic, holds for every order. */
export interface SpreadReason {
  readonly code: string;
  readonly certain: boolean;
  readonly figures: Readonly<Record<string, number>>;
}

/** What plain arithmetic says against any order, before or after a search. */
export function arithmeticReasons(problem: SpreadProblem): SpreadReason[] {
  const { question, squares, batchLitres } = problem;
  const reasons: SpreadReason[] = [];
  let area = 0;
  let litres = 0;
  for (let s = 0; s < squares.count; s++) {
    area += squares.areaM2[s] as number;
    litres += squares.litres[s] as number;
  }
  if (litres <= 0) return reasons;
  // a full batch, or the whole floor when that is less
  const batchM2 = area * Math.min(1, batchLitres / litres);
  const { handoverMin } = question.batch;
  const needs = batchM2 / problem.frontM2PerMin + handoverMin;
  const longest = question.clock.workingMin.reduce((most, [, value]) => Math.max(most, value), 0);
  const atStart = atMinute(question.clock.workingMin, question.clock.startMin + question.batch.mixMin);
  const full = Math.max(1, problem.leastBatches - 1);
  // the mean batch says what is likely; what holds for every order is the quickest floor those batches can cover
  if (needs > longest) {
    reasons.push({
      code: 'spread/batch-outlasts-working-time',
      certain:
        quickestMinutes(problem, full) / full + handoverMin > longest ||
        // or all batches together have less time than the whole floor takes
        area / problem.frontM2PerMin > problem.leastBatches * (longest - handoverMin),
      figures: {
        batchL: Math.min(batchLitres, litres),
        batchM2,
        rateM2PerMin: problem.frontM2PerMin,
        handoverMin,
        needsMin: needs,
        workingMin: longest,
      },
    });
  } else if (needs > atStart) {
    reasons.push({
      code: 'spread/batch-outlasts-working-time-at-start',
      certain: quickestMinutes(problem, 1) + handoverMin > atStart,
      figures: { batchM2, rateM2PerMin: problem.frontM2PerMin, needsMin: needs, workingMin: atStart },
    });
  }
  const longestOpen = question.clock.openMin.reduce((most, [, value]) => Math.max(most, value), 0);
  const stop = question.batch.handoverMin + (question.crew.dedicatedMixer ? 0 : question.batch.mixMin);
  if (stop > longestOpen && litres > batchLitres && question.stopLines.length === 0) {
    reasons.push({
      code: 'spread/stop-between-batches-outlasts-open-time',
      certain: true,
      figures: { stopMin: stop, openMin: longestOpen, batches: problem.leastBatches },
    });
  }
  return reasons;
}

/**
 * Fewest minutes the first `batches` full batches can stand on any floor they cover: the squares that take the least for
 * their litres, with half a square given for the cut. The part batch may have to take the slow edges.
 */
function quickestMinutes({ squares, batchLitres, leastBatches }: SpreadProblem, batches: number): number {
  const { litres, minutes, count } = squares;
  let largest = 0;
  let total = 0;
  for (let s = 0; s < count; s++) {
    largest = Math.max(largest, litres[s] as number);
    total += litres[s] as number;
  }
  let left = leastBatches > batches ? batches * batchLitres - largest / 2 : total;
  const ranked = Array.from({ length: count }, (_, s) => s)
    .filter((s) => (litres[s] as number) > 0)
    .sort((a, b) => (minutes[a] as number) * (litres[b] as number) - (minutes[b] as number) * (litres[a] as number));
  let sum = 0;
  for (const s of ranked) {
    if (left <= 0) break;
    const share = Math.min(1, left / (litres[s] as number));
    sum += share * (minutes[s] as number);
    left -= litres[s] as number;
  }
  return sum;
}

/** What the least bad sequence broke: found by searching, so another order might still do. */
export function searchedReason(
  problem: SpreadProblem,
  coldM: number,
  lateMin: number,
  maxAgeMin: number,
): SpreadReason {
  const open = problem.question.clock.openMin.reduce((least, [, value]) => Math.min(least, value), Infinity);
  return {
    code: coldM > 0 ? 'spread/edges-close-too-late' : 'spread/batches-too-late',
    certain: false,
    figures: { coldM, lateMin, maxAgeMin, openMin: open },
  };
}
