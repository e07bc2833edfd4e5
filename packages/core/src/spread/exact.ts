import type { FloorSquares } from './floor-squares.ts';

/** What the exact search found out about the largest age of a wet edge. */
export interface ExactAge {
  /** Smallest largest age found, in the unit of the clock. */
  readonly age: number;
  /** An order, first square first, that reaches it; empty when none was found within the limits. */
  readonly order: Int32Array;
  /** No order has a smaller largest age than this. */
  readonly atLeast: number;
  /** `age` is the optimum. */
  readonly proved: boolean;
  readonly nodes: number;
}

export interface ExactQuestion {
  readonly squares: Pick<FloorSquares, 'count' | 'link' | 'free' | 'narrow'>;
  readonly doorSquares: Int32Array;
  /** Moment of each place in the order, rising: what comes first is spread at clock[0]. */
  readonly clock: Float64Array;
  /** Steps the search may take, over all targets together. */
  readonly nodes: number;
  /** Asked every few hundred steps; answering false is like running out of them. */
  readonly going?: (() => boolean) | undefined;
}

/** Ages nearer than this, in the unit of the clock, are the same age. */
const ROUNDING_MIN = 1e-7;

/** Steps between two questions whether to go on. */
const ASK_EVERY = 256;

/** Largest floor the exact search takes. */
export const EXACT_MOST_SQUARES = 160;

/**
 * Smallest possible largest age over all orders that paint nobody in, by depth-first backward growth.
 *
 * For a target age every square near an open edge has a latest place, and through it its neighbours have; a branch dies
 * when more squares are due by some place than fit, or when the same squares with the same latest places died before
 * (the key must name the squares: their deadlines alone are not the state). The target falls to the next smaller age a
 * clock can show until none is possible; that proves the last one. All squares count alike; walking is left out.
 * Running out of nodes leaves `proved` false. Errors: more than {@link EXACT_MOST_SQUARES} squares throws.
 */
export function exactLargestAge(question: ExactQuestion): ExactAge {
  const { squares, clock } = question;
  const { count } = squares;
  if (count < 2) {
    return { age: 0, order: Int32Array.from(question.doorSquares).slice(0, count), atLeast: 0, proved: true, nodes: 0 };
  }
  if (count > EXACT_MOST_SQUARES) throw new RangeError(`exact search: ${count} squares, at most ${EXACT_MOST_SQUARES}`);
  const back = new Float64Array(count);
  for (let p = 0; p < count; p++) back[p] = (clock[count - 1] as number) - (clock[count - 1 - p] as number);
  const ages = agesOf(back);
  const search = new BackwardSearch(question, back);
  let best: Int32Array = new Int32Array(0);
  let age = Infinity;
  // every age below ages[low] is known to be impossible
  let low = ages.findIndex((value) => value >= simpleBound(squares, back) - ROUNDING_MIN);
  let target = ages.length - 1;
  let stuck = false;
  // from a generous target downwards: each answer gives an order whose real largest age is the next start
  while (target >= low) {
    const found = search.tryAge(ages[target] as number, question.nodes);
    if (found === 'limit') {
      stuck = true;
      break;
    }
    if (found === 'none') {
      low = target + 1;
      break;
    }
    best = found;
    age = largestAge(squares, found, clock);
    target = ages.findIndex((value) => value >= age - ROUNDING_MIN) - 1;
  }
  // out of steps: small ages are soon shown impossible, so the bound is raised from below with as many steps again
  let open = target;
  while (stuck && !search.halted && low < open) {
    const middle = Math.floor((low + open - 1) / 2);
    if (search.tryAge(ages[middle] as number, search.nodes + Math.ceil(question.nodes / 8)) === 'none')
      low = middle + 1;
    else if (middle === low) break;
    else open = middle;
  }
  const atLeast = age === Infinity ? (ages[low] ?? 0) : Math.min(age, ages[low] ?? 0);
  return { age, order: best, atLeast, proved: age < Infinity && atLeast >= age - ROUNDING_MIN, nodes: search.nodes };
}

/** Is there an order whose ages all stay within `age`? `limit`: not known after `nodes` steps. */
export function possibleWithin(question: ExactQuestion, age: number): 'yes' | 'no' | 'limit' {
  const { clock } = question;
  const last = clock.length - 1;
  const back = Float64Array.from(clock, (_, p) => (clock[last] as number) - (clock[last - p] as number));
  const found = new BackwardSearch(question, back).tryAge(age, question.nodes);
  return found === 'none' ? 'no' : found === 'limit' ? 'limit' : 'yes';
}

/** Largest age over the links that are not free. */
export function largestAge(squares: ExactQuestion['squares'], order: Int32Array, clock: Float64Array): number {
  const at = new Float64Array(squares.count);
  order.forEach((s, place) => {
    at[s] = clock[place] as number;
  });
  let largest = 0;
  for (let s = 0; s < squares.count; s++) {
    for (let side = 0; side < 4; side++) {
      const other = squares.link[4 * s + side] as number;
      if (other < 0 || squares.free[4 * s + side]) continue;
      largest = Math.max(largest, Math.abs((at[s] as number) - (at[other] as number)));
    }
  }
  return largest;
}

