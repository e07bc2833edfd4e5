import { areaD, differenceD, FillRule, intersectD, unionD } from 'clipper2-ts';
import { timedCandidate } from './candidate.ts';
import { checkSequence, type SequenceReport, type SpreadBreak } from './checker/index.ts';
import { laneSequence } from './drawn.ts';
import { DIRECTIONS } from './fields.ts';
import { distanceToSegment, insideRing, ringArea, segmentsMeet } from './geometry.ts';
import type { SpreadProblem } from './problem.ts';
import { orderOf } from './solution.ts';
import type { Point, Ring, SpreadIssue, SpreadSolution } from './types.ts';

/** A pour drawn by hand: its outline, m, either way round, and if the installer says so which way the crew works. */
export interface OutlinedPour {
  readonly ring: Ring;
  /** Direction of work, any length but nothing: from the far lanes to the near ones. Absent: the best of eight is taken. */
  readonly towards?: readonly [number, number] | undefined;
  /**
   * Its squares in spreading order (column, row), where it stands as a plan has it: then they are its floor, unless an
   * earlier pour has them, and its order is kept instead of lanes.
   */
  readonly cells?: readonly number[] | undefined;
}

/** What one drawn pour comes to. `pour`: its number as drawn, from 1. */
export interface OutlinedFacts {
  readonly pour: number;
  readonly squares: number;
  /** Floor it really gets: by squares, clipped to the floor, without what an earlier pour has. */
  readonly areaM2: number;
  readonly litres: number;
  /** Of one batch. */
  readonly batchShare: number;
  /** Drawn over earlier pours, and beyond the floor, m², by the drawn lines. */
  readonly overlapM2: number;
  readonly offFloorM2: number;
  readonly towards: readonly [number, number];
}

export interface OutlinedSequence {
  readonly kind: 'sequence';
  readonly solution: SpreadSolution;
  readonly pours: readonly OutlinedFacts[];
  /** Floor in no pour, m², by the drawn lines. */
  readonly gapM2: number;
}

/** The checker's word on it, with what only the drawing shows; pours keep the numbers they were drawn with. */
export interface OutlinedJudgement extends Omit<OutlinedSequence, 'kind'> {
  readonly kind: 'judged';
  readonly ok: boolean;
  readonly breaks: readonly SpreadBreak[];
  readonly report: SequenceReport;
}

export type OutlinedIssues = { readonly kind: 'issues'; readonly issues: readonly SpreadIssue[] };

/** Drawn lines that miss each other by less than this share of a lane are one line: nobody draws to the millimetre. */
const SLACK_LANES = 0.5;

/** Squares times trials that are spent on finding directions nobody drew. */
const MOST_SQUARES_TRIED = 2_000_000;

/** Two more decimals than anybody measures. */
const DECIMALS = 4;

/** What has to be mended in the drawing before it means a sequence. */
export function checkOutlines(pours: readonly OutlinedPour[]): SpreadIssue[] {
  const issues: SpreadIssue[] = [];
  if (pours.length === 0) issues.push({ code: 'drawn/no-pours', path: 'pours', value: 0, limits: { low: 1 } });
  pours.forEach(({ ring, towards }, k) => {
    const path = `pours.${k}`;
    const finite = ring.every((point) => point.every(Number.isFinite));
    if (ring.length < 3 || !finite || ringArea(ring) < 1e-6) {
      issues.push({ code: 'drawn/no-area', path: `${path}.ring`, value: ring.length, limits: { low: 3 } });
      return;
    }
    const at = crossesItself(ring);
    if (at >= 0)
      issues.push({
        code: 'drawn/crosses-itself',
        path: `${path}.ring.${at}`,
        value: at + 1,
        limits: { corners: ring.length },
      });
    if (towards && !(towards.every(Number.isFinite) && (towards[0] !== 0 || towards[1] !== 0)))
      issues.push({ code: 'drawn/no-direction', path: `${path}.towards`, value: towards.join(', '), limits: {} });
  });
  return issues;
}

/**
 * Turns pours drawn as outlines, first one first, into a sequence of squares. A square belongs to the first pour that
 * holds its middle, or that passes it within half a lane when none does; inside a pour lanes follow its direction, to and
 * fro, as far as the way out allows. Directions nobody drew are chosen by the score of the whole.
 */
