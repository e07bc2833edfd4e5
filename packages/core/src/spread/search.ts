import { bump, floorSpan, tilt } from './bend.ts';
import { type Candidate, candidateOf, isBetter } from './candidate.ts';
import { Budget, type SpreadEffort, type SpreadProgress } from './effort.ts';
import { grownSketches } from './grown-sketches.ts';
import { type Guide, guidedGrowth } from './guided.ts';
import { mendJumps } from './mend.ts';
import { planBack } from './plan-back.ts';
import type { SpreadProblem } from './problem.ts';
import { seededRandom } from './random.ts';
import { keyOf, type LaneStyle, type Sketch } from './sketch.ts';

export interface SearchOptions {
  readonly effort: SpreadEffort;
  readonly seed: number;
  readonly onProgress?: SpreadProgress | undefined;
  /** Orders that must be among the candidates, such as the plan of a tighter case. */
  readonly also?: readonly Int32Array[] | undefined;
}

/** A sketch with the best order found from it so far. */
interface Climber {
  sketch: Sketch;
  best: Candidate;
  /** How its order was grown; undefined: plainly. */
  guide: Omit<Guide, 'key'> | undefined;
}

const GUIDED_COST = 3;
/** Part of the race spent on mending orders piece by piece instead of growing new ones. */
const MEND_SHARE = 0.25;

/**
 * The search: sketches grown plainly, the best of them grown under deadlines, then a race in which the survivors are
 * bent and regrown while half of them drop out. Best first, at most ten of different score, then what was given.
 */
export function search(problem: SpreadProblem, options: SearchOptions): Candidate[] {
  const budget = new Budget(options.effort.candidates, Math.max(1, problem.squares.count), options.onProgress);
  const hall = new HallOfFame(10);
  const given = (options.also ?? [])
    .filter((order) => order.length === problem.squares.count)
    .map((order) => candidateOf(problem, order, 'given'));
  for (const candidate of given) hall.offer(candidate);
  const climbers = growSketches(problem, budget, hall);
  growGuided(problem, climbers, budget, hall);
  race(problem, climbers, budget, hall, seededRandom(options.seed));
  const best = hall.list();
  // true walks may still put a given order first, however it ranks with straight ones
  return [...best, ...given.filter((candidate) => !best.includes(candidate))];
}

/** The best few candidates of different score. */
class HallOfFame {
  private readonly kept: Candidate[] = [];
  private readonly size: number;

  constructor(size: number) {
    this.size = size;
  }

  get bestScore(): number {
    return this.kept[0]?.score.score ?? Infinity;
  }

  offer(candidate: Candidate): void {
    const { kept } = this;
    const last = kept[kept.length - 1];
    if (kept.length === this.size && last && !isBetter(candidate.score, last.score)) return;
    let k = 0;
    while (k < kept.length && !isBetter(candidate.score, (kept[k] as Candidate).score)) k += 1;
    const before = kept[k - 1];
    if (before && !isBetter(before.score, candidate.score)) return;
    kept.splice(k, 0, candidate);
    if (kept.length > this.size) kept.pop();
  }

  list(): Candidate[] {
    return [...this.kept];
  }
}

/** Plain growth of the shortlist, which gets at most two fifths of the budget. */
function growSketches(problem: SpreadProblem, budget: Budget, hall: HallOfFame): Climber[] {
  const climbers: Climber[] = [];
  for (const grow of grownSketches(problem, Math.max(1, Math.floor(budget.total * 0.4)))) {
    // stopped at once there is still one order to show
    if (!budget.within(budget.total, hall.bestScore) && climbers.length > 0) break;
    const { sketch, order } = grow();
    const best = candidateOf(problem, order, sketch.name);
    budget.done += 1;
    hall.offer(best);
    climbers.push({ sketch, best, guide: undefined });
  }
  climbers.sort((a, b) => a.best.score.score - b.best.score.score);
  return climbers;
}

/** Deadlines as shares of the largest age of the plain plans; pulls towards the last square. */
const SETTINGS: readonly (readonly [number, number, boolean])[] = [
  [0.05, 0.8, false],
  [3, 0.8, false],
  [0.3, 0.96, true],
  [1, 0.88, true],
  [0.05, 0.92, false],
  [0.3, 0.84, false],
  [3, 0.88, true],
  [1, 1.03, false],
  [0.3, 0.76, true],
  [3, 0.96, false],
  [0.05, 0.8, true],
];

