import type { Causes } from '../../kernel/entry.ts';
import { type Crossing, selfCrossing } from './crossing.ts';
import { cornerAt, type Ring, signedArea } from './polygon.ts';
import { columnOf, fixedBy, settle, spreadOf, unknownsOf, weigh } from './tape-adjustment.ts';
import { cornersOf, type TapeMeasure } from './tape-measures.ts';
import { startFromSketch, startFromWalk } from './tape-start.ts';

/** A room as it was taped. Corners are counted from 0, counter-clockwise seen from above. */
export interface TapedRoom {
  readonly cornerCount: number;
  readonly measures: readonly TapeMeasure[];
  /** A rough drawing in any scale, counter-clockwise; needed where corners turn inwards and no angle says so. */
  readonly sketch?: Ring;
  /** Standard deviation of the scale of the tape, a share of length; shared by every measure. */
  readonly scaleError?: number;
}

/** What can be wrong with a taped room; data, so that a shell can say it in the reader's words. */
export type TapeTrouble =
  | { readonly code: 'tape-room-needs-three-corners'; readonly cornerCount: number }
  | { readonly code: 'tape-sketch-has-other-corners'; readonly cornerCount: number; readonly sketched: number }
  | { readonly code: 'tape-measure-names-no-corner'; readonly measure: number; readonly corner: number }
  | { readonly code: 'tape-measure-not-positive'; readonly measure: number }
  | { readonly code: 'tape-sketch-crosses-itself'; readonly walls: Crossing }
  /** The measures leave the room loose; any one set of the named diagonals would fix it. */
  | {
      readonly code: 'tape-room-is-loose';
      readonly missing: number;
      readonly diagonals: readonly (readonly [from: number, to: number])[];
    }
  /** The measures contradict each other or describe no plain room from this start; a sketch helps. */
  | { readonly code: 'tape-room-does-not-close'; readonly worst: readonly number[] };

export interface Residual {
  /** Computed less observed, m (rad for an angle). */
  readonly residual: number;
  /** In deviations of the residual itself; absent where nothing checks this measure. */
  readonly standardised?: number;
}

export interface RoomFromTape {
  /** First corner at the origin, first wall along x, m. */
  readonly corners: Ring;
  readonly area: number;
  /** Standard deviation of the area by the readings alone, m². */
  readonly areaDeviation: number;
  /** Further standard deviation of the area by the scale of the tape, m²; it does not average out. */
  readonly areaScaleDeviation: number;
  /** How many measures there are beyond what fixes the room; 0 checks nothing. */
  readonly redundancy: number;
  readonly residuals: readonly Residual[];
  /** Sum of squared weighed residuals; about the redundancy where the stated deviations are honest. */
  readonly weighedSquares: number;
  /** Measures with the largest standardised residual. With one redundant measure all share it: then none is named. */
  readonly suspects: readonly number[];
  readonly largest: number;
  /** True when `largest` is beyond what one honest reading in a thousand shows. */
  readonly beyondChance: boolean;
  /** Measures that were assumed, to be stated aloud. */
  readonly assumed: readonly number[];
  /** Signed causes of each corner's x and y by measure (`tape 3`, `tape scale`), for what follows from them. */
  readonly causes: readonly { readonly x: Causes; readonly y: Causes }[];
}

export type TapeResult =
  | { readonly ok: true; readonly room: RoomFromTape }
  | { readonly ok: false; readonly trouble: TapeTrouble };

/** Two-sided one in a thousand of the normal distribution, usual when searching survey readings for a blunder. */
const BLUNDER = 3.2905267314919255;
/** Residuals beyond this many deviations mean another shape than the one begun with. */
const HOPELESS = 1000;

function troubleOf({ cornerCount, measures, sketch }: TapedRoom): TapeTrouble | undefined {
  if (!Number.isInteger(cornerCount) || cornerCount < 3) return { code: 'tape-room-needs-three-corners', cornerCount };
  if (sketch) {
    if (sketch.length !== cornerCount) {
      return { code: 'tape-sketch-has-other-corners', cornerCount, sketched: sketch.length };
    }
    const walls = selfCrossing(sketch);
    if (walls) return { code: 'tape-sketch-crosses-itself', walls };
  }
  for (const [index, measure] of measures.entries()) {
    const corners = cornersOf(measure);
    const wrong = corners.find((c, i) => !Number.isInteger(c) || c < 0 || c >= cornerCount || corners.indexOf(c) !== i);
    if (wrong !== undefined) return { code: 'tape-measure-names-no-corner', measure: index, corner: wrong };
    const size = measure.kind === 'angle' ? measure.angle : measure.length;
    const positive = measure.kind === 'offset' ? Number.isFinite(size) : size > 0 && Number.isFinite(size);
    if (!positive || !(measure.deviation > 0) || !Number.isFinite(measure.deviation)) {
      return { code: 'tape-measure-not-positive', measure: index };
    }
  }
  return undefined;
}