export function sequenceFromOutlines(
  problem: SpreadProblem,
  pours: readonly OutlinedPour[],
): OutlinedSequence | OutlinedIssues {
  const issues = checkOutlines(pours);
  if (issues.length > 0) return { kind: 'issues', issues };
  const pourOf = pourOfSquares(problem, pours);
  const directions = withDirections(problem, pours, pourOf);
  const { squares, question, batchLitres } = problem;
  const away = [...question.holes, ...(question.done ?? []).map(({ ring }) => ring)].map(pathOf);
  const floor = differenceD([pathOf(question.outline)], away, FillRule.NonZero, DECIMALS);
  let before: Paths = [];
  const facts = pours.map(({ ring }, k): OutlinedFacts => {
    const drawn = [pathOf(ring)];
    let count = 0;
    let areaM2 = 0;
    let litres = 0;
    for (let s = 0; s < squares.count; s++) {
      if (pourOf[s] !== k) continue;
      count += 1;
      areaM2 += squares.areaM2[s] as number;
      litres += squares.litres[s] as number;
    }
    const overlapM2 = areaOf(intersectD(drawn, before, FillRule.NonZero, DECIMALS));
    const offFloorM2 = areaOf(differenceD(drawn, floor, FillRule.NonZero, DECIMALS));
    before = unionD(before, drawn, FillRule.NonZero, DECIMALS);
    const towards = directions[k] as Direction;
    return {
      pour: k + 1,
      squares: count,
      areaM2,
      litres,
      batchShare: litres / batchLitres,
      overlapM2,
      offFloorM2,
      towards,
    };
  });
  const gapM2 = areaOf(differenceD(floor, before, FillRule.NonZero, DECIMALS));
  const solution = laneSequence(problem, pourOf, directions, ranksOf(problem, pours, pourOf));
  return { kind: 'sequence', solution, pours: facts, gapM2 };
}

/**
 * Judges pours drawn as outlines: what the checker finds (floor left out, litres, working time, open edges, somebody
 * painted in, no dry way, the end at an exit), and pours drawn over earlier ones or over no square. Lines that miss each
 * other by less than half a lane are taken as one; what sticks out beyond the floor does no harm and is only told.
 */
export function judgeOutlines(
  problem: SpreadProblem,
  pours: readonly OutlinedPour[],
  areas: 'whole' | 'clipped' = 'clipped',
): OutlinedJudgement | OutlinedIssues {
  const sequence = sequenceFromOutlines(problem, pours);
  if (sequence.kind === 'issues') return sequence;
  const report = checkSequence(problem.question, sequence.solution, areas);
  // the checker numbers the pours that have squares; the installer knows them as drawn
  const drawn = sequence.pours.filter(({ squares }) => squares > 0).map(({ pour }) => pour);
  const breaks: SpreadBreak[] = [];
  pours.forEach(({ ring }, k) => {
    const pour = k + 1;
    const over = worstOverlap(problem, pours, k);
    if (over)
      breaks.push({ code: 'drawn/overlap', pour, at: over.at, figures: { m2: over.m2, earlier: over.earlier } });
    else if (sequence.pours[k]?.squares === 0)
      breaks.push({ code: 'drawn/nothing-inside', pour, at: middleOf(ring), figures: { m2: ringArea(ring) } });
  });
  for (const one of report.breaks)
    breaks.push(one.pour === undefined ? one : { ...one, pour: drawn[one.pour - 1] ?? one.pour });
  return { ...sequence, kind: 'judged', ok: breaks.length === 0, breaks, report };
}

type Direction = readonly [number, number];
type Paths = ReturnType<typeof unionD>;

/** Pour of each square from 0, −1 where none is near. */
function pourOfSquares(problem: SpreadProblem, pours: readonly OutlinedPour[]): Int32Array {
  const { x, y, count, cellM } = problem.squares;
  const pourOf = new Int32Array(count);
  const planned = pours.map(({ cells }) => cells && new Set(squaresIn(problem, cells)));
  for (let s = 0; s < count; s++) {
    const [px, py] = [x[s] as number, y[s] as number];
    let own = pours.findIndex(({ ring }, k) => planned[k]?.has(s) ?? insideRing(px, py, ring));
    if (own < 0) {
      let nearest = SLACK_LANES * cellM;
      pours.forEach(({ ring }, k) => {
        ring.forEach((a, side) => {
          const away = distanceToSegment(px, py, a, ring[(side + 1) % ring.length] as Point);
          if (away < nearest - 1e-9) {
            nearest = away;
            own = k;
          }
        });
      });
    }
    pourOf[s] = own;
  }
  return pourOf;
}

/** Squares of the floor among those named by column and row, in their order. */
function squaresIn({ squares: { at, columns } }: SpreadProblem, cells: readonly number[]): number[] {
  const found: number[] = [];
  for (let k = 0; k + 1 < cells.length; k += 2) {
    const s = at[(cells[k + 1] as number) * columns + (cells[k] as number)] ?? -1;
    if (s >= 0) found.push(s);
  }
  return found;
}

/** Place of each square in a pour whose order is given, −1 in others. */
function ranksOf(problem: SpreadProblem, pours: readonly OutlinedPour[], pourOf: Int32Array): Int32Array {
  const ranks = new Int32Array(problem.squares.count).fill(-1);
  pours.forEach(({ cells }, k) => {
    if (!cells) return;
    squaresIn(problem, cells).forEach((s, place) => {
      if (pourOf[s] === k) ranks[s] = place;
    });
  });
  return ranks;
}

