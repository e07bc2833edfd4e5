import type { SpreadCase, SpreadSolution } from '../types.ts';
import { placeOf, type SpreadBreak } from './break.ts';
import type { CheckFloor } from './raster.ts';

/** Squares of each pour by number; what is missing, double or off the floor is told. */
export function coverage(floor: CheckFloor, solution: SpreadSolution, breaks: SpreadBreak[]): number[][] {
  const times = new Uint8Array(floor.squares.length);
  const pours = solution.pours.map(({ cells }, k) => {
    const found: number[] = [];
    for (let c = 0; c + 1 < cells.length; c += 2) {
      const s = floor.find(cells[c] as number, cells[c + 1] as number);
      if (s < 0) {
        breaks.push({
          code: 'check/square-off-floor',
          pour: k + 1,
          figures: { column: cells[c] as number, row: cells[c + 1] as number },
        });
      } else if (times[s]) {
        breaks.push({ code: 'check/square-twice', pour: k + 1, at: placeOf(floor, s), figures: {} });
      } else {
        times[s] = 1;
        found.push(s);
      }
    }
    return found;
  });
  const missing = floor.squares.map((_, s) => s).filter((s) => !times[s]);
  if (missing.length > 0) {
    const m2 = missing.reduce((sum, s) => sum + (floor.squares[s]?.areaM2 ?? 0), 0);
    breaks.push({
      code: 'check/left-out',
      at: placeOf(floor, missing[0] as number),
      figures: { squares: missing.length, m2 },
    });
  }
  return pours.filter((pour) => pour.length > 0);
}

/** Pours larger than what one batch holds. */
export function checkLitres(
  question: SpreadCase,
  floor: CheckFloor,
  pours: readonly number[][],
  breaks: SpreadBreak[],
): void {
  const { litres: batch } = question.batch;
  let carried = 0;
  pours.forEach((pour, k) => {
    let own = 0;
    let largest = 0;
    for (const s of pour) {
      own += floor.squares[s]?.litres ?? 0;
      largest = Math.max(largest, floor.squares[s]?.litres ?? 0);
    }
    // a cut falls on whole squares, so a pour may be half a square over at either end
    if (own > batch + largest + 1e-6 || carried + own > (k + 1) * batch + largest / 2 + 1e-6) {
      breaks.push({ code: 'check/pour-too-large', pour: k + 1, figures: { litres: own, batchL: batch } });
    }
    carried += own;
  });
}

/** Into how many pieces that do not touch a pour falls. */
export function pieces(floor: CheckFloor, pour: readonly number[]): number {
  const left = new Set(pour);
  let count = 0;
  for (const first of pour) {
    if (!left.delete(first)) continue;
    count += 1;
    const stack = [first];
    for (let s = stack.pop(); s !== undefined; s = stack.pop()) {
      for (const o of floor.squares[s]?.next ?? []) if (left.delete(o)) stack.push(o);
    }
  }
  return count;
}
