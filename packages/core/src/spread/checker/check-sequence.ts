import type { DayTable, SpreadCase, SpreadSolution } from '../types.ts';
import { type CheckFloor, rasterOf } from './raster.ts';
import { waysOver } from './ways.ts';
import { narrowSteps } from './width.ts';

/** One thing that breaks: what, in which pour (from 1), where (m), and the figures that say so (min, m, m², L). */
export interface SpreadBreak {
  readonly code: string;
  readonly pour?: number;
  readonly at?: readonly [number, number];
  readonly figures: Readonly<Record<string, number>>;
}

export interface SequenceReport {
  readonly ok: boolean;
  readonly breaks: readonly SpreadBreak[];
  readonly maxAgeMin: number;
  readonly p95AgeMin: number;
  readonly seamM: number;
  readonly coldM: number;
  readonly lateMin: number;
  readonly walkM: number;
  readonly minutes: number;
  readonly pours: number;
  /** Pours that fall into pieces that do not touch. */
  readonly splitPours: number;
  readonly leftoverL: number;
}

/**
 * Judges a sequence of pours, the planner's or one drawn by hand, with its own raster, clock and walks.
 *
 * Looks for: squares left out, spread twice or not on the floor; pours larger than a batch (by more than half a square);
 * pours past the working time; edges closed after the open time; people painted in; moves without a dry way; an end
 * that is not at an exit; a covered mixing station. Walking is the way people must really take.
 */
export function checkSequence(
  question: SpreadCase,
  solution: SpreadSolution,
  areas: 'whole' | 'clipped',
): SequenceReport {
  const floor = rasterOf(question, areas);
  const breaks: SpreadBreak[] = [];
  const pours = coverage(floor, solution, breaks);
  const needed = question.passageM ?? 0.45;
  const narrow = areas === 'clipped' ? narrowSteps(question, floor, needed) : new Map<number, number>();
  litres(question, floor, pours, breaks);
  const sequence = pours.flat();
  dryReach(question, floor, sequence, narrow, breaks);
  const { time, walkM, minutes, lateMin } = replay(question, floor, pours, narrow, breaks);
  station(question, floor, pours, breaks);
  const edges = openEdges(question, floor, pours, time, breaks);
  const used = pours.flat().reduce((sum, s) => sum + (floor.squares[s]?.litres ?? 0), 0);
  return {
    ok: breaks.length === 0,
    breaks,
    ...edges,
    lateMin,
    walkM,
    minutes,
    pours: pours.length,
    splitPours: pours.filter((pour) => pieces(floor, pour) > 1).length,
    leftoverL: pours.length * question.batch.litres - used,
  };
}

