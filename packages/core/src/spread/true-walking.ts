import type { Walk } from './clock.ts';
import type { SpreadProblem } from './problem.ts';
import type { Point } from './types.ts';

/**
 * Walks as people must take them: from square to square over floor that is still dry (any floor with spiked shoes),
 * or out by one outside door and in by another, round the building along the outline. Infinity when there is no way.
 */
export function trueWalk(problem: SpreadProblem): Walk {
  const { squares, question } = problem;
  const { link, narrow, x, y, cellM, count } = squares;
  const spiked = question.crew.spikedShoes === true;
  const outside = outsideWays(problem);
  const doorOf = new Int32Array(count).fill(-1);
  squares.doors.forEach((door, k) => {
    if (question.exits[k]?.outside) for (const s of door) if (doorOf[s] === -1) doorOf[s] = k;
  });
  const place = new Int32Array(count);
  const stamp = new Int32Array(count);
  const steps = new Int32Array(count);
  const queue = new Int32Array(count);
  let placed: Int32Array | undefined;
  let round = 0;

  /** Fewest steps from square `from` over squares spread at `now` or later; −1 for the target when it is not met. */
  const flood = (from: number, target: number, now: number): number => {
    round += 1;
    stamp[from] = round;
    steps[from] = 0;
    queue[0] = from;
    let tail = 1;
    for (let at = 0; at < tail; at++) {
      const s = queue[at] as number;
      if (s === target) return steps[s] as number;
      for (let side = 4 * s; side < 4 * s + 4; side++) {
        const other = link[side] as number;
        if (other < 0 || stamp[other] === round || narrow[side]) continue;
        if (!spiked && (place[other] as number) < now) continue;
        stamp[other] = round;
        steps[other] = (steps[s] as number) + 1;
        queue[tail++] = other;
      }
    }
    return -1;
  };

  return (order, at) => {
    if (placed !== order) {
      placed = order;
      for (let k = 0; k < order.length; k++) place[order[k] as number] = k;
    }
    const from = order[at - 1] as number;
    const to = order[at] as number;
    if (touches(from, to)) return straightM(from, to);
    const inside = flood(from, to, at);
    if (inside >= 0) return inside * cellM;
    // no dry way on the floor: out by a door reached from here, in by a door that leads to the target
    const out = nearestDoors(from, at);
    const back = nearestDoors(to, at);
    const straight = straightM(from, to);
    let best = Infinity;
    for (const [a, before] of out) {
      for (const [b, after] of back) best = Math.min(best, before + (outside[a]?.[b] ?? Infinity) + after);
    }
    // in and out by one wide door is no shorter than straight
    return Math.max(best, straight);
  };

  function straightM(from: number, to: number): number {
    const dx = (x[from] as number) - (x[to] as number);
    const dy = (y[from] as number) - (y[to] as number);
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** A step to a neighbour, straight or round one corner, is part of spreading; not through a wall. */
  function touches(from: number, to: number): boolean {
    for (let side = 0; side < 4; side++) {
      const between = link[4 * from + side] as number;
      if (between < 0) continue;
      if (between === to) return true;
      if (link[4 * between + ((side + 1) & 3)] === to || link[4 * between + ((side + 3) & 3)] === to) return true;
    }
    return false;
  }

  function nearestDoors(from: number, at: number): Map<number, number> {
    flood(from, -1, at);
    const reached = new Map<number, number>();
    question.exits.forEach(({ outside: leads }, k) => {
      if (!leads) return;
      let best = Infinity;
      for (const s of squares.doors[k] as Int32Array) {
        if (stamp[s] === round) best = Math.min(best, (steps[s] as number) * cellM);
      }
      if (best < Infinity) reached.set(k, best);
    });
    return reached;
  }
}

/** Metres between doors, along the outline, the shorter way round. */
function outsideWays(problem: SpreadProblem): number[][] {
  const { outline, exits } = problem.question;
  let round = 0;
  const starts = outline.map((p, k) => {
    const before = round;
    const q = outline[(k + 1) % outline.length] as Point;
    round += length(p, q);
    return before;
  });
  const at = exits.map(({ a, b }) => {
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    let nearest = Infinity;
    let along = 0;
    outline.forEach((p, k) => {
      const q = outline[(k + 1) % outline.length] as Point;
      const side = length(p, q);
      const share =
        side === 0
          ? 0
          : Math.min(
              1,
              Math.max(0, ((middle[0] - p[0]) * (q[0] - p[0]) + (middle[1] - p[1]) * (q[1] - p[1])) / (side * side)),
            );
      const away = length(middle, [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]);
      if (away < nearest) {
        nearest = away;
        along = (starts[k] as number) + share * side;
      }
    });
    return along;
  });
  return at.map((a) => at.map((b) => Math.min(Math.abs(a - b), round - Math.abs(a - b))));
}

function length(p: Point, q: Point): number {
  const dx = p[0] - q[0];
  const dy = p[1] - q[1];
  return Math.sqrt(dx * dx + dy * dy);
}
