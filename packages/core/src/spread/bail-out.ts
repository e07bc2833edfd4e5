import type { Candidate } from './candidate.ts';
import { atMinute } from './day-table.ts';
import type { SpreadProblem } from './problem.ts';

/** Where to stop when something goes wrong during a pour. */
export interface BailOut {
  /** Number of the pour, from 1, during or at the end of which the stop lies. */
  readonly pour: number;
  /** Squares spread by then. */
  readonly squares: number;
  /** Minutes after the start. */
  readonly minute: number;
  /** Metres of open edge that do not lie on a stop line and would need tape; 0: a clean stop at joints. */
  readonly tapeM: number;
  /** Stop lines the film would end on, by number. */
  readonly lines: readonly number[];
}

/**
 * The best place to stop in each pour but the last: the fewest metres to tape, and of equal ones the latest, since then
 * the least resin is left in the pail.
 */
export function bailOuts(problem: SpreadProblem, plan: Candidate): BailOut[] {
  const { link, free, stopLine, cellM, count } = problem.squares;
  const spread = new Uint8Array(count);
  const onLine = new Map<number, number>();
  const found: BailOut[] = [];
  let open = 0;
  plan.clock.pours.forEach((pour, k) => {
    let best: { open: number; squares: number; minute: number; lines: number[] } | undefined;
    for (let place = pour.first; place < pour.end; place++) {
      const s = plan.order[place] as number;
      spread[s] = 1;
      for (let side = 4 * s; side < 4 * s + 4; side++) {
        const other = link[side] as number;
        if (other < 0) continue;
        const change = spread[other] ? -1 : 1;
        if (free[side]) {
          const line = stopLine[side] as number;
          onLine.set(line, (onLine.get(line) ?? 0) + change);
        } else open += change;
      }
      if (!best || open <= best.open) {
        const lines = [...onLine].filter(([, links]) => links > 0).map(([line]) => line);
        best = { open, squares: place + 1, minute: plan.clock.time[s] as number, lines: lines.sort((a, b) => a - b) };
      }
    }
    if (!best || k === plan.clock.pours.length - 1) return;
    found.push({
      pour: k + 1,
      squares: best.squares,
      minute: best.minute,
      tapeM: best.open * cellM,
      lines: best.lines,
    });
  });
  return found;
}

/**
 * Minutes each pour but the first may start late, all else as planned, before an edge closes too late
 * ("you may lose 4 min, not 6"). Infinity when nothing open waits for it. A pour that loses time while its batch stands
 * mixed also loses working time: the smaller of the two counts.
 */
export function spareBeforePours(problem: SpreadProblem, plan: Candidate): number[] {
  const { link, free, count } = problem.squares;
  const { time, pourOf, pours } = plan.clock;
  const { startMin, openMin } = problem.question.clock;
  const spare = pours.map((pour) => pour.workingMin - (pour.endMin - pour.mixedMin));
  for (let s = 0; s < count; s++) {
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      const mine = pourOf[s] as number;
      if (other < 0 || free[side] || mine >= (pourOf[other] as number)) continue;
      const room = atMinute(openMin, startMin + (time[s] as number)) - ((time[other] as number) - (time[s] as number));
      for (let k = mine + 1; k <= (pourOf[other] as number); k++) spare[k] = Math.min(spare[k] as number, room);
    }
  }
  return spare;
}
