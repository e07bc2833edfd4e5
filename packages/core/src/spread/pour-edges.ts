import type { FloorSquares } from './floor-squares.ts';
import type { Point } from './types.ts';

/** One closed line round squares of a pour, with what lies beyond each of its sides: a pour or −1. */
export interface LatticeRing {
  readonly points: readonly Point[];
  /** beyond[k]: across the side from points[k] to points[k + 1]. */
  readonly beyond: readonly number[];
}

/**
 * Lines round each pour along the squares' sides, the floor on the left. Squares off the floor that touch it belong
 * to the neighbour that takes their slivers, so that clipping to the floor afterwards loses nothing.
 */
export function latticeRings(squares: FloorSquares, pourOf: Int32Array, pours: number): LatticeRing[][] {
  const { columns, rows, at, minX, minY, cellM } = squares;
  // one row of squares more on every side for slivers
  const wide = columns + 2;
  const high = rows + 2;
  const owner = new Int32Array(wide * high).fill(-1);
  const pourAt = (i: number, j: number): number => {
    const square = i >= 0 && j >= 0 && i < columns && j < rows ? (at[j * columns + i] as number) : -1;
    return square < 0 ? -1 : (pourOf[square] as number);
  };
  const around = [
    [0, 0],
    [-1, 0],
    [1, 0],
    [0, -1],
    [0, 1],
    [-1, -1],
    [1, -1],
    [-1, 1],
    [1, 1],
  ] as const;
  for (let j = -1; j <= rows; j++) {
    for (let i = -1; i <= columns; i++) {
      const found = around.map(([di, dj]) => pourAt(i + di, j + dj)).find((pour) => pour >= 0);
      if (found !== undefined) owner[(j + 1) * wide + i + 1] = found;
    }
  }
  const ownerAt = (i: number, j: number): number =>
    i >= -1 && j >= -1 && i <= columns && j <= rows ? (owner[(j + 1) * wide + i + 1] as number) : -1;
  const sides: Map<number, { to: number; beyond: number }[]>[] = Array.from({ length: pours }, () => new Map());
  const corner = (i: number, j: number): number => (j + 2) * (wide + 2) + i + 2;
  for (let j = -1; j <= rows; j++) {
    for (let i = -1; i <= columns; i++) {
      const own = ownerAt(i, j);
      if (own < 0) continue;
      const steps = [
        [i, j, i + 1, j, i, j - 1],
        [i + 1, j, i + 1, j + 1, i + 1, j],
        [i + 1, j + 1, i, j + 1, i, j + 1],
        [i, j + 1, i, j, i - 1, j],
      ] as const;
      for (const [ai, aj, bi, bj, ni, nj] of steps) {
        const beyond = ownerAt(ni, nj);
        if (beyond === own) continue;
        const from = corner(ai, aj);
        const list = sides[own]?.get(from);
        const side = { to: corner(bi, bj), beyond };
        if (list) list.push(side);
        else sides[own]?.set(from, [side]);
      }
    }
  }
  const pointOf = (c: number): Point => [
    minX + ((c % (wide + 2)) - 2) * cellM,
    minY + (Math.floor(c / (wide + 2)) - 2) * cellM,
  ];
  return sides.map((open) => {
    const rings: LatticeRing[] = [];
    for (const start of [...open.keys()].sort((a, b) => a - b)) {
      while ((open.get(start)?.length ?? 0) > 0) {
        const points: Point[] = [];
        const beyond: number[] = [];
        let here = start;
        let came = 0;
        for (;;) {
          const list = open.get(here) as { to: number; beyond: number }[];
          // where two corners touch, turn left: the pieces stay apart
          const pick = list.length > 1 && points.length > 0 ? leftTurn(list, here, came, wide + 2) : 0;
          const [side] = list.splice(pick, 1) as [{ to: number; beyond: number }];
          points.push(pointOf(here));
          beyond.push(side.beyond);
          came = here;
          here = side.to;
          if (here === start) break;
        }
        rings.push({ points, beyond });
      }
    }
    return rings;
  });
}

function leftTurn(list: readonly { to: number }[], here: number, came: number, width: number): number {
  const dx = (here % width) - (came % width);
  const dy = Math.floor(here / width) - Math.floor(came / width);
  const left = list.findIndex(({ to }) => {
    const ex = (to % width) - (here % width);
    const ey = Math.floor(to / width) - Math.floor(here / width);
    return dx * ey - dy * ex > 0;
  });
  return Math.max(0, left);
}
