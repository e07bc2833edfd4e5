import type { SpreadCase } from '../types.ts';
import type { SpreadBreak } from './break.ts';
import { look } from './look.ts';
import type { CheckFloor } from './raster.ts';
import { waysOver } from './ways.ts';

/** The day as it goes: mixing, handing over, spreading and the walks people must take. */
export function replay(
  question: SpreadCase,
  floor: CheckFloor,
  pours: readonly number[][],
  narrow: ReadonlyMap<number, number>,
  breaks: SpreadBreak[],
) {
  const { batch, crew, clock, cellM } = question;
  const way = waysOver(question, floor, new Set(narrow.keys()));
  const wet = new Uint8Array(floor.squares.length);
  const time = new Float64Array(floor.squares.length);
  let clockMin = 0;
  let walkM = 0;
  let lateMin = 0;
  let lastStart = 0;
  let before = -1;
  pours.forEach((pour, k) => {
    let mixed = 0;
    pour.forEach((s, n) => {
      const square = floor.squares[s];
      if (!square) return;
      if (before >= 0) {
        const from = floor.squares[before];
        if (!stepAway(floor, before, s)) {
          const metres = way(before, s, wet);
          if (metres === Infinity) {
            breaks.push({
              code: 'check/no-dry-way',
              pour: k + 1,
              at: [square.x, square.y],
              figures: { fromX: from?.x ?? 0, fromY: from?.y ?? 0 },
            });
          } else if (metres > 1.6 * cellM) {
            // the first square of a walk is the step one makes anyway
            walkM += metres;
            clockMin += (metres - cellM) / crew.walkMPerMin;
          }
        }
      }
      if (n === 0) {
        mixed = Math.max(clockMin, crew.dedicatedMixer ? lastStart + batch.mixMin : clockMin + batch.mixMin);
        clockMin = mixed + batch.handoverMin;
        lastStart = clockMin;
      }
      clockMin += square.minutes;
      time[s] = clockMin;
      wet[s] = 1;
      before = s;
    });
    const allowed = look(clock.workingMin, clock.startMin + mixed);
    const used = clockMin - mixed;
    if (used > allowed + 1e-9) {
      lateMin += used - allowed;
      breaks.push({ code: 'check/working-time', pour: k + 1, figures: { usedMin: used, allowedMin: allowed } });
    }
  });
  return { time, walkM, minutes: clockMin, lateMin };
}

/** One step, straight or round a corner that no wall closes. */
function stepAway(floor: CheckFloor, from: number, to: number): boolean {
  const [right, up, left, down] = floor.squares[from]?.next ?? [-1, -1, -1, -1];
  if (to === right || to === up || to === left || to === down) return true;
  return (
    [right, left].some((o) => floor.squares[o]?.next[1] === to || floor.squares[o]?.next[3] === to) ||
    [up, down].some((o) => floor.squares[o]?.next[0] === to || floor.squares[o]?.next[2] === to)
  );
}
