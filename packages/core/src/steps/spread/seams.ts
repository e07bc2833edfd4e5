import type { Trace } from '../../kernel/trace.ts';
import type { Candidate, SpreadProblem } from '../../spread/index.ts';
import { mostInSequence, shareOfLimit, sumInSequence } from '../formulas/spread.ts';
import type { SpreadSeam } from '../results.ts';
import type { SpreadTimes } from './times.ts';

/** Places where two pours must tie in, with the oldest edge of each. */
export function seamsOf(
  problem: SpreadProblem,
  best: Candidate,
  times: SpreadTimes,
  decides: readonly string[],
  trace: Trace,
): readonly SpreadSeam[] {
  const { link, free, count, cellM } = problem.squares;
  const { time, pourOf } = best.clock;
  const found = new Map<string, { low: number; high: number; links: number; age: number }>();
  for (let s = 0; s < count; s++) {
    for (let side = 0; side < 2; side++) {
      const other = link[4 * s + side] as number;
      if (other < 0 || free[4 * s + side] || pourOf[s] === pourOf[other]) continue;
      const pair = [pourOf[s] as number, pourOf[other] as number].sort((a, b) => a - b) as [number, number];
      const key = pair.join('-');
      const one = found.get(key) ?? { low: pair[0], high: pair[1], links: 0, age: 0 };
      one.links += 1;
      one.age = Math.max(one.age, Math.abs((time[s] as number) - (time[other] as number)));
      found.set(key, one);
    }
  }
  return [...found.values()]
    .sort((a, b) => a.low - b.low || a.high - b.high)
    .map(({ low, high, links, age }) => {
      const pours = [`${low + 1}`, `${high + 1}`];
      const t = trace.within('seam').within(pours.join('-'));
      const inputs = { along: decides };
      const length = t.taken('length', sumInSequence, { value: links * cellM, unit: 'm', shows: 'length', inputs });
      const old = t.taken('age', mostInSequence, { value: age * 60, unit: 's', shows: 'duration', inputs });
      return { pours, length, age: old, share: t.figure('share', shareOfLimit, { used: old, limit: times.open }) };
    });
}
