import { clippedAreas } from './clip-areas.ts';
import { boxOf, distanceToSegment, insideRing, segmentsMeet } from './geometry.ts';
import { handsOf, minutesOnPiece } from './hands.ts';
import { type Lattice, type Segment, segmentsByCell } from './near-segments.ts';
import { clearWidth, PASSAGE_M, WIDTH_ROUNDING_M } from './passage.ts';
import type { Point, SpreadCase } from './types.ts';

/** Share of a square by which a middle is shifted up and right where it matters on which side of a line it lies. */
const NUDGE = 1e-5;

/** The floor cut into squares as wide as a lane; all arrays by square, links by 4·square + side (east, north, west, south). */
export interface FloorSquares extends Lattice {
  readonly count: number;
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
 * counts the floor inside it, so that litres add up to the drawn area; edges and narrow passages are measured too.
 */
export function floorSquares(question: SpreadCase, areas: 'whole' | 'clipped'): FloorSquares {
  const lattice = latticeOf(question);
  const { minX, minY, cellM, columns } = lattice;
  const { at, cells } = squaresOnFloor(question, lattice);
  const count = cells.length;
  const column = Int32Array.from(cells, (cell) => cell % columns);
  const row = Int32Array.from(cells, (cell) => Math.floor(cell / columns));
  const x = Float64Array.from(column, (i) => minX + (i + 0.5) * cellM);
  const y = Float64Array.from(row, (j) => minY + (j + 0.5) * cellM);
  // a line drawn right through the middles of squares passes them on one side
  const beside = { x: x.map((middle) => middle + NUDGE * cellM), y: y.map((middle) => middle + NUDGE * cellM) };
  const { link, stopLine } = links(question, lattice, at, cells, beside.x, beside.y);
  const narrow = new Uint8Array(4 * count);
  const edgeM = new Float64Array(count);
  let areaM2 = new Float64Array(count).fill(cellM * cellM);
  if (areas === 'clipped') {
    areaM2 = Float64Array.from(clippedAreas(question, lattice, at, count));
    for (let side = 0; side < 4 * count; side++) {
      if ((link[side] as number) < 0) edgeM[side >> 2] = (edgeM[side >> 2] as number) + cellM;
    }
    markNarrow(question, link, beside.x, beside.y, narrow);
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
  return {
    ...lattice,
    count,
    column,
    row,
    x,
    y,
    at,
    link,
    free: Uint8Array.from(stopLine, (line) => (line >= 0 ? 1 : 0)),
    stopLine,
    narrow,
    areaM2,
    litres,
    edgeM,
    minutes,
    doors: question.exits.map(({ a, b }) => squaresAtDoor(x, y, a, b, 0.75 * cellM)),
    station: 'point' in question.mixAt ? squareUnder(question.mixAt.point, lattice, at) : -1,
  };
}

function latticeOf(question: SpreadCase): Lattice {
  const { cellM } = question;
  const [minX, minY, maxX, maxY] = boxOf(question.outline);
  // a box that is a whole number of squares up to rounding does not get one more
  const columns = Math.max(0, Math.ceil((maxX - minX) / cellM - 1e-6));
  const rows = Math.max(0, Math.ceil((maxY - minY) / cellM - 1e-6));
  return { minX, minY, cellM, columns, rows };
}

/** Squares whose centre lies on the floor and not on a part that is not spread today. */
function squaresOnFloor(question: SpreadCase, { minX, minY, cellM, columns, rows }: Lattice) {
  const away = [...question.holes, ...(question.done ?? []).map(({ ring }) => ring)];
  const at = new Int32Array(columns * rows).fill(-1);
  const cells: number[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const x = minX + (i + 0.5) * cellM;
      const y = minY + (j + 0.5) * cellM;
      if (!insideRing(x, y, question.outline) || away.some((ring) => insideRing(x, y, ring))) continue;
      at[j * columns + i] = cells.length;
      cells.push(j * columns + i);
    }
  }
  return { at, cells };
}

/** Neighbours, cut by walls, and the stop line between them. */
function links(
  question: SpreadCase,
  lattice: Lattice,
  at: Int32Array,
  cells: readonly number[],
  x: Float64Array,
  y: Float64Array,
) {
  const { columns } = lattice;
  const link = new Int32Array(4 * cells.length).fill(-1);
  const stopLine = new Int32Array(4 * cells.length).fill(-1);
  const stops: Segment[] = question.stopLines.map(({ a, b }) => [a, b]);
  const wallsNear = segmentsByCell(question.walls, lattice);
  const stopsNear = segmentsByCell(stops, lattice);
  cells.forEach((cell, s) => {
    for (let side = 0; side < 2; side++) {
      const last = side === 0 && cell % columns === columns - 1;
      const other = last ? -1 : (at[cell + (side === 0 ? 1 : columns)] ?? -1);
      if (other < 0) continue;
      const p: Point = [x[s] as number, y[s] as number];
      const q: Point = [x[other] as number, y[other] as number];
      const crosses = (segments: readonly Segment[]) => (k: number) => segmentsMeet(p, q, ...(segments[k] as Segment));
      if (wallsNear(cell).some(crosses(question.walls))) continue;
      link[4 * s + side] = other;
      link[4 * other + side + 2] = s;
      const stop = stopsNear(cell).find(crosses(stops)) ?? -1;
      stopLine[4 * s + side] = stop;
      stopLine[4 * other + side + 2] = stop;
    }
  });
  return { link, stopLine };
}

/** Marks the links a person does not fit through. */
function markNarrow(
  question: SpreadCase,
  link: Int32Array,
  x: Float64Array,
  y: Float64Array,
  narrow: Uint8Array,
): void {
  const needed = question.passageM ?? PASSAGE_M;
  for (let s = 0; s < x.length; s++) {
    for (let side = 0; side < 2; side++) {
      const other = link[4 * s + side] as number;
      if (other < 0) continue;
      const p: Point = [x[s] as number, y[s] as number];
      const q: Point = [x[other] as number, y[other] as number];
      if (clearWidth(question, p, q, needed) >= needed - WIDTH_ROUNDING_M) continue;
      narrow[4 * s + side] = 1;
      narrow[4 * other + side + 2] = 1;
    }
  }
}

function squaresAtDoor(x: Float64Array, y: Float64Array, a: Point, b: Point, within: number): Int32Array {
  const squares: number[] = [];
  for (let s = 0; s < x.length; s++) {
    if (distanceToSegment(x[s] as number, y[s] as number, a, b) <= within + 1e-9) squares.push(s);
  }
  return Int32Array.from(squares);
}

function squareUnder([px, py]: Point, { minX, minY, cellM, columns, rows }: Lattice, at: Int32Array): number {
  const i = Math.floor((px - minX) / cellM);
  const j = Math.floor((py - minY) / cellM);
  return i >= 0 && j >= 0 && i < columns && j < rows ? (at[j * columns + i] as number) : -1;
}
