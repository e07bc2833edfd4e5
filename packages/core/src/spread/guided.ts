import { STEP_SQUARES } from './clock.ts';
import type { SpreadProblem } from './problem.ts';
import { scratchOf } from './scratch.ts';

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
 * than can be spread until then (earliest due date first). Deadlines are handed out in rising order, so a plain linked
 * queue keeps them sorted; with foresight it also keeps the minutes of walking from each square to the next.
 *
 * Without foresight walking ahead is not reckoned with, so an age may end above the deadline; the caller scores what
 * comes out. Spiked shoes are not used to start anywhere but at a door. Cost: squares · front. It is the innermost loop
 * of the search, hence one function over plain arrays.
 */
export function guidedGrowth(problem: SpreadProblem, guide: Guide): Int32Array {
  const { squares, question, batchLitres, lastWay } = problem;
  const { count, link, free, narrow, x, y, litres, minutes, cellM } = squares;
  const { key, deadlineMin, pull, foresight } = guide;
  const { walkMPerMin, dedicatedMixer } = question.crew;
  const handover = question.batch.handoverMin + (dedicatedMixer ? 0 : question.batch.mixMin);
  const stepM = STEP_SQUARES * cellM;
  const { due, chain, next, previous, state, loose } = scratchOf(squares).growth;
  // the queue's number `count` stands for both of its ends
  const end = count;
  next[end] = end;
  previous[end] = end;
  state.fill(UNTOUCHED);
  let waiting = 0;
  let queueWalk = 0;
  let looseCount = 0;
  for (const s of problem.doorSquares) {
    loose[looseCount++] = s;
    state[s] = LOOSE;
  }

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
  let lastX = 0;
  let lastY = 0;

  while (waiting > 0 || looseCount > 0 || forced < lastWay.length) {
    const slotMin = minutes[Math.max(0, last)] as number;
    const stopMin = untilHandover < perSquare / 2 ? handover : 0;
    // whole squares that still go into this batch, by the same half-square rule that cuts the pours
    const toHandover = Math.max(0, Math.ceil(untilHandover / perSquare - 0.5 - 1e-9));
    let pick = -1;
    let pickValue = Infinity;
    let pickCost = 0;
    if (forced < lastWay.length) {
      pick = lastWay[forced++] as number;
      pickCost = last < 0 ? 0 : slotMin + stopMin;
    } else {
      // the square to take if every square makes the front too wide
      let spare = -1;
      let spareValue = Infinity;
      let spareCost = 0;
      const first = next[end] as number;
      const firstX = first === end ? 0 : (x[first] as number);
      const firstY = first === end ? 0 : (y[first] as number);
      // spare minutes of the tightest square looked at so far, if all are closed in their turn
      let slack = Infinity;
      let ahead = 0;
      let walked = 0;
      // first the squares that are due, most urgent first, then, if there is time, those that are not
      for (let s = first, k = -1; ; ) {
        if (k < 0 && (s === end || slack <= 0)) k = slack >= slotMin ? 0 : looseCount;
        if (k >= 0) {
          if (k >= looseCount) break;
          s = loose[k++] as number;
        }
        const own = key[s] as number;
        if (own <= pickValue) {
          let metres = 0;
          let cost = 0;
          if (last >= 0) {
            const dx = lastX - (x[s] as number);
            const dy = lastY - (y[s] as number);
            metres = Math.sqrt(dx * dx + dy * dy);
            cost = slotMin + stopMin + (metres > stepM ? (metres - cellM) / walkMPerMin : 0);
          }
          const value = own + pull * metres;
          if (cost <= slack && (value < pickValue || (value === pickValue && s <= pick))) {
            let back = 0;
            if (foresight && s !== first && first !== end) {
              const dx = (x[s] as number) - firstX;
              const dy = (y[s] as number) - firstY;
              const away = Math.sqrt(dx * dx + dy * dy);
              back = away > stepM ? (away - cellM) / walkMPerMin : 0;
            }
            if (cost + back <= slack) {
              let added = 0;
              for (let side = 4 * s; side < 4 * s + 4; side++) {
                const other = link[side] as number;
                if (other >= 0 && !free[side] && (state[other] as number) < DUE) added += 1;
              }
              let tooWide = false;
              if (added > 0) {
                // minutes that everything due would take after this square with the edges it opens, handed out in turn
                const front = waiting + added - (state[s] === DUE ? 1 : 0);
                const stops = front > toHandover ? Math.ceil((front - toHandover) / perBatch) : 0;
                tooWide = front * slotMin + stops * handover + back + queueWalk > deadlineMin + 1e-9;
              }
              if (tooWide) {
                const wide = added * 1e6 + value;
                if (wide < spareValue) {
                  spareValue = wide;
                  spare = s;
                  spareCost = cost;
                }
              } else {
                pick = s;
                pickValue = value;
                pickCost = cost;
              }
            }
          }
        }
        if (k < 0) {
          walked += chain[s] as number;
          ahead += 1;
          const stops = ahead + 1 > toHandover ? Math.ceil((ahead + 1 - toHandover) / perBatch) : 0;
          const room = (due[s] as number) - now - ahead * slotMin - walked - handover * stops + stopMin + 1e-9;
          if (room < slack) slack = room;
          s = next[s] as number;
        }
      }
      if (pick < 0) {
        pick = spare;
        pickCost = spareCost;
      }
      if (pick < 0) {
        // nothing keeps every deadline any more: the most urgent square, or any that is left
        pick = waiting > 0 ? first : (loose[0] as number);
        if (waiting === 0)
          for (let k = 1; k < looseCount; k++) {
            const s = loose[k] as number;
            if ((key[s] as number) < (key[pick] as number)) pick = s;
          }
        if (last >= 0) {
          const dx = lastX - (x[pick] as number);
          const dy = lastY - (y[pick] as number);
          const metres = Math.sqrt(dx * dx + dy * dy);
          pickCost = slotMin + stopMin + (metres > stepM ? (metres - cellM) / walkMPerMin : 0);
        } else pickCost = 0;
      }
    }
    if (state[pick] === DUE) {
      const before = previous[pick] as number;
      const after = next[pick] as number;
      next[before] = after;
      previous[after] = before;
      waiting -= 1;
      if (foresight) {
        queueWalk -= chain[pick] as number;
        if (after !== end) {
          let minutesBetween = 0;
          if (before !== end) {
            const dx = (x[before] as number) - (x[after] as number);
            const dy = (y[before] as number) - (y[after] as number);
            const metres = Math.sqrt(dx * dx + dy * dy);
            minutesBetween = metres > stepM ? (metres - cellM) / walkMPerMin : 0;
          }
          queueWalk += minutesBetween - (chain[after] as number);
          chain[after] = minutesBetween;
        }
      }
    } else if (state[pick] === LOOSE) {
      looseCount = without(loose, looseCount, pick);
    }
    now += pickCost;
    if (stopMin > 0) untilHandover += batchLitres;
    untilHandover -= litres[pick] as number;
    state[pick] = SPREAD;
    order[--place] = pick;
    last = pick;
    lastX = x[pick] as number;
    lastY = y[pick] as number;
    for (let side = 4 * pick; side < 4 * pick + 4; side++) {
      const other = link[side] as number;
      if (other < 0 || (state[other] as number) >= DUE || narrow[side]) continue;
      if (!free[side]) {
        if (state[other] === LOOSE) looseCount = without(loose, looseCount, other);
        state[other] = DUE;
        const tail = previous[end] as number;
        due[other] = now + deadlineMin;
        next[tail] = other;
        previous[other] = tail;
        next[other] = end;
        previous[end] = other;
        waiting += 1;
        let minutesBetween = 0;
        if (foresight && tail !== end) {
          const dx = (x[tail] as number) - (x[other] as number);
          const dy = (y[tail] as number) - (y[other] as number);
          const metres = Math.sqrt(dx * dx + dy * dy);
          minutesBetween = metres > stepM ? (metres - cellM) / walkMPerMin : 0;
        }
        queueWalk += minutesBetween;
        chain[other] = minutesBetween;
      } else if (state[other] === UNTOUCHED) {
        state[other] = LOOSE;
        loose[looseCount++] = other;
      }
    }
  }
  return place === 0 ? order : order.slice(place);
}

/** Takes one square out of a list, the rest in the same order; gives the new length. */
function without(list: Int32Array, length: number, square: number): number {
  const at = list.indexOf(square);
  list.copyWithin(at, at + 1, length);
  return length - 1;
}
