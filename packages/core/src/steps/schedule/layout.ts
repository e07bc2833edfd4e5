import type { Task } from '../results.ts';

/** Stretches of working time, ms since 1970, in order. */
export type Stretches = readonly { readonly from: number; readonly to: number }[];

export interface Segment {
  readonly task: Task;
  /** Hand, from 0. */
  readonly hand: number;
  readonly from: number;
  readonly to: number;
}

export interface Laid {
  readonly segments: readonly Segment[];
  /** End of the last task, ms since 1970; the given start where there is nothing to do. */
  readonly end: number;
  /** True when the working time given ran out first. */
  readonly unfinished: boolean;
}

/** Done with a machine: a crew is taken to have one for every two hands (common practice). */
const BY_MACHINE: ReadonlySet<string> = new Set([
  'grind',
  'second-pass',
  'remove-film',
  'remove-tile',
  'remove-levelling',
  'edge',
  'edge-through-film',
  'shot-blast',
  'scarify',
  'joint-recut-and-fill',
]);

/** Shorter than this nobody changes hands for; whole seconds leave such ends. */
const LEAST = 30_000;

interface Open {
  readonly task: Task;
  left: number;
}

/** Whole seconds, so that the last binary digit moves no task. */
const secondsOf = (task: Task, slower: number): number => Math.max(0, Math.round(task.time.value * slower));

/** The stretch that holds a moment, or the next one. */
const stretchAt = (stretches: Stretches, moment: number) => stretches.find(({ to }) => to > moment);

/**
 * Lays tasks out for a crew: whatever is free to begin takes a hand in the order of the plan, hands left over help
 * where more than one can work. Work stops at the end of a day and goes on the next morning.
 *
 * @param from earliest moment, ms since 1970
 * @param slower how many times longer everything takes than planned
 */
export function layout(tasks: readonly Task[], people: number, stretches: Stretches, from: number, slower = 1): Laid {
  const all = new Set(tasks.map(({ id }) => id));
  const done = new Set<string>();
  const open: Open[] = tasks.map((task) => ({ task, left: secondsOf(task, slower) }));
  const segments: Segment[] = [];
  const running = new Map<number, { task: Task; from: number }>();
  let now = from;
  let end = from;
  const close = (hand: number, at: number): void => {
    const was = running.get(hand);
    running.delete(hand);
    if (was && at - was.from >= LEAST) segments.push({ task: was.task, hand, from: was.from, to: at });
  };
  const free = ({ task }: Open): boolean => task.after.every((id) => !all.has(id) || done.has(id));
  for (;;) {
    for (const each of open) if (each.left <= 0 && free(each)) done.add(each.task.id);
    const waiting = open.filter(({ task }) => !done.has(task.id));
    if (waiting.length === 0) break;
    const stretch = stretchAt(stretches, now);
    if (!stretch) {
      for (const hand of [...running.keys()]) close(hand, now);
      return { segments, end, unfinished: true };
    }
    if (now < stretch.from) {
      for (const hand of [...running.keys()]) close(hand, now);
      now = stretch.from;
    }
    const ready = waiting.filter((each) => each.left > 0 && free(each));
    const hands = handsOf(ready, people);
    // Hands are given in the order of the tasks, so a hand stays with its task while nothing ends before it.
    let hand = 0;
    for (const [each, count] of hands) {
      for (let k = 0; k < count; k++, hand++) {
        if (running.get(hand)?.task === each.task) continue;
        close(hand, now);
        running.set(hand, { task: each.task, from: now });
      }
    }
    for (const idle of [...running.keys()]) if (idle >= hand) close(idle, now);
    let step = (stretch.to - now) / 1000;
    for (const [each, count] of hands) step = Math.min(step, each.left / count);
    const next = now + Math.max(1, Math.ceil(step)) * 1000;
    const until = Math.min(next, stretch.to);
    for (const [each, count] of hands) each.left -= ((until - now) / 1000) * count;
    now = until;
    end = now;
    for (const [each] of hands) if (each.left <= 1e-6) each.left = 0;
    if (now >= stretch.to) for (const busy of [...running.keys()]) close(busy, now);
  }
  for (const hand of [...running.keys()]) close(hand, end);
  return { segments: segments.sort((a, b) => a.from - b.from || a.hand - b.hand), end, unfinished: false };
}

/** One hand for each task that is free to begin, in order; hands left over where more than one can work. */
function handsOf(ready: readonly Open[], people: number): readonly (readonly [Open, number])[] {
  const begun = ready.slice(0, people);
  const counts = begun.map(() => 1);
  const machines = Math.ceil(people / 2);
  let left = people - begun.length;
  while (left > 0) {
    let given = false;
    for (const [i, { task }] of begun.entries()) {
      if (left === 0) break;
      if (BY_MACHINE.has(task.work) && (counts[i] as number) >= machines) continue;
      counts[i] = (counts[i] as number) + 1;
      left--;
      given = true;
    }
    if (!given) break;
  }
  return begun.map((each, i) => [each, counts[i] as number]);
}

/**
 * The work of one coat in its stretch of time: rolling fills one hand, the rest is dealt out over the others, each
 * hand filled before the next (McNaughton's wrap-around rule).
 */
export function coatBlock(
  rolled: readonly Task[],
  others: readonly Task[],
  people: number,
  from: number,
  to: number,
): readonly Segment[] {
  const segments: Segment[] = [];
  let hand = 0;
  let at = from;
  for (const task of [...rolled, ...others]) {
    let left = secondsOf(task, 1) * 1000;
    while (left > 0 && hand < people) {
      const part = Math.min(left, to - at);
      if (part > 0) segments.push({ task, hand, from: at, to: at + part });
      left -= part;
      at += part;
      if (at >= to) {
        hand++;
        at = from;
      }
    }
  }
  return segments;
}
