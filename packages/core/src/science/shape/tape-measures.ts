import type { Point } from './polygon.ts';

/** What somebody taped, or assumed, in a room whose corners are counted from 0 counter-clockwise. */
export type TapeMeasure =
  /** A side or diagonal, m. */
  | {
      readonly kind: 'distance';
      readonly from: number;
      readonly to: number;
      readonly length: number;
      readonly deviation: number;
    }
  /** How far a corner lies to the left of the line from one corner to another, m; negative to its right. */
  | {
      readonly kind: 'offset';
      readonly corner: number;
      readonly from: number;
      readonly to: number;
      readonly length: number;
      readonly deviation: number;
    }
  /** The angle inside the room at a corner, rad. An assumed one is weighed like a reading and stated aloud. */
  | {
      readonly kind: 'angle';
      readonly corner: number;
      readonly angle: number;
      readonly deviation: number;
      readonly assumed: boolean;
    };

/** Deviation of a corner that only looks square: half a degree (common practice, no source). */
export const LOOKS_SQUARE = Math.PI / 360;

/** A corner assumed square. `turn` is a quarter for a corner of a plain room, three quarters for a re-entrant one. */
export const squareCorner = (corner: number, turn: 'quarter' | 'three quarters' = 'quarter'): TapeMeasure => ({
  kind: 'angle',
  corner,
  angle: turn === 'quarter' ? Math.PI / 2 : (3 * Math.PI) / 2,
  deviation: LOOKS_SQUARE,
  assumed: true,
});

export const cornersOf = (measure: TapeMeasure): readonly number[] => {
  if (measure.kind === 'distance') return [measure.from, measure.to];
  return measure.kind === 'offset' ? [measure.corner, measure.from, measure.to] : [measure.corner];
};

/** How much a measure changes with x and y of one corner. */
export interface Slope {
  readonly corner: number;
  readonly x: number;
  readonly y: number;
}

/** A measure as the corners would give it: computed less observed, and its slopes. */
export interface Compared {
  readonly residual: number;
  readonly slopes: readonly Slope[];
}

const QUARTERS = 2 * Math.PI;
const wrapped = (angle: number): number => angle - QUARTERS * Math.round(angle / QUARTERS);

export function compare(measure: TapeMeasure, corners: readonly Point[]): Compared {
  const at = (corner: number): Point => corners[corner % corners.length] as Point;
  if (measure.kind === 'distance') {
    const [a, b] = [at(measure.from), at(measure.to)];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(dx, dy);
    const [ux, uy] = [dx / length, dy / length];
    return {
      residual: length - measure.length,
      slopes: [
        { corner: measure.from, x: -ux, y: -uy },
        { corner: measure.to, x: ux, y: uy },
      ],
    };
  }
  if (measure.kind === 'offset') {
    const [p, a, b] = [at(measure.corner), at(measure.from), at(measure.to)];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(dx, dy);
    const [nx, ny] = [-dy / length, dx / length];
    const share = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (length * length);
    return {
      residual: nx * (p[0] - a[0]) + ny * (p[1] - a[1]) - measure.length,
      slopes: [
        { corner: measure.corner, x: nx, y: ny },
        { corner: measure.from, x: -(1 - share) * nx, y: -(1 - share) * ny },
        { corner: measure.to, x: -share * nx, y: -share * ny },
      ],
    };
  }
  const count = corners.length;
  const [before, after] = [(measure.corner + count - 1) % count, (measure.corner + 1) % count];
  const [p, q, r] = [at(measure.corner), at(before), at(after)];
  const [bx, by] = [q[0] - p[0], q[1] - p[1]];
  const [ax, ay] = [r[0] - p[0], r[1] - p[1]];
  const [b2, a2] = [bx * bx + by * by, ax * ax + ay * ay];
  return {
    residual: wrapped(Math.atan2(by, bx) - Math.atan2(ay, ax) - measure.angle),
    slopes: [
      { corner: before, x: -by / b2, y: bx / b2 },
      { corner: after, x: ay / a2, y: -ax / a2 },
      { corner: measure.corner, x: by / b2 - ay / a2, y: ax / a2 - bx / b2 },
    ],
  };
}
