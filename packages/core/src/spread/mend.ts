import { STEP_SQUARES } from './clock.ts';
import type { SpreadProblem } from './problem.ts';

/** Longest piece moved or turned round, squares. */
const LONGEST_PIECE = 120;

/**
 * One random repair of an order where somebody has to walk: turns the piece between two walks round, or moves it beside
 * one of its neighbours. Undefined when there is nothing to mend or the result would paint somebody in.
 */
export function mendJumps(problem: SpreadProblem, order: Int32Array, random: () => number): Int32Array | undefined {
  const walks = walksOf(problem, order);
  if (walks.length < 2) return undefined;
  const at = Math.floor(random() * (walks.length - 1));
  const from = walks[at] as number;
  const to = walks[Math.min(walks.length - 1, at + 1 + Math.floor(random() * random() * 4))] as number;
  // sometimes only the beginning or the end of the piece
  const cut = random() < 0.3 && to - from > 1 ? 1 + Math.floor(random() * (to - from - 1)) : 0;
  const begin = cut > 0 && random() < 0.5 ? to - cut : from;
  const end = cut > 0 && begin === from ? from + cut : to;
  if (end - begin > LONGEST_PIECE) return undefined;
  const piece = order.slice(begin, end);
  const turn = random() < 0.5;
  if (turn) piece.reverse();
  const mended =
    turn && random() < 0.5 ? replaced(order, begin, piece) : moved(problem, order, begin, end, piece, random);
  return mended && paintsNobodyIn(problem, mended) ? mended : undefined;
}

/** Places where a walk leads to the square, and the end of the order. */
function walksOf({ squares }: SpreadProblem, order: Int32Array): number[] {
  const { x, y, cellM } = squares;
  const step2 = (STEP_SQUARES * cellM) ** 2;
  const places = [0];
  for (let k = 1; k < order.length; k++) {
    const a = order[k - 1] as number;
    const b = order[k] as number;
    const dx = (x[a] as number) - (x[b] as number);
    const dy = (y[a] as number) - (y[b] as number);
    if (dx * dx + dy * dy > step2) places.push(k);
  }
  places.push(order.length);
  return places;
}

function replaced(order: Int32Array, begin: number, piece: Int32Array): Int32Array {
  const next = Int32Array.from(order);
  next.set(piece, begin);
  return next;
}

/** The piece right before or right after a square that borders one of its ends. */
function moved(
  problem: SpreadProblem,
  order: Int32Array,
  begin: number,
  end: number,
  piece: Int32Array,
  random: () => number,
): Int32Array | undefined {
  const { link } = problem.squares;
  const tip = (random() < 0.5 ? piece[0] : piece[piece.length - 1]) as number;
  const beside = link[4 * tip + Math.floor(random() * 4)] as number;
  if (beside < 0 || piece.includes(beside)) return undefined;
  const anchor = order.indexOf(beside) + (random() < 0.5 ? 1 : 0);
  const next = new Int32Array(order.length);
  let k = 0;
  const copy = (low: number, high: number): void => {
    if (high <= low) return;
    next.set(order.subarray(low, high), k);
    k += high - low;
  };
  if (anchor <= begin) {
    copy(0, anchor);
    next.set(piece, k);
    k += piece.length;
    copy(anchor, begin);
    copy(end, order.length);
  } else {
    copy(0, begin);
    copy(end, anchor);
    next.set(piece, k);
    k += piece.length;
    copy(anchor, order.length);
  }
  return next;
}

/** The rule of the backward growth, and the way to a station on the floor still last. */
function paintsNobodyIn(problem: SpreadProblem, order: Int32Array): boolean {
  const { squares, doorSquares, lastWay, question } = problem;
  const { link, narrow, count } = squares;
  const later = new Uint8Array(count);
  const door = new Uint8Array(count);
  for (const s of doorSquares) door[s] = 1;
  for (let k = 0; k < lastWay.length; k++) if (order[count - 1 - k] !== lastWay[k]) return false;
  if (question.crew.spikedShoes === true) return door[order[count - 1] as number] === 1;
  for (let place = count - 1; place >= 0; place--) {
    const s = order[place] as number;
    let way = door[s] === 1;
    for (let side = 4 * s; !way && side < 4 * s + 4; side++) {
      const other = link[side] as number;
      way = other >= 0 && later[other] === 1 && !narrow[side];
    }
    if (!way) return false;
    later[s] = 1;
  }
  return true;
}