/** Diagonals, each of which fixes one thing more, in the order a person would tape them from the first corners. */
function diagonalsThatHelp(measures: readonly TapeMeasure[], corners: Ring, missing: number) {
  const found: (readonly [number, number])[] = [];
  let used = [...measures];
  let fixed = fixedBy(weigh(used, corners).slopes);
  for (let from = 0; from < corners.length && found.length < missing; from++) {
    for (let to = from + 1; to < corners.length && found.length < missing; to++) {
      const trial: TapeMeasure[] = [...used, { kind: 'distance', from, to, length: 1, deviation: 0.01 }];
      const then = fixedBy(weigh(trial, corners).slopes);
      if (then <= fixed) continue;
      found.push([from, to]);
      [used, fixed] = [trial, then];
    }
  }
  return found;
}

const worstOf = (sizes: readonly number[]): { largest: number; at: readonly number[] } => {
  const largest = Math.max(0, ...sizes);
  return { largest, at: sizes.flatMap((size, i) => (size > 0 && size >= largest * (1 - 1e-4) ? [i] : [])) };
};

/** Area of a room by its corners: half of what one step of each coordinate adds. */
function areaSlope(corners: Ring): number[] {
  const slope: number[] = Array.from({ length: unknownsOf(corners.length) }, () => 0);
  corners.forEach((_, i) => {
    const [before, after] = [cornerAt(corners, i - 1), cornerAt(corners, i + 1)];
    const [across, up] = [columnOf(i, 'x'), columnOf(i, 'y')];
    if (across !== undefined) slope[across] = (after[1] - before[1]) / 2;
    if (up !== undefined) slope[up] = (before[0] - after[0]) / 2;
  });
  return slope;
}

/**
 * The room from a tape: corners that fit sides, diagonals, offsets and assumed square corners best by weighed least
 * squares, with what each measure is off by, which one is suspect, and how well the area is known.
 *
 * Sides alone fix a triangle only: a room of n corners needs n - 3 diagonals or stated angles, and one more of either
 * to check anything. Deviations are standard deviations in m (rad for angles) and must be positive.
 */
export function roomFromTape(taped: TapedRoom): TapeResult {
  const trouble = troubleOf(taped);
  if (trouble) return { ok: false, trouble };
  const { cornerCount, measures, sketch, scaleError = 0 } = taped;
  const start = sketch ? startFromSketch(sketch, measures) : startFromWalk(cornerCount, measures);
  const corners = settle(measures, start);
  const { residuals: weighed, slopes } = weigh(measures, corners);
  const off = worstOf(weighed.map(Math.abs));
  const torn: TapeTrouble = { code: 'tape-room-does-not-close', worst: off.at };
  if (off.largest > HOPELESS) return { ok: false, trouble: torn };
  const missing = unknownsOf(cornerCount) - fixedBy(slopes);
  if (missing > 0) {
    const diagonals = diagonalsThatHelp(measures, corners, missing);
    return { ok: false, trouble: { code: 'tape-room-is-loose', missing, diagonals } };
  }
  const area = signedArea(corners);
  if (selfCrossing(corners) || !(area > 0)) return { ok: false, trouble: torn };
  const { covariance, response } = spreadOf(slopes);
  const slope = areaSlope(corners);
  const variance = slope.reduce(
    (sum, a, i) => sum + slope.reduce((inner, b, j) => inner + a * covariance.get(i, j) * b, 0),
    0,
  );
  const residuals = measures.map((measure, k): Residual => {
    const residual = (weighed[k] as number) * measure.deviation;
    // What part of this reading the others check: 0 where it stands alone.
    const checked = 1 - slopes.getRow(k).reduce((sum, value, i) => sum + value * response.get(i, k), 0);
    return checked > 1e-9 ? { residual, standardised: (weighed[k] as number) / Math.sqrt(checked) } : { residual };
  });
  const redundancy = measures.length - unknownsOf(cornerCount);
  const { largest, at } = worstOf(residuals.map(({ standardised }) => Math.abs(standardised ?? 0)));
  const checkable = residuals.filter(({ standardised }) => standardised !== undefined).length;
  const causesAt = (column: number | undefined, coordinate: number): Causes => {
    if (column === undefined) return {};
    const own = measures.map((_, k) => [`tape ${k}`, response.get(column, k)] as const);
    return { ...Object.fromEntries(own), ...(scaleError > 0 ? { 'tape scale': coordinate * scaleError } : {}) };
  };
  return {
    ok: true,
    room: {
      corners,
      area,
      areaDeviation: Math.sqrt(Math.max(0, variance)),
      areaScaleDeviation: 2 * scaleError * area,
      redundancy,
      residuals,
      weighedSquares: weighed.reduce((sum, w) => sum + w * w, 0),
      suspects: at.length === checkable && checkable > 1 ? [] : at,
      largest,
      beyondChance: largest > BLUNDER,
      assumed: measures.flatMap((m, k) => (m.kind === 'angle' && m.assumed ? [k] : [])),
      causes: corners.map(([x, y], i) => ({ x: causesAt(columnOf(i, 'x'), x), y: causesAt(columnOf(i, 'y'), y) })),
    },
  };
}
