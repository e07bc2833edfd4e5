import { inverse, Matrix, solve } from 'ml-matrix';

/**
 * Damped least squares (Levenberg-Marquardt) for a handful of unknowns, with the covariance of what it finds.
 *
 * Our own rather than a library's because the covariance is half of the answer here, and because a derivative step
 * scaled to each unknown is what makes it find the published optima.
 */
export interface LeastSquaresProblem {
  /** Where the search starts. */
  readonly start: readonly number[];
  /** Size by which each unknown typically moves; the derivative steps are a small share of it. */
  readonly scale: readonly number[];
  /** Number of residuals, priors included. */
  readonly residuals: number;
  /** Writes the residuals at `values`; each is divided by its own standard deviation. */
  readonly evaluate: (values: Float64Array, residuals: Float64Array) => void;
  readonly mostPasses?: number;
  /** Share of `scale` used as the derivative step; 1e-3 suits a simulation, 1e-6 a closed form. */
  readonly derivativeStep?: number;
  /** Two-sided derivatives: twice the work, needed for closed forms checked to many digits. */
  readonly twoSided?: boolean;
  /** Stops when a pass lowers the sum of squares by less than this share. */
  readonly settledShare?: number;
}

export interface LeastSquaresFit {
  readonly values: Float64Array;
  readonly sumOfSquares: number;
  /** Inverse of JᵀJ at the solution: the covariance when each residual was divided by its standard deviation. */
  readonly covariance: readonly (readonly number[])[];
  readonly passes: number;
  readonly settled: boolean;
}

const sumOfSquares = (residuals: Float64Array): number => {
  let sum = 0;
  for (const each of residuals) sum += each * each;
  return sum;
};

/** Derivatives of the residuals by each unknown at `values`. */
const jacobian = (problem: LeastSquaresProblem, values: Float64Array, here: Float64Array): Matrix => {
  const share = problem.derivativeStep ?? 1e-3;
  const out = new Matrix(problem.residuals, values.length);
  const high = new Float64Array(problem.residuals);
  const low = new Float64Array(problem.residuals);
  for (let j = 0; j < values.length; j++) {
    const step = share * (problem.scale[j] as number);
    const moved = Float64Array.from(values);
    moved[j] = (values[j] as number) + step;
    problem.evaluate(moved, high);
    if (problem.twoSided === true) {
      moved[j] = (values[j] as number) - step;
      problem.evaluate(moved, low);
    }
    const base = problem.twoSided === true ? low : here;
    const width = problem.twoSided === true ? 2 * step : step;
    for (let i = 0; i < problem.residuals; i++) out.set(i, j, ((high[i] as number) - (base[i] as number)) / width);
  }
  return out;
};

export const leastSquares = (problem: LeastSquaresProblem): LeastSquaresFit => {
  const unknowns = problem.start.length;
  let values = Float64Array.from(problem.start);
  let residuals = new Float64Array(problem.residuals);
  problem.evaluate(values, residuals);
  let best = sumOfSquares(residuals);
  let damping = 1e-3;
  let settled = false;
  let passes = 0;
  const settledShare = problem.settledShare ?? 1e-4;
  let derivatives = jacobian(problem, values, residuals);
  while (passes < (problem.mostPasses ?? 8) && !settled) {
    passes++;
    const transposed = derivatives.transpose();
    const normal = transposed.mmul(derivatives);
    const downhill = transposed.mmul(Matrix.columnVector(Array.from(residuals))).mul(-1);
    let improved = false;
    for (let attempt = 0; attempt < 10 && !improved; attempt++) {
      const damped = normal.clone();
      for (let j = 0; j < unknowns; j++) damped.set(j, j, normal.get(j, j) * (1 + damping) + 1e-300);
      const move = solve(damped, downhill);
      const trial = values.map((each, j) => each + move.get(j, 0));
      const trialResiduals = new Float64Array(problem.residuals);
      problem.evaluate(trial, trialResiduals);
      const sum = sumOfSquares(trialResiduals);
      if (sum < best) {
        settled = best - sum <= settledShare * best;
        values = trial;
        residuals = trialResiduals;
        best = sum;
        damping = Math.max(damping / 10, 1e-12);
        improved = true;
      } else {
        damping *= 10;
      }
    }
    if (!improved) settled = true;
    derivatives = jacobian(problem, values, residuals);
  }
  const normal = derivatives.transpose().mmul(derivatives);
  return { values, sumOfSquares: best, covariance: inverse(normal).to2DArray(), passes, settled };
};
