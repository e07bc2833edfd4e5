import type { CheckFloor } from './raster.ts';

/** One thing that breaks: what, in which pour (from 1), where (m), and the figures that say so (min, m, m², L). */
export interface SpreadBreak {
  readonly code: string;
  readonly pour?: number;
  readonly at?: readonly [number, number];
  readonly figures: Readonly<Record<string, number>>;
}

/** Where a square lies, m. */
export const placeOf = (floor: CheckFloor, s: number): [number, number] => [
  floor.squares[s]?.x ?? 0,
  floor.squares[s]?.y ?? 0,
];
