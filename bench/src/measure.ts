import { performance } from 'node:perf_hooks';

/**
 * Times of a call in milliseconds, warm: the least of all runs, which others on the machine disturb least, and the
 * median. Absolute figures belong to this machine; ratios carry over.
 */
export function timesOf(
  call: () => unknown,
  runs: number,
  warm = 5,
): { readonly least: number; readonly median: number } {
  for (let i = 0; i < warm; i++) call();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const before = performance.now();
    call();
    times.push(performance.now() - before);
  }
  times.sort((a, b) => a - b);
  return { least: times[0] as number, median: times[Math.floor(times.length / 2)] as number };
}

export const medianOf = (call: () => unknown, runs: number, warm = 5): number => timesOf(call, runs, warm).median;

/** Two calls in turn, A B A B …, so that a drifting machine spoils neither; gives the median of the paired ratios. */
export function pairedRatio(
  a: () => unknown,
  b: () => unknown,
  runs: number,
  warm = 5,
): { readonly a: number; readonly b: number; readonly ratio: number } {
  for (let i = 0; i < warm; i++) {
    a();
    b();
  }
  const as: number[] = [];
  const bs: number[] = [];
  const time = (call: () => unknown): number => {
    const before = performance.now();
    call();
    return performance.now() - before;
  };
  for (let i = 0; i < runs; i++) {
    as.push(time(a));
    bs.push(time(b));
  }
  const middle = (list: number[]): number => [...list].sort((x, y) => x - y)[Math.floor(list.length / 2)] as number;
  return { a: middle(as), b: middle(bs), ratio: middle(as.map((t, i) => t / (bs[i] as number))) };
}

export interface Row {
  readonly name: string;
  readonly figure: string;
  readonly budget: string;
  readonly holds: boolean | undefined;
}
