import { STEP_SQUARES } from './clock.ts';
import { DueQueue } from './due-queue.ts';
import type { SpreadProblem } from './problem.ts';

/** How a guided growth decides; see {@link guidedGrowth}. */
export interface Guide {
  /** Preferred order: small = spread late. */
  readonly key: Float64Array;
  /** Largest age wanted on any edge, min. */
  readonly deadlineMin: number;
  /** How much one metre away from the last square weighs against one unit of the key. */
  readonly pull: number;
  /** Reckon with the walks between the squares that are due, not only with their spreading. */
  readonly foresight: boolean;
}

const UNTOUCHED = 0;
/** Can be spread, but nothing open waits for it. */
const LOOSE = 1;
const DUE = 2;
const SPREAD = 3;

/**
 * Backward growth that follows a preferred order, but takes a square only if every open wet edge can still be closed in
 * time: a square becomes due `deadlineMin` after its first neighbour, and the squares due by a moment must never be more
 * than can be spread until then (earliest due date first).
 *
 * Without foresight walking ahead is not reckoned with, so an age may end above the deadline; the caller scores what
 * comes out. Spiked shoes are not used to start anywhere but at a door. Cost: squares · front.
 */
export function guidedGrowth(problem: SpreadProblem, guide: Guide): Int32Array {
  const { squares, question, batchLitres } = problem;
  const { count, link, free, narrow, x, y, litres, minutes, cellM } = squares;
  const { key, deadlineMin, pull } = guide;
  const { walkMPerMin, dedicatedMixer } = question.crew;
  const handover = question.batch.handoverMin + (dedicatedMixer ? 0 : question.batch.mixMin);
  const stepM = STEP_SQUARES * cellM;

  const distance = (a: number, b: number): number => {
    const dx = (x[a] as number) - (x[b] as number);
    const dy = (y[a] as number) - (y[b] as number);
    return Math.sqrt(dx * dx + dy * dy);
  };
  const walkMin = (metres: number): number => (metres > stepM ? (metres - cellM) / walkMPerMin : 0);
  const queue = new DueQueue(count, guide.foresight ? (a, b) => walkMin(distance(a, b)) : undefined);
  const { due, chain, next, end } = queue;
  const state = new Uint8Array(count);
  const loose: number[] = [...problem.doorSquares];
  for (const s of loose) state[s] = LOOSE;

  let total = 0;
  for (let s = 0; s < count; s++) total += litres[s] as number;
  const perSquare = total / Math.max(1, count);
  const perBatch = batchLitres / perSquare;
  // litres until the next handover, going backwards: first the part batch
  let untilHandover = total - batchLitres * (Math.ceil(total / batchLitres - 1e-9) - 1);

  const order = new Int32Array(count);
  let place = count;
  let forced = 0;
  let now = 0;
  let last = -1;
  let slotMin = (minutes[0] ?? 0) as number;
  let stopMin = 0;
  let toHandover = 0;
  let slack = 0;
  let first = 0;
  // the best square so far, and the one to take if every square makes the front too wide
  let pick = -1;
  let pickValue = 0;
  let pickCost = 0;
  let spare = -1;
  let spareValue = 0;
  let spareCost = 0;

  const costOf = (metres: number): number => (last < 0 ? 0 : slotMin + stopMin + walkMin(metres));

  /** Minutes that everything due would take after `s` with the new edges it opens, if handed out in turn. */
  const frontMin = (s: number, added: number, back: number): number => {
    const waiting = queue.count + added - (state[s] === DUE ? 1 : 0);
    const stops = Math.max(0, Math.ceil((waiting - toHandover) / perBatch));
    return waiting * slotMin + stops * handover + back + queue.walkMin;
  };

  const weigh = (s: number): void => {
    const own = key[s] as number;
    if (own > pickValue) return;
    const metres = last < 0 ? 0 : distance(last, s);
    const cost = costOf(metres);
    if (cost > slack) return;
    const value = own + pull * metres;
    if (value > pickValue || (value === pickValue && s > pick)) return;
    const back = !guide.foresight || s === first || first === end ? 0 : walkMin(distance(s, first));
    if (cost + back > slack) return;
    let added = 0;
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other >= 0 && !free[side] && (state[other] as number) < DUE) added += 1;
    }
    if (added > 0 && frontMin(s, added, back) > deadlineMin + 1e-9) {
      const wide = added * 1e6 + value;
      if (wide < spareValue) {
        spareValue = wide;
        spare = s;
        spareCost = cost;
      }
      return;
    }
    pick = s;
    pickValue = value;
    pickCost = cost;
  };

  const choose = (): void => {
    pick = -1;
    pickValue = Infinity;
    spare = -1;
    spareValue = Infinity;
    first = queue.first;
    // spare minutes of the tightest square looked at so far, if all are closed in their turn
    slack = Infinity;
    let ahead = 0;
    let walked = 0;
    for (let s = first; s !== end; s = next[s] as number) {
      weigh(s);
      walked += chain[s] as number;
      ahead += 1;
      const stops = ahead + 1 > toHandover ? Math.ceil((ahead + 1 - toHandover) / perBatch) : 0;
      const room = (due[s] as number) - now - ahead * slotMin - walked - handover * stops + stopMin + 1e-9;
      if (room < slack) slack = room;
      if (slack <= 0) break;
    }
    if (slack >= slotMin) for (const s of loose) weigh(s);
    if (pick < 0) {
      pick = spare;
      pickCost = spareCost;
    }
    if (pick < 0) {
      // nothing keeps every deadline any more: the most urgent square, or any that is left
      pick = queue.count > 0 ? queue.first : (loose[0] as number);
      for (const s of queue.count > 0 ? [] : loose) if ((key[s] as number) < (key[pick] as number)) pick = s;
      pickCost = costOf(last < 0 ? 0 : distance(last, pick));
    }
  };

  while (queue.count > 0 || loose.length > 0 || forced < problem.lastWay.length) {
    if (last >= 0) slotMin = minutes[last] as number;
    stopMin = untilHandover < perSquare / 2 ? handover : 0;
    // whole squares that still go into this batch, by the same half-square rule that cuts the pours
    toHandover = Math.max(0, Math.ceil(untilHandover / perSquare - 0.5 - 1e-9));
    if (forced < problem.lastWay.length) {
      pick = problem.lastWay[forced++] as number;
      pickCost = costOf(0);
    } else choose();
    if (state[pick] === DUE) queue.remove(pick);
    else if (state[pick] === LOOSE) loose.splice(loose.indexOf(pick), 1);
    now += pickCost;
    if (stopMin > 0) untilHandover += batchLitres;
    untilHandover -= litres[pick] as number;
    state[pick] = SPREAD;
    order[--place] = pick;
    last = pick;
    for (let side = 4 * pick; side < 4 * pick + 4; side++) {
      const other = link[side] as number;
      if (other < 0 || (state[other] as number) >= DUE || narrow[side]) continue;
      if (!free[side]) {
        if (state[other] === LOOSE) loose.splice(loose.indexOf(other), 1);
        state[other] = DUE;
        queue.append(other, now + deadlineMin);
      } else if (state[other] === UNTOUCHED) {
        state[other] = LOOSE;
        loose.push(other);
      }
    }
  }
  return place === 0 ? order : order.slice(place);
}
