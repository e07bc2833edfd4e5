import { floorSpan } from './bend.ts';
import { dayCase } from './day-parts.ts';
import type { SpreadEffort } from './effort.ts';
import { planSpread, type SpreadPlan } from './planner.ts';
import { type SpreadProblem, spreadProblem } from './problem.ts';
import { arithmeticReasons } from './reasons.ts';
import type { SpreadCase, StopLine } from './types.ts';

/** A change that makes the floor possible, with the plan that shows it. */
export interface SpreadRepair {
  readonly code: string;
  readonly figures: Readonly<Record<string, number>>;
  readonly change: SpreadCase;
  readonly plan: SpreadPlan;
}

export type RepairKind = 'stop at joint' | 'smaller batch' | 'more people' | 'cooler hour' | 'tape line';

/** What was tried in one kind, and how far; `repair` absent: none found within the effort, which proves nothing. */
export interface RepairTrial {
  readonly kind: RepairKind;
  readonly tried: number;
  readonly repair?: SpreadRepair;
}

export interface RepairOptions {
  readonly areas: 'whole' | 'clipped';
  readonly effort: SpreadEffort;
  readonly seed: number;
  /** False stops the trials. */
  readonly onTrial?: (kind: RepairKind, tried: number) => boolean;
  /** Asked before and during each trial; false stops at once, and what was being tried counts as not tried. */
  readonly going?: (() => boolean) | undefined;
  /** Only these kinds; absent: all. */
  readonly kinds?: readonly RepairKind[];
}

interface Try {
  readonly code: string;
  readonly figures: Readonly<Record<string, number>>;
  readonly change: SpreadCase;
}

/**
 * The smallest change of each kind that works, found by planning it: batches smaller by tenths, one more person after
 * the other, another hour nearest first, one tape line and then two and three, and doing only the part before a joint.
 */
export function repairsFor(problem: SpreadProblem, options: RepairOptions): RepairTrial[] {
  const { question } = problem;
  const kinds: readonly (readonly [RepairKind, Iterable<Try>])[] = [
    ['stop at joint', joints(problem)],
    ['smaller batch', batches(question)],
    ['more people', people(question)],
    ['cooler hour', hours(question)],
    ['tape line', tapes(problem)],
  ];
  const trials: RepairTrial[] = [];
  for (const [kind, tries] of kinds) {
    if (options.kinds && !options.kinds.includes(kind)) continue;
    let tried = 0;
    let repair: SpreadRepair | undefined;
    for (const { code, figures, change } of tries) {
      if (options.onTrial && !options.onTrial(kind, tried)) return trials;
      if (options.going && !options.going()) return trials;
      tried += 1;
      // what arithmetic rules out for every order needs no search
      if (arithmeticReasons(spreadProblem(change, options.areas)).some(({ certain }) => certain)) continue;
      const { areas, effort, seed, going } = options;
      const plan = planSpread(change, { areas, effort, seed, onProgress: going && (() => going()) });
      if (plan.kind === 'none' && plan.stopped) return trials;
      if (plan.kind !== 'plan') continue;
      repair = { code, figures, change, plan };
      break;
    }
    trials.push(repair ? { kind, tried, repair } : { kind, tried });
  }
  return trials;
}

function* batches(question: SpreadCase): Generator<Try> {
  const { litres } = question.batch;
  for (let tenths = 9; tenths >= 3; tenths--) {
    const smaller = Math.round(litres * tenths * 10) / 100;
    yield {
      code: 'repair/smaller-batch',
      figures: { batchL: smaller, insteadL: litres },
      change: { ...question, batch: { ...question.batch, litres: smaller } },
    };
  }
}

function* people(question: SpreadCase): Generator<Try> {
  for (let more = 1; more <= 4; more++) {
    yield {
      code: 'repair/more-people',
      figures: { people: question.crew.people + more, more },
      change: { ...question, crew: { ...question.crew, people: question.crew.people + more } },
    };
    // one more pair of hands that only mixes takes the mixing out of the clock
    if (!question.crew.dedicatedMixer) {
      yield {
        code: 'repair/person-who-only-mixes',
        figures: { people: question.crew.people + more, more },
        change: { ...question, crew: { ...question.crew, people: question.crew.people + more, dedicatedMixer: true } },
      };
    }
  }
}

