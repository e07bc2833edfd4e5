import { differenceD, FillRule, intersectD } from 'clipper2-ts';
import type { Candidate } from './candidate.ts';
import { distanceToSegment } from './geometry.ts';
import { type LatticeRing, latticeRings } from './pour-edges.ts';
import type { SpreadProblem } from './problem.ts';
import type { Point, Ring } from './types.ts';

/** Decimals of a metre kept when clipping. */
const DECIMALS = 4;

/**
 * Outlines of the pours to draw: the steps between two pours cut to a smooth line, the same for both, and everything
 * clipped to the floor. Outer rings turn left, holes right. The litres still count by squares: the drawn line differs
 * from them by less than half a square anywhere.
 */
export function pourOutlines(problem: SpreadProblem, plan: Candidate): Ring[][] {
  const { question, squares } = problem;
  const floor = [pathOf(question.outline)];
  const away = [...question.holes, ...(question.done ?? []).map(({ ring }) => ring)].map(pathOf);
  return latticeRings(squares, plan.clock.pourOf, plan.clock.pours.length).map((rings) => {
    const smooth = rings.map((ring) => pathOf(smoothed(ring, squares.cellM)));
    const onFloor = intersectD(smooth, floor, FillRule.NonZero, DECIMALS);
    const clipped = away.length > 0 ? differenceD(onFloor, away, FillRule.NonZero, DECIMALS) : onFloor;
    return clipped.map((path) => path.map(({ x, y }): Point => [x, y]));
  });
}

const pathOf = (ring: Ring): { x: number; y: number }[] => ring.map(([x, y]) => ({ x, y }));

/** Cuts the corners of runs that border one and the same pour, and straightens what is left of the steps. */
function smoothed(ring: LatticeRing, cellM: number): Point[] {
  const { points, beyond } = ring;
  const n = points.length;
  const joint = points.findIndex((_, k) => beyond[k] !== beyond[(k + n - 1) % n]);
  if (joint < 0) return beyond[0] === -1 ? [...points] : midpoints(points);
  const out: Point[] = [];
  for (let k = 0; k < n; ) {
    const start = joint + k;
    const neighbour = beyond[start % n] as number;
    const run: Point[] = [points[start % n] as Point];
    while (k < n && beyond[(joint + k) % n] === neighbour) {
      k += 1;
      run.push(points[(joint + k) % n] as Point);
    }
    const line = neighbour === -1 ? run : straightened(cornersCut(run), cellM * 0.45);
    out.push(...line.slice(0, -1));
  }
  return out;
}

function midpoints(points: readonly Point[]): Point[] {
  return points.map((p, k) => {
    const q = points[(k + 1) % points.length] as Point;
    return [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  });
}

/** A run of unit sides: ends stay, every side between is replaced by its middle. */
function cornersCut(run: readonly Point[]): Point[] {
  const out: Point[] = [run[0] as Point];
  for (let k = 0; k + 1 < run.length; k++) {
    const p = run[k] as Point;
    const q = run[k + 1] as Point;
    out.push([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]);
  }
  out.push(run[run.length - 1] as Point);
  return out;
}

/** Drops points nearer than `within` to the line without them; always worked in one direction, so both pours agree. */
function straightened(line: readonly Point[], within: number): Point[] {
  const [ax, ay] = line[0] as Point;
  const [bx, by] = line[line.length - 1] as Point;
  const backwards = bx < ax || (bx === ax && by < ay);
  const points = backwards ? [...line].reverse() : [...line];
  const kept = simplify(points, within);
  return backwards ? kept.reverse() : kept;
}

function simplify(points: Point[], within: number): Point[] {
  const first = points[0] as Point;
  const last = points[points.length - 1] as Point;
  let farthest = 0;
  let at = -1;
  for (let k = 1; k + 1 < points.length; k++) {
    const [x, y] = points[k] as Point;
    const away = distanceToSegment(x, y, first, last);
    if (away > farthest) {
      farthest = away;
      at = k;
    }
  }
  if (at < 0 || farthest <= within) return [first, last];
  return [...simplify(points.slice(0, at + 1), within).slice(0, -1), ...simplify(points.slice(at), within)];
}
