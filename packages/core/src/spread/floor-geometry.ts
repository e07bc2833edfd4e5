import { clippedAreas } from './clip-areas.ts';
import { boxOf, distanceToSegment, insideRing, segmentsMeet } from './geometry.ts';
import { type Lattice, type Segment, segmentsByCell } from './near-segments.ts';
import { blockersOf, clearWidth, PASSAGE_M, WIDTH_ROUNDING_M } from './passage.ts';
import type { Point, SpreadCase } from './types.ts';
import { reachIn, waysOut, wayToStation } from './ways-out.ts';

/** Share of a square by which a middle is shifted up and right where it matters on which side of a line it lies. */
const NUDGE = 1e-5;

/**
 * The floor cut into squares as wide as a lane, without what is spread on it; all arrays by square, links by
 * 4·square + side (east, north, west, south).
 */
export interface FloorGeometry extends Lattice {
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
  readonly edgeM: Float64Array;
  /** Squares of each exit. */
  readonly doors: readonly Int32Array[];
  /** Mixing station on the floor, −1 when it stands outside. */
  readonly station: number;
  /** Squares a person may end on, each once; see `waysOut`. */
  readonly doorSquares: Int32Array;
  /** Way from a door to a mixing station on the floor: spread last of all, so that it stays dry for every pail. */
  readonly lastWay: Int32Array;
}

/** Floors remembered: the coats, hours and batches of one job share them. */
const MOST_KEPT = 4;
const kept = new Map<string, FloorGeometry>();

/** Geometry of a case; the same drawing gives the same object, as long as it is among the last few asked for. */
export function floorGeometry(question: SpreadCase, areas: 'whole' | 'clipped'): FloorGeometry {
  const { outline, holes, walls, exits, stopLines, mixAt, cellM, passageM, done } = question;
  const station = 'point' in mixAt ? mixAt.point : null;
  const drawing = JSON.stringify([areas, cellM, passageM, outline, holes, walls, exits, stopLines, station, done]);
  const before = kept.get(drawing);
  const geometry = before ?? geometryOf(question, areas);
  kept.delete(drawing);
  kept.set(drawing, geometry);
  const [oldest] = kept.keys();
  if (oldest !== undefined && kept.size > MOST_KEPT) kept.delete(oldest);
  return geometry;
}

function geometryOf(question: SpreadCase, areas: 'whole' | 'clipped'): FloorGeometry {
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
  let areaM2: Float64Array = new Float64Array(count).fill(cellM * cellM);
  if (areas === 'clipped') {
    areaM2 = clippedAreas(question, lattice, at, count);
    for (let side = 0; side < 4 * count; side++) {
      if ((link[side] as number) < 0) edgeM[side >> 2] = (edgeM[side >> 2] as number) + cellM;
    }
    markNarrow(question, link, beside.x, beside.y, narrow);
  }
  const free = new Uint8Array(4 * count);
  for (let side = 0; side < free.length; side++) free[side] = (stopLine[side] as number) >= 0 ? 1 : 0;
  const doors = question.exits.map(({ a, b }) => squaresAtDoor(x, y, a, b, 0.75 * cellM));
  const station = 'point' in question.mixAt ? squareUnder(question.mixAt.point, lattice, at) : -1;
  const doorSquares = waysOut(doors, question);
  reachIn(count, link, narrow, doorSquares);
  return {
    ...lattice,
    count,
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
    edgeM,
    doors,
    station,
    doorSquares,
    lastWay: wayToStation(station, link, narrow, doorSquares),
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
  const blockers = blockersOf(question);
  for (let s = 0; s < x.length; s++) {
    for (let side = 0; side < 2; side++) {
      const other = link[4 * s + side] as number;
      if (other < 0) continue;
      const p: Point = [x[s] as number, y[s] as number];
      const q: Point = [x[other] as number, y[other] as number];
      if (clearWidth(blockers, question.cellM, p, q, needed) >= needed - WIDTH_ROUNDING_M) continue;
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