function growGuided(problem: SpreadProblem, climbers: Climber[], budget: Budget, hall: HallOfFame): void {
  const limit = budget.done + (budget.total - budget.done) * 0.4;
  const each = 2 * SETTINGS.length * GUIDED_COST;
  const starts = climbers.slice(0, Math.max(6, Math.min(40, Math.floor((limit - budget.done) / each))));
  const grown: Climber[] = [];
  for (const [pull, share, foresight] of SETTINGS) {
    for (const lanes of [undefined, 'nearest end'] as const) {
      for (const start of starts) {
        if (!budget.within(limit, hall.bestScore)) break;
        const sketch = lanes ? { ...start.sketch, lanes } : start.sketch;
        const key = keyOf(problem.squares, sketch);
        const guide = { deadlineMin: start.best.score.maxAgeMin * share, pull, foresight };
        const order = guidedGrowth(problem, { key, ...guide });
        budget.done += GUIDED_COST;
        if (order.length !== problem.squares.count) continue;
        const best = candidateOf(problem, order, `${sketch.name}, guided`);
        hall.offer(best);
        grown.push({ sketch, best, guide });
      }
    }
  }
  climbers.push(...grown);
  climbers.sort((a, b) => a.best.score.score - b.best.score.score);
}

const STYLES: readonly LaneStyle[] = ['one way', 'other way', 'to and fro', 'nearest end'];

/** Bends the best plans, each in turn, and drops the last ones as the budget runs down. */
function race(
  problem: SpreadProblem,
  starts: readonly Climber[],
  budget: Budget,
  hall: HallOfFame,
  random: () => number,
): void {
  const from = budget.done;
  const span = Math.max(1, budget.total - from);
  const climbers = distinct(starts, Math.max(2, Math.min(12, Math.floor(span / 60))));
  const field = climbers.length;
  for (let k = 0; climbers.length > 0 && budget.within(budget.total, hall.bestScore); k++) {
    const gone = (budget.done - from) / span;
    const live = Math.max(1, Math.ceil(field * (1 - 1.3 * gone)));
    if (climbers.length > live) {
      climbers.sort((a, b) => a.best.score.score - b.best.score.score);
      climbers.length = live;
    }
    const climber = climbers[k % climbers.length] as Climber;
    if (random() < MEND_SHARE) {
      budget.done += 1;
      const order = mendJumps(problem, climber.best.order, random);
      const mended = order && candidateOf(problem, order, climber.best.name);
      if (mended && mended.score.score < climber.best.score.score) {
        climber.best = mended;
        hall.offer(mended);
      }
      continue;
    }
    const { sketch, key } = random() < 0.5 ? bentSketch(problem, climber, random) : bentOrder(problem, climber, random);
    const guide = random() < (climber.guide ? 0.2 : 0.5) ? undefined : nextGuide(climber, random);
    const order = guide ? guidedGrowth(problem, { key, ...guide }) : planBack(problem, key);
    budget.done += guide ? GUIDED_COST : 1;
    const best = candidateOf(problem, order, `${sketch.name}, bent`);
    // a little worse is accepted at first, so that a climber can leave a dead end
    const allowed = 1 + 0.003 * (1 - gone) * random();
    if (best.score.score < climber.best.score.score * allowed) {
      climber.best = best;
      climber.sketch = sketch;
      climber.guide = guide;
      hall.offer(best);
    }
  }
}

/** What worked for this climber, changed a little, or something new. */
function nextGuide({ guide, best }: Climber, random: () => number): Omit<Guide, 'key'> {
  if (guide && random() < 0.6) {
    return {
      deadlineMin: guide.deadlineMin * (0.97 + 0.06 * random()),
      pull: guide.pull * (0.7 + 0.6 * random()),
      foresight: guide.foresight,
    };
  }
  return {
    deadlineMin: best.score.maxAgeMin * (0.9 + 0.15 * random()),
    pull: random() < 0.4 ? 0 : random(),
    foresight: random() < 0.5,
  };
}

function distinct(starts: readonly Climber[], most: number): Climber[] {
  const seen = new Set<number>();
  const kept: Climber[] = [];
  for (const start of starts) {
    const rounded = Math.round(start.best.score.score * 1000);
    if (seen.has(rounded)) continue;
    seen.add(rounded);
    kept.push({ ...start });
    if (kept.length === most) break;
  }
  return kept;
}

/** Bends the field under the sketch, now and then changing how its lanes are laid. */
function bentSketch(problem: SpreadProblem, climber: Climber, random: () => number) {
  const field = Float64Array.from(climber.sketch.field);
  if (random() < 0.8) bump(problem.squares, field, random() < 0.5 ? 1 : 4, random);
  else tilt(problem.squares, field, random);
  const lanes = random() < 0.15 ? (STYLES[Math.floor(random() * 4)] as LaneStyle) : climber.sketch.lanes;
  const sketch: Sketch = { ...climber.sketch, field, lanes };
  return { sketch, key: keyOf(problem.squares, sketch) };
}

/** Takes the order as it is, in units of one lane, and bends that. */
function bentOrder(problem: SpreadProblem, climber: Climber, random: () => number) {
  const { squares } = problem;
  const perLane = (squares.count * squares.cellM) / floorSpan(squares);
  const key = new Float64Array(squares.count);
  climber.best.order.forEach((s, place) => {
    key[s] = (squares.count - place) / perLane;
  });
  bump(squares, key, random() < 0.5 ? 1.5 : 5, random);
  return { sketch: climber.sketch, key };
}