/** Every difference of two moments, rising; of those that differ only by rounding the largest, so that none is lost. */
function agesOf(back: Float64Array): number[] {
  const ages: number[] = [0];
  for (let p = 0; p < back.length; p++) {
    for (let q = p + 1; q < back.length; q++) ages.push((back[q] as number) - (back[p] as number));
  }
  ages.sort((a, b) => a - b);
  return ages.filter((age, k) => (ages[k + 1] ?? Infinity) - age > ROUNDING_MIN);
}

/** A square with n ties has them within n places of it, half before and half after at best. */
function simpleBound(squares: ExactQuestion['squares'], back: Float64Array): number {
  let most = 0;
  for (let s = 0; s < squares.count; s++) {
    let ties = 0;
    for (let side = 4 * s; side < 4 * s + 4; side++)
      if ((squares.link[side] as number) >= 0 && !squares.free[side]) ties += 1;
    most = Math.max(most, ties);
  }
  const places = Math.ceil(most / 2);
  let least = Infinity;
  for (let p = 0; p + places < back.length; p++)
    least = Math.min(least, (back[p + places] as number) - (back[p] as number));
  return least === Infinity ? 0 : least;
}

class BackwardSearch {
  nodes = 0;
  halted = false;
  private readonly question: ExactQuestion;
  private readonly back: Float64Array;

  constructor(question: ExactQuestion, back: Float64Array) {
    this.question = question;
    this.back = back;
  }

  /** An order whose ages all stay within `age`, `none` when there is none, `limit` when `nodes` reaches the limit first. */
  tryAge(age: number, limit: number): Int32Array | 'none' | 'limit' {
    const { squares, doorSquares } = this.question;
    const { count, link, free, narrow } = squares;
    const { back } = this;
    const NEVER = count;
    // latest place a neighbour may have when a square stands at p
    const reach = new Int32Array(count + 1).fill(NEVER);
    for (let p = 0, q = 0; p < count; p++) {
      while (q + 1 < count && (back[q + 1] as number) <= (back[p] as number) + age + ROUNDING_MIN) q += 1;
      reach[p] = q === count - 1 ? NEVER : q;
    }
    const placed = new Uint8Array(count);
    const touched = new Int32Array(count);
    for (const s of doorSquares) touched[s] = (touched[s] as number) + 1;
    const order = new Int32Array(count);
    const dead = new Set<string>();
    const due = new Int32Array(count + 1);
    const codes: number[] = new Array(count);

    const fits = (latest: Int32Array, next: number): boolean => {
      due.fill(0);
      for (let s = 0; s < count; s++)
        if (!placed[s]) due[latest[s] as number] = (due[latest[s] as number] as number) + 1;
      let sum = 0;
      for (let p = 0; p < count; p++) {
        sum += due[p] as number;
        if (sum > Math.max(0, p - next + 1)) return false;
      }
      return true;
    };

    const grow = (next: number, latest: Int32Array): boolean | 'limit' => {
      if (next === count) return true;
      if (this.nodes >= limit || this.halted) return 'limit';
      this.nodes += 1;
      if (this.nodes % ASK_EVERY === 0 && this.question.going?.() === false) this.halted = true;
      for (let s = 0; s < count; s++) codes[s] = placed[s] ? 0xffff : (latest[s] as number);
      const state = String.fromCharCode(...codes);
      if (dead.has(state)) return false;
      const choices: number[] = [];
      for (let s = 0; s < count; s++) if (!placed[s] && (touched[s] as number) > 0) choices.push(s);
      choices.sort((a, b) => (latest[a] as number) - (latest[b] as number) || a - b);
      for (const s of choices) {
        const after = Int32Array.from(latest);
        const stack: number[] = [];
        placed[s] = 1;
        const tighten = (square: number, place: number): void => {
          for (let side = 4 * square; side < 4 * square + 4; side++) {
            const other = link[side] as number;
            if (other < 0 || placed[other] || free[side] || (after[other] as number) <= place) continue;
            after[other] = place;
            stack.push(other);
          }
        };
        tighten(s, reach[next] as number);
        for (let from = stack.pop(); from !== undefined; from = stack.pop())
          tighten(from, reach[after[from] as number] as number);
        if (fits(after, next + 1)) {
          for (let side = 4 * s; side < 4 * s + 4; side++) {
            const other = link[side] as number;
            if (other >= 0 && !narrow[side]) touched[other] = (touched[other] as number) + 1;
          }
          order[count - 1 - next] = s;
          const result = grow(next + 1, after);
          if (result !== false) return result;
          for (let side = 4 * s; side < 4 * s + 4; side++) {
            const other = link[side] as number;
            if (other >= 0 && !narrow[side]) touched[other] = (touched[other] as number) - 1;
          }
        }
        placed[s] = 0;
      }
      dead.add(state);
      return false;
    };

    const start = new Int32Array(count).fill(NEVER);
    const result = grow(0, start);
    if (result === 'limit') return 'limit';
    return result ? order : 'none';
  }
}
