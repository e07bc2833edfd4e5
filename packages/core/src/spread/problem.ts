import { batchesNeeded } from './cut-pours.ts';
import { type FloorSquares, floorSquares } from './floor-squares.ts';
import { handsOf } from './hands.ts';
import type { SpreadCase } from './types.ts';

/** A case made ready for planning: its squares and the numbers every candidate needs. */
export interface SpreadProblem {
  readonly question: SpreadCase;
  readonly squares: FloorSquares;
  readonly batchLitres: number;
  readonly leastBatches: number;
  /** m²/min of the whole front. */
  readonly frontM2PerMin: number;
  /** Squares a person may end on, each once; see `waysOut`. */
  readonly doorSquares: Int32Array;
  /** Way from a door to a mixing station on the floor: spread last of all, so that it stays dry for every pail. */
  readonly lastWay: Int32Array;
}

/** `whole`: the instance format's own squares; `clipped`: the product's. */
export function spreadProblem(question: SpreadCase, areas: 'whole' | 'clipped'): SpreadProblem {
  const squares = floorSquares(question, areas);
  const doors = new Set<number>();
  for (const door of waysOut(squares, question)) for (const square of door) doors.add(square);
  let minutes = 0;
  let area = 0;
  for (let s = 0; s < squares.count; s++) {
    minutes += squares.minutes[s] as number;
    area += squares.areaM2[s] as number;
  }
  const doorSquares = Int32Array.from([...doors].sort((a, b) => a - b));
  reachIn(squares, doorSquares);
  return {
    question,
    squares,
    batchLitres: question.batch.litres,
    leastBatches: batchesNeeded(squares, question.batch.litres),
    frontM2PerMin: minutes > 0 ? area / minutes : handsOf(question.crew).spreadM2PerMin,
    doorSquares,
    lastWay: wayToStation(squares, doorSquares),
  };
}

/**
 * Doors the crew can count on: all that lead outside, for one can walk from one to the other. Without any, only the
 * widest of the inside ones: through a second one there may be no way back to the rest of the floor.
 */
function waysOut(squares: FloorSquares, { exits }: SpreadCase): readonly Int32Array[] {
  const outside = squares.doors.filter((door, k) => exits[k]?.outside === true && door.length > 0);
  if (outside.length > 0) return outside;
  const widest = [...squares.doors].sort((a, b) => b.length - a.length)[0];
  return widest ? [widest] : [];
}

/**
 * A square nobody can stand on, such as the tip of a slanted corner, is spread from the one beside it; but nobody goes
 * through it. Opens the narrow links to such squares and closes those between two of them.
 */
function reachIn({ count, link, narrow }: FloorSquares, doorSquares: Int32Array): void {
  const standing = new Uint8Array(count);
  const stack = [...doorSquares];
  for (const s of stack) standing[s] = 1;
  for (let s = stack.pop(); s !== undefined; s = stack.pop()) {
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other < 0 || standing[other] || narrow[side]) continue;
      standing[other] = 1;
      stack.push(other);
    }
  }
  for (let side = 0; side < 4 * count; side++) {
    const other = link[side] as number;
    if (other < 0 || (standing[side >> 2] && standing[other])) continue;
    narrow[side] = standing[side >> 2] || standing[other] ? 0 : 1;
  }
}

/** Shortest way over the squares from a door to the station, door first; empty when it stands outside or nowhere. */
function wayToStation(squares: FloorSquares, doorSquares: Int32Array): Int32Array {
  const { station, link, narrow } = squares;
  if (station < 0) return new Int32Array(0);
  const doors = new Set(doorSquares);
  const from = new Map<number, number>([[station, -1]]);
  const queue = [station];
  for (let k = 0; k < queue.length; k++) {
    const s = queue[k] as number;
    if (doors.has(s)) {
      const way: number[] = [];
      for (let at = s; at >= 0; at = from.get(at) as number) way.push(at);
      return Int32Array.from(way);
    }
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other < 0 || narrow[side] || from.has(other)) continue;
      from.set(other, s);
      queue.push(other);
    }
  }
  return new Int32Array(0);
}
