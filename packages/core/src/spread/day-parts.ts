import { insideRing } from './geometry.ts';
import { type SpreadProblem, spreadProblem } from './problem.ts';
import type { Exit, Ring, SpreadCase } from './types.ts';

/** Floor that is not spread today. */
export interface OtherPart {
  readonly ring: Ring;
  /** It carries people today: bare, or cured enough to walk on. */
  readonly walkable: boolean;
}

/**
 * The case of one day: the whole floor without the other parts, whose film is fixed. Where today's floor borders a
 * walkable part that leads to a door, its edge is a way out; edges towards other parts never have to tie in wet.
 */
export function dayCase(question: SpreadCase, others: readonly OtherPart[]): SpreadCase {
  const whole = spreadProblem(question, 'whole');
  return {
    ...question,
    exits: [...question.exits, ...edgesToWalkable(whole, others)],
    done: [...(question.done ?? []), ...others],
  };
}

/** One case per day, first day first: floor of earlier days fixed, floor of later days still bare. */
export function dayCases(question: SpreadCase, days: readonly Ring[], walkableNextDay: boolean): SpreadCase[] {
  return days.map((_, today) => {
    const others = days.flatMap((ring, day) =>
      day === today ? [] : [{ ring, walkable: day > today || walkableNextDay }],
    );
    const case_ = dayCase(question, others);
    return { ...case_, name: `${question.name}, day ${today + 1}` };
  });
}

/** Runs of squares beside walkable floor from which a real door is reached, as exits along the edge. */
function edgesToWalkable(whole: SpreadProblem, others: readonly OtherPart[]): Exit[] {
  const { squares } = whole;
  const { count, x, y, link, cellM } = squares;
  // 0 today's floor, 1 other floor that carries people, 2 other floor that does not
  const kind = new Uint8Array(count);
  for (let s = 0; s < count; s++) {
    const part = others.find(({ ring }) => insideRing(x[s] as number, y[s] as number, ring));
    if (part) kind[s] = part.walkable ? 1 : 2;
  }
  const leads = new Uint8Array(count);
  const stack: number[] = [];
  for (const s of whole.doorSquares) {
    if (kind[s] !== 1) continue;
    leads[s] = 1;
    stack.push(s);
  }
  for (let s = stack.pop(); s !== undefined; s = stack.pop()) {
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other < 0 || leads[other] || kind[other] !== 1) continue;
      leads[other] = 1;
      stack.push(other);
    }
  }
  const exits: Exit[] = [];
  for (let side = 0; side < 4; side++) {
    const upright = side % 2 === 0;
    // squares of today with walkable floor on this side, by line and then along it
    const edge: { line: number; place: number }[] = [];
    for (let s = 0; s < count; s++) {
      const other = link[4 * s + side] as number;
      if (kind[s] !== 0 || other < 0 || !leads[other]) continue;
      const column = squares.column[s] as number;
      const row = squares.row[s] as number;
      edge.push(
        upright
          ? { line: column + (side === 0 ? 1 : 0), place: row }
          : { line: row + (side === 1 ? 1 : 0), place: column },
      );
    }
    edge.sort((a, b) => a.line - b.line || a.place - b.place);
    let from = 0;
    for (let k = 1; k <= edge.length; k++) {
      const last = edge[k - 1];
      const next = edge[k];
      if (last && next && next.line === last.line && next.place === last.place + 1) continue;
      const first = edge[from];
      from = k;
      if (!first || !last) continue;
      const at = (upright ? squares.minX : squares.minY) + first.line * cellM;
      const low = (upright ? squares.minY : squares.minX) + first.place * cellM;
      const high = (upright ? squares.minY : squares.minX) + (last.place + 1) * cellM;
      exits.push({ a: upright ? [at, low] : [low, at], b: upright ? [at, high] : [high, at], outside: true });
    }
  }
  return exits;
}
