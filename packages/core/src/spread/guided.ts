import { STEP_SQUARES } from './clock.ts';
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

/**
 * Backward growth that follows a preferred order, but takes a square only if every open wet edge can still be closed in
 * time: a square becomes due `deadlineMin` after its first neighbour, and the squares due by a moment must never be more
 * than can be spread until then (earliest due date first; Jackson 1955, from memory).
 *
 * Deadlines are handed out in growing order, so the due squares form a plain queue. Walking ahead is not foreseen, so
 * an age may end above the deadline; the caller scores what comes out. Spiked shoes are not used to start anywhere but
 * at a door. Cost: squares · front.
 */
export function guidedGrowth(problem: SpreadProblem, guide: Guide): Int32Array {
  const { squares, question, batchLitres } = problem;
  const { count, link, free, narrow, x, y, litres, minutes, cellM } = squares;
  const { key, deadlineMin, pull, foresight } = guide;
  const { walkMPerMin, dedicatedMixer } = question.crew;
  const handover = question.batch.handoverMin + (dedicatedMixer ? 0 : question.batch.mixMin);
  const order = new Int32Array(count);
  // 0 untouched, 1 waiting without a deadline, 2 due, 3 spread
  const state = new Uint8Array(count);
  const due = new Float64Array(count);
  const next = new Int32Array(count + 1).fill(-1);
  const previous = new Int32Array(count + 1).fill(-1);
  const head = count;
  next[head] = head;
  previous[head] = head;
  // minutes of walking from the square before in the queue, kept only with foresight
  const chain = new Float64Array(count);
  let queueWalk = 0;
  let dueCount = 0;
  const loose: number[] = [];
  loose.push(...problem.doorSquares);
  for (const s of loose) state[s] = 1;
  let forced = 0;
  let total = 0;
  for (let s = 0; s < count; s++) total += litres[s] as number;
  const mean = total / Math.max(1, count);
  // litres until the next batch limit, going backwards
  let untilLimit = total - batchLitres * (Math.ceil(total / batchLitres - 1e-9) - 1);
  let now = 0;
  let last = -1;
  let place = count;
  const stepMin = STEP_SQUARES * cellM;
  const distance = (a: number, b: number): number => {
    const dx = (x[a] as number) - (x[b] as number);
    const dy = (y[a] as number) - (y[b] as number);
    return Math.sqrt(dx * dx + dy * dy);
  };
  const walkMin = (a: number, b: number): number => {
    const metres = distance(a, b);
    return metres > stepMin ? (metres - cellM) / walkMPerMin : 0;
  };
  while (dueCount > 0 || loose.length > 0 || forced < problem.lastWay.length) {
    let pick = -1;
    let pickValue = Infinity;
    let pickCost = 0;
    let spare = -1;
    let spareValue = Infinity;
    let spareCost = 0;
    const slotMin = last < 0 ? (minutes[0] as number) : (minutes[last] as number);
    const stop = untilLimit < mean / 2 ? handover : 0;
    const perBatch = batchLitres / mean;
    const toLimit = untilLimit / mean;
    const first = next[head] as number;
    // spare minutes of the tightest square among those looked at so far, if all ahead are closed in their turn
    let slack = Infinity;
    let ahead = 0;
    const weigh = (s: number): void => {
      const own = key[s] as number;
      if (own > pickValue) return;
      const metres = last < 0 ? 0 : distance(last, s);
      const cost = last < 0 ? 0 : slotMin + stop + (metres > stepMin ? (metres - cellM) / walkMPerMin : 0);
      if (cost > slack) return;
      const value = own + pull * metres;
      if (value > pickValue || (value === pickValue && s > pick)) return;
      const back = !foresight || s === first || first === head ? 0 : walkMin(s, first);
      if (cost + back > slack) return;
      let added = 0;
      for (let side = 4 * s; side < 4 * s + 4; side++) {
        const other = link[side] as number;
        if (other >= 0 && !free[side] && (state[other] as number) < 2) added += 1;
      }
      const after = dueCount + added - (state[s] === 2 ? 1 : 0);
      if (added > 0) {
        const stops = handover * Math.max(0, Math.ceil((after - toLimit) / perBatch));
        if (after * slotMin + stops + back + queueWalk > deadlineMin + 1e-9) {
          // too wide a front whatever comes next: keep the one that widens it least, in case nothing else fits
          const wide = added * 1e6 + value;
          if (wide < spareValue) {
            spareValue = wide;
            spare = s;
            spareCost = cost;
          }
          return;
        }
      }
      pick = s;
      pickValue = value;
      pickCost = cost;
    };
    let chainMin = 0;
    for (let s = first; s !== head; s = next[s] as number) {
      weigh(s);
      chainMin += chain[s] as number;
      ahead += 1;
      const limits = ahead + 1 > toLimit ? Math.ceil((ahead + 1 - toLimit) / perBatch) : 0;
      const room = (due[s] as number) - now - ahead * slotMin - chainMin - handover * limits + stop + 1e-9;
      if (room < slack) slack = room;
      if (slack <= 0) break;
    }
    if (slack >= slotMin) for (const s of loose) weigh(s);
    if (forced < problem.lastWay.length) {
      pick = problem.lastWay[forced++] as number;
      pickCost = last < 0 ? 0 : slotMin + stop;
    }
    if (pick < 0) {
      pick = spare;
      pickCost = spareCost;
    }
    if (pick < 0) {
      pick = dueCount > 0 ? (next[head] as number) : -1;
      if (pick < 0)
        for (const s of loose) if (state[s] === 1 && (pick < 0 || (key[s] as number) < (key[pick] as number))) pick = s;
      if (pick < 0) break;
      const metres = last < 0 ? 0 : distance(last, pick);
      pickCost = last < 0 ? 0 : slotMin + stop + (metres > stepMin ? (metres - cellM) / walkMPerMin : 0);
    }
    if (state[pick] === 2) {
      const before = previous[pick] as number;
      const after = next[pick] as number;
      next[before] = after;
      previous[after] = before;
      dueCount -= 1;
      if (foresight && after !== head) {
        const walk = before === head ? 0 : walkMin(before, after);
        queueWalk += walk - (chain[after] as number);
        chain[after] = walk;
      }
      queueWalk -= chain[pick] as number;
    } else if (state[pick] === 1) loose.splice(loose.indexOf(pick), 1);
    now += pickCost;
    if (stop > 0) untilLimit += batchLitres;
    untilLimit -= litres[pick] as number;
    state[pick] = 3;
    order[--place] = pick;
    last = pick;
    for (let side = 4 * pick; side < 4 * pick + 4; side++) {
      const other = link[side] as number;
      if (other < 0 || (state[other] as number) >= 2 || narrow[side]) continue;
      if (free[side]) {
        if (state[other] === 0) {
          state[other] = 1;
          loose.push(other);
        }
        continue;
      }
      if (state[other] === 1) loose.splice(loose.indexOf(other), 1);
      state[other] = 2;
      due[other] = now + deadlineMin;
      const tail = previous[head] as number;
      next[tail] = other;
      previous[other] = tail;
      next[other] = head;
      previous[head] = other;
      if (foresight && tail !== head) {
        chain[other] = walkMin(tail, other);
        queueWalk += chain[other] as number;
      }
      dueCount += 1;
    }
  }
  return place === 0 ? order : order.slice(place);
}
