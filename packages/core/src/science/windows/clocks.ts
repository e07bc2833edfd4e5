import type { CureLaw } from '../cure/law.ts';
import { type Milestone, milestoneClock } from '../cure/progress.ts';
import { type Conditions, filmHistoryOf } from './conditions.ts';

type Clock = (start: number) => Milestone | undefined;

/** Clocks already made, held as long as both the conditions and the law are: a moved start makes no new sums. */
const made = new WeakMap<Conditions, WeakMap<CureLaw, Clock>>();

/** When a film laid at any start under these conditions reaches the milestone of a law. */
export function clockOn(conditions: Conditions, law: CureLaw): Clock {
  const here = made.get(conditions) ?? new WeakMap<CureLaw, Clock>();
  made.set(conditions, here);
  const known = here.get(law) ?? milestoneClock(law, filmHistoryOf(conditions));
  here.set(law, known);
  return known;
}