function* hours(question: SpreadCase): Generator<Try> {
  for (let half = 1; half <= 12; half++) {
    for (const sign of [-1, 1]) {
      const startMin = question.clock.startMin + sign * half * 30;
      if (startMin < 0 || startMin > 1440) continue;
      yield {
        code: 'repair/another-hour',
        figures: { startMin, insteadMin: question.clock.startMin },
        change: { ...question, clock: { ...question.clock, startMin } },
      };
    }
  }
}

/** Tape lines across the floor, one, two or three in a row, along either axis, evenly between the walls. */
function* tapes(problem: SpreadProblem): Generator<Try> {
  const { question, squares } = problem;
  const { minX, minY, cellM, columns, rows } = squares;
  const far = floorSpan(squares);
  for (const lines of [1, 2, 3]) {
    for (const upright of [true, false]) {
      const across = upright ? columns : rows;
      if (across < 2 * (lines + 1)) continue;
      const tape: StopLine[] = [];
      let metres = 0;
      for (let k = 1; k <= lines; k++) {
        const at = Math.round((across * k) / (lines + 1));
        const place = (upright ? minX : minY) + at * cellM;
        tape.push(
          upright
            ? { a: [place, minY - 1], b: [place, minY + far + 1], kind: 'tape' }
            : { a: [minX - 1, place], b: [minX + far + 1, place], kind: 'tape' },
        );
        for (let s = 0; s < squares.count; s++) {
          const line = upright ? squares.column[s] : squares.row[s];
          if (line === at && (squares.link[4 * s + (upright ? 2 : 3)] as number) >= 0) metres += cellM;
        }
      }
      if (metres === 0) continue;
      yield {
        code: 'repair/tape-line',
        figures: { lines, metres, [upright ? 'x' : 'y']: (upright ? tape[0]?.a[0] : tape[0]?.a[1]) ?? 0 },
        change: { ...question, stopLines: [...question.stopLines, ...tape] },
      };
    }
  }
}

/** Only the floor on one side of a joint today, the larger part that works first. */
function* joints(problem: SpreadProblem): Generator<Try> {
  const { question } = problem;
  const parts = question.stopLines
    .flatMap((line, k) => [1, -1].map((side) => ({ line, k, side, ...restBeyond(problem, line, side) })))
    .filter(({ leftM2, keptM2, onStops }) => onStops && leftM2 > 1e-6 && keptM2 > 1e-6)
    .sort((a, b) => b.keptM2 - a.keptM2 || a.k - b.k);
  for (const { k, ring, keptM2, leftM2 } of parts.slice(0, 6)) {
    yield {
      code: 'repair/stop-at-joint',
      figures: { line: k, todayM2: keptM2, laterM2: leftM2 },
      // the part left for later is bare floor: it carries people today
      change: dayCase(question, [{ ring, walkable: true }]),
    };
  }
}

/**
 * A half plane beyond a line as a ring that surely covers that side of the floor, the areas on both sides, and whether
 * the film would end on stop lines only.
 */
function restBeyond(problem: SpreadProblem, { a, b }: StopLine, side: number) {
  const { squares } = problem;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  const [nx, ny] = [-uy * side, ux * side];
  const far = 4 * floorSpan(squares) + 10;
  const ring: [number, number][] = [
    [a[0] - ux * far, a[1] - uy * far],
    [a[0] + ux * far, a[1] + uy * far],
    [a[0] + (ux + nx) * far, a[1] + (uy + ny) * far],
    [a[0] + (nx - ux) * far, a[1] + (ny - uy) * far],
  ];
  const beyond = (s: number): boolean =>
    ((squares.x[s] as number) - a[0]) * nx + ((squares.y[s] as number) - a[1]) * ny > 0;
  let keptM2 = 0;
  let leftM2 = 0;
  let onStops = true;
  for (let s = 0; s < squares.count; s++) {
    const left = beyond(s);
    if (left) leftM2 += squares.areaM2[s] as number;
    else keptM2 += squares.areaM2[s] as number;
    for (let side = 4 * s; side < 4 * s + 2; side++) {
      const other = squares.link[side] as number;
      if (other >= 0 && !squares.free[side] && beyond(other) !== left) onStops = false;
    }
  }
  return { ring, keptM2, leftM2, onStops };
}
