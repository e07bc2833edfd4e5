import { areaInBox, boxOf, distanceToSegment, insideRing, segmentsMeet } from './geometry.ts';
import { handsOf, minutesOnPiece } from './hands.ts';
import { clearWidth } from './passage.ts';
import type { Point, SpreadCase } from './types.ts';

/** East, north, west, south: the order of the four links of a square. */
export const SIDES: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/** The floor cut into squares as wide as a lane; all arrays by square, links by 4·square + side. */
export interface FloorSquares {
  readonly count: number;
  readonly cellM: number;
  readonly minX: number;
  readonly minY: number;
  readonly columns: number;
  readonly rows: number;
  readonly column: Int32Array;
  readonly row: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** row·columns + column → square, −1 where there is no floor. */
  readonly at: Int32Array;
  /** Neighbour or −1. */
  readonly link: Int32Array;
  /** 1: a stop line lies between the two; their ages need not match. */
  readonly free: Uint8Array;
  /** Which stop line that is, −1 for none. */
  readonly stopLine: Int32Array;
  /** 1: too narrow for a person, though the film ties in there. */
  readonly narrow: Uint8Array;
  readonly areaM2: Float64Array;
  readonly litres: Float64Array;
  readonly edgeM: Float64Array;
  /** Minutes the front stands on the square. */
  readonly minutes: Float64Array;
  /** Squares of each exit. */
  readonly doors: readonly Int32Array[];
  /** Mixing station on the floor, −1 when it stands outside. */
  readonly station: number;
}

/**
 * Squares of a case. `whole`: the instance format's rule, every square counts its full area. `clipped`: each square
 * counts the floor inside it, and slivers whose centre lies off the floor go to the neighbour, so litres add up
 * to the drawn area; edges and narrow passages are measured too.
 */
export function floorSquares(question: SpreadCase, areas: 'whole' | 'clipped'): FloorSquares {
  const h = question.cellM;
  const [minX, minY, maxX, maxY] = boxOf(question.outline);
  const columns = Math.max(0, Math.round((maxX - minX) / h + 0.499));
  const rows = Math.max(0, Math.round((maxY - minY) / h + 0.499));
  const done = question.done ?? [];
  const at = new Int32Array(columns * rows).fill(-1);
  const cells: number[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const cx = minX + (i + 0.5) * h;
      const cy = minY + (j + 0.5) * h;
      if (!insideRing(cx, cy, question.outline)) continue;
      if (question.holes.some((hole) => insideRing(cx, cy, hole))) continue;
      if (done.some(({ ring }) => insideRing(cx, cy, ring))) continue;
      at[j * columns + i] = cells.length;
      cells.push(j * columns + i);
    }
  }
  const count = cells.length;
  const column = Int32Array.from(cells, (cell) => cell % columns);
  const row = Int32Array.from(cells, (cell) => (cell / columns) | 0);
  const x = Float64Array.from(column, (i) => minX + (i + 0.5) * h);
  const y = Float64Array.from(row, (j) => minY + (j + 0.5) * h);
  const link = new Int32Array(4 * count).fill(-1);
  const free = new Uint8Array(4 * count);
  const stopLine = new Int32Array(4 * count).fill(-1);
  const narrow = new Uint8Array(4 * count);
  const walls = nearSegments(question.walls, columns, rows, minX, minY, h);
  const stopSegments = question.stopLines.map(({ a, b }) => [a, b] as const);
  const stops = nearSegments(stopSegments, columns, rows, minX, minY, h);
  for (let s = 0; s < count; s++) {
    for (let side = 0; side < 2; side++) {
      const i = (column[s] as number) + (side === 0 ? 1 : 0);
      const j = (row[s] as number) + (side === 1 ? 1 : 0);
      const other = i < columns && j < rows ? (at[j * columns + i] as number) : -1;
      if (other < 0) continue;
      const p: Point = [x[s] as number, y[s] as number];
      const q: Point = [x[other] as number, y[other] as number];
      if (walls.near(s, cells).some(([a, b]) => segmentsMeet(p, q, a, b))) continue;
      link[4 * s + side] = other;
      link[4 * other + side + 2] = s;
      const stop = stops.near(s, cells).find(([a, b]) => segmentsMeet(p, q, a, b));
      if (stop) {
        const line = stopSegments.indexOf(stop);
        stopLine[4 * s + side] = line;
        stopLine[4 * other + side + 2] = line;
        free[4 * s + side] = 1;
        free[4 * other + side + 2] = 1;
      }
    }
  }
  const areaM2 = new Float64Array(count).fill(h * h);
  const edgeM = new Float64Array(count);
  if (areas === 'clipped') {
    clipAreas(question, at, columns, rows, minX, minY, areaM2);
    const needed = question.passageM ?? 0.45;
    for (let s = 0; s < count; s++) {
      for (let side = 0; side < 4; side++) {
        const other = link[4 * s + side] as number;
        if (other < 0) {
          edgeM[s] = (edgeM[s] as number) + h;
        } else if (side < 2) {
          const width = clearWidth(
            question,
            [x[s] as number, y[s] as number],
            [x[other] as number, y[other] as number],
            needed,
          );
          if (width < needed) {
            narrow[4 * s + side] = 1;
            narrow[4 * other + side + 2] = 1;
          }
        }
      }
    }
  }
  const hands = handsOf(question.crew);
  const litres = new Float64Array(count);
  const minutes = new Float64Array(count);
  for (let s = 0; s < count; s++) {
    let perM2 = question.batch.litresPerM2;
    for (const { poly, factor } of question.batch.zones ?? []) {
      if (insideRing(x[s] as number, y[s] as number, poly)) perM2 *= factor;
    }
    litres[s] = (areaM2[s] as number) * perM2;
    minutes[s] = minutesOnPiece(hands, areaM2[s] as number, edgeM[s] as number);
  }
  const doors = question.exits.map(({ a, b }) => {
    const squares: number[] = [];
    for (let s = 0; s < count; s++) {
      if (distanceToSegment(x[s] as number, y[s] as number, a, b) <= 0.75 * h + 1e-9) squares.push(s);
    }
    return Int32Array.from(squares);
  });
  return {
    count,
    cellM: h,
    minX,
    minY,
    columns,
    rows,
    column,
    row,
    x,
    y,
    at,
    link,
    free,
    stopLine,
    narrow,
    areaM2,
    litres,
    edgeM,
    minutes,
    doors,
    station: 'point' in question.mixAt ? squareUnder(question.mixAt.point, at, columns, rows, minX, minY, h) : -1,
  };
}

