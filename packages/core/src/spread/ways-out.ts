import type { SpreadCase } from './types.ts';

/**
 * Doors the crew can count on: all that lead outside, for one can walk from one to the other. Without any, only the
 * widest of the inside ones: through a second one there may be no way back to the rest of the floor.
 */
export function waysOut(doors: readonly Int32Array[], { exits }: SpreadCase): Int32Array {
  const outside = doors.filter((door, k) => exits[k]?.outside === true && door.length > 0);
  const widest = [...doors].sort((a, b) => b.length - a.length)[0];
  const counted = outside.length > 0 ? outside : widest ? [widest] : [];
  const squares = new Set(counted.flatMap((door) => [...door]));
  return Int32Array.from([...squares].sort((a, b) => a - b));
}

/**
 * A square nobody can stand on, such as the tip of a slanted corner, is spread from the one beside it; but nobody goes
 * through it. Opens the narrow links to such squares and closes those between two of them.
 */
export function reachIn(count: number, link: Int32Array, narrow: Uint8Array, doorSquares: Int32Array): void {
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
export function wayToStation(
  station: number,
  link: Int32Array,
  narrow: Uint8Array,
  doorSquares: Int32Array,
): Int32Array {
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
