import type { HeatGrid } from './grid.ts';
import type { SurfaceBalance } from './surface-balance.ts';
import { surfaceTemperatureOf } from './surface-balance.ts';

/**
 * One-dimensional heat conduction in a layered slab, backward Euler in time.
 *
 *   capacity · dT/dt = heat in through the upper face − heat out through the lower face        (each cell)
 *
 * The tridiagonal system is eliminated from the bottom upwards, so that what is left is one relation between the
 * surface temperature and the heat it sends down. The surface balance, with its fourth power, is then solved as one
 * scalar equation: the whole step stays implicit and costs one sweep up and one down. The elimination factors depend
 * on the step length only, and are reused while it stays the same.
 *
 * Backward Euler rather than Crank-Nicolson: a door that opens is a jump, and Crank-Nicolson gains nothing at jumps
 * unless its first steps are short, and can ring. At 5 min the worst error is about 0.05 K.
 */
export interface Conduction {
  readonly grid: HeatGrid;
  /** Cell temperatures, °C; the caller may write them before the first step. */
  readonly temperature: Float64Array;
  /** Surface temperature after the last step, °C. */
  surface: number;
  /** Advance by `seconds` with the surface exchanging heat as `balance` says (its values at the end of the step). */
  step(seconds: number, balance: SurfaceBalance, bottomTemperature: number): void;
  /** Advance by `seconds` with the surface held at a temperature, °C. */
  stepHeld(seconds: number, surfaceTemperature: number, bottomTemperature: number): void;
}

/** `fixed`: the bottom face is held at a temperature. `insulated`: no heat crosses it. */
export type BottomKind = 'fixed' | 'insulated';

export const conduction = (grid: HeatGrid, bottom: BottomKind, startTemperature: number): Conduction => {
  const n = grid.count;
  const temperature = new Float64Array(n).fill(startTemperature);
  /** Conductance above cell i (0: from the surface node), W/(m² K); one more for the bottom face. */
  const conductance = new Float64Array(n + 1);
  for (let i = 0; i <= n; i++) {
    const above = i === 0 ? 0 : (grid.halfResistance[i - 1] as number);
    const below = i === n ? 0 : (grid.halfResistance[i] as number);
    conductance[i] = i === n && bottom === 'insulated' ? 0 : 1 / (above + below);
  }
  const storage = new Float64Array(n);
  const slope = new Float64Array(n + 1);
  const inverse = new Float64Array(n);
  const offset = new Float64Array(n + 1);
  let factoredFor = Number.NaN;

  const factor = (seconds: number): void => {
    slope[n] = 0;
    for (let i = n - 1; i >= 0; i--) {
      const up = conductance[i] as number;
      storage[i] = (grid.capacity[i] as number) / seconds;
      const diagonal = (storage[i] as number) + up + (conductance[i + 1] as number) * (1 - (slope[i + 1] as number));
      inverse[i] = 1 / diagonal;
      slope[i] = up / diagonal;
    }
    factoredFor = seconds;
  };

  /** Sweep up: cell i = slope[i] · (cell above) + offset[i]. */
  const sweepUp = (seconds: number, bottomTemperature: number): void => {
    if (seconds !== factoredFor) factor(seconds);
    offset[n] = bottomTemperature;
    for (let i = n - 1; i >= 0; i--) {
      offset[i] =
        ((storage[i] as number) * (temperature[i] as number) +
          (conductance[i + 1] as number) * (offset[i + 1] as number)) *
        (inverse[i] as number);
    }
  };

  const sweepDown = (surface: number): void => {
    let above = surface;
    for (let i = 0; i < n; i++) {
      above = (slope[i] as number) * above + (offset[i] as number);
      temperature[i] = above;
    }
    state.surface = surface;
  };

  const state: Conduction = {
    grid,
    temperature,
    surface: startTemperature,
    step(seconds, balance, bottomTemperature) {
      sweepUp(seconds, bottomTemperature);
      // Heat sent down = down · surface − held, W/m².
      const top = conductance[0] as number;
      const down = top * (1 - (slope[0] as number));
      const held = top * (offset[0] as number);
      sweepDown(surfaceTemperatureOf(balance, down, held, state.surface));
    },
    stepHeld(seconds, surfaceTemperature, bottomTemperature) {
      sweepUp(seconds, bottomTemperature);
      sweepDown(surfaceTemperature);
    },
  };
  return state;
};

/**
 * Temperature at a depth, °C, linear between the surface, cell centres and cell faces.
 *
 * The temperature of a face follows from the two half-cells in series, so the kink at a layer interface is kept.
 *
 * @param depth m, from 0 to the grid's depth; outside it the nearest end counts
 */
export const temperatureAt = (slab: Conduction, depth: number): number => {
  const { grid, temperature } = slab;
  if (depth <= 0) return slab.surface;
  let upperDepth = 0;
  let upper = slab.surface;
  for (let i = 0; i < grid.count; i++) {
    const here = temperature[i] as number;
    const centre = grid.centre[i] as number;
    if (depth <= centre) return upper + ((here - upper) * (depth - upperDepth)) / (centre - upperDepth);
    const face = centre + (grid.thickness[i] as number) / 2;
    let lower = here;
    if (i + 1 < grid.count) {
      const a = grid.halfResistance[i] as number;
      const b = grid.halfResistance[i + 1] as number;
      lower = (here * b + (temperature[i + 1] as number) * a) / (a + b);
    }
    if (depth <= face) return here + ((lower - here) * (depth - centre)) / (face - centre);
    upperDepth = face;
    upper = lower;
  }
  return upper;
};

/** Mean temperature of the top `depth` metres, °C: cell means weighted by how much of the cell lies above `depth`. */
export const meanOfTop = (slab: Conduction, depth: number): number => {
  const { grid, temperature } = slab;
  let sum = 0;
  let covered = 0;
  for (let i = 0; i < grid.count && covered < depth; i++) {
    const part = Math.min(grid.thickness[i] as number, depth - covered);
    sum += part * (temperature[i] as number);
    covered += part;
  }
  return sum / covered;
};
