import { boxOf } from './geometry.ts';
import type { Point } from './types.ts';

export type Segment = readonly [Point, Point];

/** A grid of squares: corner, side and numbers of columns and rows. */
export interface Lattice {
  readonly minX: number;
  readonly minY: number;
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
}

/**
 * Numbers of the segments whose box comes within a square and a half of a cell, by cell (row · columns + column), so
 * that a link asks only the few that can cross it.
 */
export function segmentsByCell(segments: readonly Segment[], lattice: Lattice): (cell: number) => readonly number[] {
  const { minX, minY, cellM, columns, rows } = lattice;
  const byCell = new Map<number, number[]>();
  segments.forEach((segment, number) => {
    const [loX, loY, hiX, hiY] = boxOf(segment);
    const i0 = Math.max(0, Math.floor((loX - minX) / cellM - 1.5));
    const i1 = Math.min(columns - 1, Math.floor((hiX - minX) / cellM + 1.5));
    const j0 = Math.max(0, Math.floor((loY - minY) / cellM - 1.5));
    const j1 = Math.min(rows - 1, Math.floor((hiY - minY) / cellM + 1.5));
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        const listed = byCell.get(j * columns + i);
        if (listed) listed.push(number);
        else byCell.set(j * columns + i, [number]);
      }
    }
  });
  const none: number[] = [];
  return (cell) => byCell.get(cell) ?? none;
}