function squareUnder(
  p: Point,
  at: Int32Array,
  columns: number,
  rows: number,
  minX: number,
  minY: number,
  h: number,
): number {
  const i = Math.floor((p[0] - minX) / h);
  const j = Math.floor((p[1] - minY) / h);
  return i >= 0 && j >= 0 && i < columns && j < rows ? (at[j * columns + i] as number) : -1;
}

type Segment = readonly [Point, Point];

/** Segments by the cells their boxes touch, so a link asks only the few that can cross it. */
function nearSegments(
  segments: readonly Segment[],
  columns: number,
  rows: number,
  minX: number,
  minY: number,
  h: number,
) {
  const byCell = new Map<number, Segment[]>();
  for (const segment of segments) {
    const [loX, loY, hiX, hiY] = boxOf(segment);
    const i0 = Math.max(0, Math.floor((loX - minX) / h - 1.5));
    const i1 = Math.min(columns - 1, Math.floor((hiX - minX) / h + 1.5));
    const j0 = Math.max(0, Math.floor((loY - minY) / h - 1.5));
    const j1 = Math.min(rows - 1, Math.floor((hiY - minY) / h + 1.5));
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        const listed = byCell.get(j * columns + i);
        if (listed) listed.push(segment);
        else byCell.set(j * columns + i, [segment]);
      }
    }
  }
  const none: Segment[] = [];
  return { near: (square: number, cells: readonly number[]) => byCell.get(cells[square] as number) ?? none };
}

/** Boundary squares count the floor inside them; slivers of squares that do not exist go to a neighbour that does. */
function clipAreas(
  question: SpreadCase,
  at: Int32Array,
  columns: number,
  rows: number,
  minX: number,
  minY: number,
  areaM2: Float64Array,
): void {
  const h = question.cellM;
  const taken = [...question.holes, ...(question.done ?? []).map(({ ring }) => ring)];
  const boundary = new Set<number>();
  for (const ring of [question.outline, ...taken]) {
    for (let k = 0; k < ring.length; k++) {
      const [loX, loY, hiX, hiY] = boxOf([ring[k] as Point, ring[(k + 1) % ring.length] as Point]);
      const i1 = Math.min(columns - 1, Math.floor((hiX - minX) / h));
      const j1 = Math.min(rows - 1, Math.floor((hiY - minY) / h));
      for (let j = Math.max(0, Math.ceil((loY - minY) / h) - 1); j <= j1; j++) {
        for (let i = Math.max(0, Math.ceil((loX - minX) / h) - 1); i <= i1; i++) boundary.add(j * columns + i);
      }
    }
  }
  for (const cell of [...boundary].sort((a, b) => a - b)) {
    const i = cell % columns;
    const j = (cell / columns) | 0;
    const box = [minX + i * h, minY + j * h, minX + (i + 1) * h, minY + (j + 1) * h] as const;
    let area = areaInBox(question.outline, ...box);
    for (const ring of taken) area -= areaInBox(ring, ...box);
    const square = at[cell] as number;
    if (square >= 0) areaM2[square] = (areaM2[square] as number) - h * h + area;
    else if (area > 1e-9) {
      const neighbour = [
        [i - 1, j],
        [i + 1, j],
        [i, j - 1],
        [i, j + 1],
        [i - 1, j - 1],
        [i + 1, j - 1],
        [i - 1, j + 1],
        [i + 1, j + 1],
      ]
        .map(([a, b]) =>
          (a as number) >= 0 && (b as number) >= 0 && (a as number) < columns && (b as number) < rows
            ? (at[(b as number) * columns + (a as number)] as number)
            : -1,
        )
        .find((s) => s >= 0);
      if (neighbour !== undefined) areaM2[neighbour] = (areaM2[neighbour] as number) + area;
    }
  }
}