/** The earlier pour this one is drawn over most, if by more than a strip of half a lane. */
function worstOverlap({ squares }: SpreadProblem, pours: readonly OutlinedPour[], k: number) {
  let worst: { at: Point; m2: number; earlier: number } | undefined;
  const own = [pathOf((pours[k] as OutlinedPour).ring)];
  pours.slice(0, k).forEach(({ ring }, other) => {
    for (const piece of intersectD(own, [pathOf(ring)], FillRule.NonZero, DECIMALS)) {
      const outline = piece.map(({ x, y }): Point => [x, y]);
      const m2 = ringArea(outline);
      // a long strip is about as wide as twice its area by its length round
      const wideM = (2 * m2) / Math.max(1e-9, lengthOf(outline));
      if (wideM > SLACK_LANES * squares.cellM && m2 > (worst?.m2 ?? 0))
        worst = { at: middleOf(outline), m2, earlier: other + 1 };
    }
  });
  return worst;
}

/** Directions drawn by hand stay; the others start towards the nearest door and are improved, last pour first. */
function withDirections(problem: SpreadProblem, pours: readonly OutlinedPour[], pourOf: Int32Array): Direction[] {
  const directions = pours.map(({ ring, towards }): Direction => towards ?? toDoor(problem, ring));
  const open = pours.flatMap(({ towards, cells }, k) => (towards || cells ? [] : [k])).reverse();
  if (open.length === 0) return directions;
  const ranks = ranksOf(problem, pours, pourOf);
  const score = (): number => scoreOfDrawn(problem, laneSequence(problem, pourOf, directions, ranks));
  let trials = Math.floor(MOST_SQUARES_TRIED / Math.max(1, problem.squares.count));
  let best = score();
  for (let round = 0; round < 2; round++) {
    for (const k of open) {
      for (let d = 0; d < DIRECTIONS.length; d += 2) {
        if (trials-- <= 0) return directions;
        const kept = directions[k] as Direction;
        directions[k] = DIRECTIONS[d] as Direction;
        const now = score();
        // in steps of 1/64 s, as plans are compared
        if (Math.round(now * 3840) < Math.round(best * 3840)) best = now;
        else directions[k] = kept;
      }
    }
  }
  return directions;
}

/** Score of a drawn sequence with straight walks; squares in no pour do not count. */
function scoreOfDrawn(problem: SpreadProblem, solution: SpreadSolution): number {
  const read = orderOf(problem, solution);
  if (!read) throw new Error('a drawn sequence names a square that is not on its floor');
  const starts = read.starts.filter((start, k) => start < (read.starts[k + 1] ?? read.order.length));
  return timedCandidate(problem, read.order, starts, 'drawn', undefined).score.score;
}

function toDoor({ squares, doorSquares }: SpreadProblem, ring: Ring): readonly [number, number] {
  const [x, y] = middleOf(ring);
  let towards: readonly [number, number] = [0, -1];
  let nearest = Infinity;
  for (const s of doorSquares) {
    const dx = (squares.x[s] as number) - x;
    const dy = (squares.y[s] as number) - y;
    const away = dx * dx + dy * dy;
    if (away >= nearest || away === 0) continue;
    nearest = away;
    towards = Math.abs(dx) > Math.abs(dy) ? [Math.sign(dx), 0] : [0, Math.sign(dy)];
  }
  return towards;
}

/** Number of the first corner whose side meets one that is not beside it, −1 when none does. */
function crossesItself(ring: Ring): number {
  const n = ring.length;
  const point = (k: number): Point => ring[k % n] as Point;
  for (let k = 0; k < n; k++) {
    for (let m = k + 2; m < n; m++) {
      if (k === 0 && m === n - 1) continue;
      if (segmentsMeet(point(k), point(k + 1), point(m), point(m + 1))) return k;
    }
  }
  return -1;
}

const pathOf = (ring: Ring): { x: number; y: number }[] => {
  const path = ring.map(([x, y]) => ({ x, y }));
  // rings that turn right would be taken for holes
  return areaD(path) < 0 ? path.reverse() : path;
};

const areaOf = (paths: readonly { x: number; y: number }[][]): number =>
  Math.abs(paths.reduce((sum, path) => sum + areaD(path), 0));

function lengthOf(ring: Ring): number {
  let sum = 0;
  ring.forEach(([x, y], k) => {
    const [nextX, nextY] = ring[(k + 1) % ring.length] as Point;
    sum += Math.sqrt((nextX - x) ** 2 + (nextY - y) ** 2);
  });
  return sum;
}

/** A place inside the ring to point at: the middle of its corners, or of its first ear where that lies outside. */
function middleOf(ring: Ring): Point {
  const mean: Point = [
    ring.reduce((sum, [x]) => sum + x, 0) / ring.length,
    ring.reduce((sum, [, y]) => sum + y, 0) / ring.length,
  ];
  if (insideRing(mean[0], mean[1], ring)) return mean;
  for (let k = 0; k < ring.length; k++) {
    const [a, b, c] = [ring[k], ring[(k + 1) % ring.length], ring[(k + 2) % ring.length]] as [Point, Point, Point];
    const ear: Point = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3];
    if (insideRing(ear[0], ear[1], ring)) return ear;
  }
  return mean;
}