/** Squares of each pour by number; what is missing, double or off the floor is told. */
function coverage(floor: CheckFloor, solution: SpreadSolution, breaks: SpreadBreak[]): number[][] {
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

function litres(question: SpreadCase, floor: CheckFloor, pours: readonly number[][], breaks: SpreadBreak[]): void {
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

/** Read backwards, every square must be at an exit or touch one spread later; otherwise somebody stands on an island. */
function dryReach(
  question: SpreadCase,
  floor: CheckFloor,
  sequence: readonly number[],
  narrow: ReadonlyMap<number, number>,
  breaks: SpreadBreak[],
): void {
  const last = sequence[sequence.length - 1];
  if (last === undefined) return;
  if (floor.squares[last]?.exits.length === 0) {
    breaks.push({ code: 'check/does-not-end-at-exit', at: placeOf(floor, last), figures: {} });
  }
  if (question.crew.spikedShoes === true) return;
  const later = new Uint8Array(floor.squares.length);
  for (let k = sequence.length - 1; k >= 0; k--) {
    const s = sequence[k] as number;
    const square = floor.squares[s];
    if (!square) continue;
    if (square.exits.length === 0) {
      const touching = square.next.map((o, way) => (o >= 0 && later[o] ? 4 * s + way : -1)).filter((step) => step >= 0);
      if (touching.length === 0) {
        breaks.push({ code: 'check/painted-in', at: [square.x, square.y], figures: { place: k + 1 } });
      } else if (touching.every((step) => narrow.has(step))) {
        const widthM = Math.max(...touching.map((step) => narrow.get(step) ?? 0));
        breaks.push({
          code: 'check/passage-too-narrow',
          at: [square.x, square.y],
          figures: { widthM, neededM: question.passageM ?? 0.45 },
        });
      }
    }
    later[s] = 1;
  }
}

/** The day as it goes: mixing, handing over, spreading and the walks people must take. */
function replay(
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
          } else {
            walkM += metres;
            // one square's step is part of spreading
            const walking = (metres - cellM) / crew.walkMPerMin;
            clockMin += walking;
          }
        }
      }
      if (n === 0) {
        mixed = Math.max(clockMin, crew.dedicatedMixer ? lastStart + batch.mixMin : clockMin + batch.mixMin);
        if (!crew.dedicatedMixer && k > 0 && before >= 0) mixed = clockMin + batch.mixMin;
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

/** A station on the floor must be dry, and joined to the pour by dry floor, whenever a batch is handed over. */
function station(question: SpreadCase, floor: CheckFloor, pours: readonly number[][], breaks: SpreadBreak[]): void {
  if (!('point' in question.mixAt)) return;
  const [px, py] = question.mixAt.point;
  const half = question.cellM / 2;
  const at = floor.squares.findIndex(({ x, y }) => Math.abs(x - px) <= half + 1e-9 && Math.abs(y - py) <= half + 1e-9);
  const covered = pours.findIndex((pour) => pour.includes(at));
  if (at >= 0 && covered >= 0 && covered < pours.length - 1) {
    breaks.push({
      code: 'check/station-covered',
      pour: covered + 1,
      at: [px, py],
      figures: { batchesAfter: pours.length - 1 - covered },
    });
  }
}

function openEdges(
  question: SpreadCase,
  floor: CheckFloor,
  pours: readonly number[][],
  time: Float64Array,
  breaks: SpreadBreak[],
) {
  const pourOf = new Int32Array(floor.squares.length).fill(-1);
  pours.forEach((pour, k) => {
    for (const s of pour) pourOf[s] = k;
  });
  const seams: number[] = [];
  let maxAgeMin = 0;
  let cold = 0;
  let worst: SpreadBreak | undefined;
  let worstOver = 0;
  floor.squares.forEach((square, s) => {
    for (const way of [0, 1] as const) {
      const o = square.next[way];
      if (o < 0 || square.stop[way] || pourOf[s] === -1 || pourOf[o] === -1) continue;
      const age = Math.abs((time[s] as number) - (time[o] as number));
      maxAgeMin = Math.max(maxAgeMin, age);
      if (pourOf[s] !== pourOf[o]) seams.push(age);
      const openMin = look(
        question.clock.openMin,
        question.clock.startMin + Math.min(time[s] as number, time[o] as number),
      );
      if (age <= openMin + 1e-9) continue;
      cold += 1;
      if (age - openMin > worstOver) {
        worstOver = age - openMin;
        worst = {
          code: 'check/open-edge',
          pour: 1 + Math.max(pourOf[s] as number, pourOf[o] as number),
          at: [square.x, square.y],
          figures: { ageMin: age, openMin },
        };
      }
    }
  });
  const coldM = cold * question.cellM;
  if (worst) breaks.push({ ...worst, figures: { ...worst.figures, coldM } });
  seams.sort((p, q) => p - q);
  const p95AgeMin = seams[Math.min(seams.length - 1, Math.floor(0.95 * seams.length))] ?? 0;
  return { maxAgeMin, p95AgeMin, seamM: seams.length * question.cellM, coldM };
}

function pieces(floor: CheckFloor, pour: readonly number[]): number {
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

/** Straight-line look-up in a day table, flat outside. */
function look(table: DayTable, minute: number): number {
  const after = table.findIndex(([at]) => at > minute);
  if (after === 0) return table[0]?.[1] ?? 0;
  if (after < 0) return table[table.length - 1]?.[1] ?? 0;
  const [m0, v0] = table[after - 1] as readonly [number, number];
  const [m1, v1] = table[after] as readonly [number, number];
  return v0 + ((minute - m0) / (m1 - m0)) * (v1 - v0);
}

const placeOf = (floor: CheckFloor, s: number): [number, number] => [
  floor.squares[s]?.x ?? 0,
  floor.squares[s]?.y ?? 0,
];
