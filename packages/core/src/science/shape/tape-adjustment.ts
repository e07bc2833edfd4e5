import { inverse, Matrix, SingularValueDecomposition, solve } from 'ml-matrix';
import type { Point, Ring } from './polygon.ts';
import { compare, type TapeMeasure } from './tape-measures.ts';

/**
 * Least squares over the corners of a room. The first corner stays at the origin and the first wall on the x axis:
 * a room has no place or direction of its own, so 2 n - 3 coordinates are unknown.
 */
const ROUNDS = 300;
/** Steps relative to the size of the room: below the first the fit has settled, below the second only rounding moves. */
const SETTLED = 1e-12;
const ROUNDING = 1e-9;
/** A direction this weak beside the strongest is not fixed by any measure. */
const WEAK = 1e-6;

export const unknownsOf = (count: number): number => 2 * count - 3;

/** Column of a coordinate among the unknowns; undefined where it is held. */
export function columnOf(corner: number, axis: 'x' | 'y'): number | undefined {
  if (corner === 0) return undefined;
  if (corner === 1) return axis === 'x' ? 0 : undefined;
  return 1 + 2 * (corner - 2) + (axis === 'x' ? 0 : 1);
}

export interface Weighed {
  /** Residual of each measure over its deviation. */
  readonly residuals: readonly number[];
  /** One row a measure, one column an unknown, each over the deviation of the measure. */
  readonly slopes: Matrix;
}

export function weigh(measures: readonly TapeMeasure[], corners: Ring): Weighed {
  const slopes = Matrix.zeros(measures.length, unknownsOf(corners.length));
  const residuals = measures.map((measure, row) => {
    const { residual, slopes: own } = compare(measure, corners);
    for (const { corner, x, y } of own) {
      const [across, up] = [columnOf(corner, 'x'), columnOf(corner, 'y')];
      if (across !== undefined) slopes.set(row, across, slopes.get(row, across) + x / measure.deviation);
      if (up !== undefined) slopes.set(row, up, slopes.get(row, up) + y / measure.deviation);
    }
    return residual / measure.deviation;
  });
  return { residuals, slopes };
}

const squaresOf = (residuals: readonly number[]): number => residuals.reduce((sum, r) => sum + r * r, 0);

function moved(corners: Ring, step: Matrix): Ring {
  const by = (corner: number, axis: 'x' | 'y'): number => {
    const column = columnOf(corner, axis);
    return column === undefined ? 0 : step.get(column, 0);
  };
  return corners.map(([x, y], i): Point => [x + by(i, 'x'), y + by(i, 'y')]);
}

/**
 * Moves the corners until the squared weighed residuals are least: Gauss-Newton steps, damped while they do not help.
 * A direction that nothing fixes stays where the start left it.
 */
export function settle(measures: readonly TapeMeasure[], start: Ring): Ring {
  let corners = start;
  let damping = 1e-3;
  let now = weigh(measures, corners);
  let squares = squaresOf(now.residuals);
  for (let round = 0; round < ROUNDS; round++) {
    const across = now.slopes.transpose();
    const normal = across.mmul(now.slopes);
    const pull = across.mmul(Matrix.columnVector([...now.residuals])).mul(-1);
    const floor = 1e-12 * Math.max(1e-300, ...normal.diagonal());
    for (let i = 0; i < normal.rows; i++) {
      const own = normal.get(i, i);
      normal.set(i, i, own + damping * own + floor);
    }
    const step = solve(normal, pull);
    const next = moved(corners, step);
    const weighed = weigh(measures, next);
    const then = squaresOf(weighed.residuals);
    const size = Math.max(...step.to1DArray().map(Math.abs)) / Math.max(1, ...corners.flat().map(Math.abs));
    if (!(then <= squares)) {
      // A step this small that helps no more is rounding, not the way down.
      if (size < ROUNDING || damping > 1e12) return corners;
      damping *= 10;
      continue;
    }
    [corners, now, squares] = [next, weighed, then];
    if (size < SETTLED) return corners;
    damping = Math.max(damping / 10, 1e-14);
  }
  return corners;
}

/** How many unknowns the measures fix at these corners. */
export function fixedBy(slopes: Matrix): number {
  if (slopes.rows === 0) return 0;
  const values = new SingularValueDecomposition(slopes, { autoTranspose: true }).diagonal;
  const strongest = Math.max(...values);
  return values.filter((value) => value > WEAK * strongest).length;
}

export interface Spread {
  /** Covariance of the unknowns, m². */
  readonly covariance: Matrix;
  /** Row of an unknown, column of a measure: change of the unknown for one deviation of the measure, m. */
  readonly response: Matrix;
}

export function spreadOf(slopes: Matrix): Spread {
  const across = slopes.transpose();
  const covariance = inverse(across.mmul(slopes));
  return { covariance, response: covariance.mmul(across) };
}
