import type { CureLaw } from '../cure/law.ts';
import { type MilestoneClock, milestoneClock } from '../cure/progress.ts';
import { type Conditions, filmHistoryOf } from './conditions.ts';

/** Clocks already made, held as long as both the conditions and the law are: a moved start makes no new sums. */
const made = new WeakMap<Conditions, WeakMap<CureLaw, MilestoneClock>>();

/** When a film laid at any start under these conditions reaches the milestone of a law. */
export function clockOn(conditions: Conditions, law: CureLaw): MilestoneClock {
  const here = made.get(conditions) ?? new WeakMap<CureLaw, MilestoneClock>();
  made.set(conditions, here);
  const known = here.get(law) ?? milestoneClock(law, filmHistoryOf(conditions));
  here.set(law, known);
  return known;
}
