import table from '../../data/crack-bridging.json' with { type: 'json' };
import type { BridgingClass } from '../../data/crack-bridging.ts';
import { tabled } from '../../data/tabled.ts';
import { round9 } from '../../kernel/canonical.ts';

/** Classes of EN 1062-7, from memory: what a film of each was shown to bridge. */

export const BRIDGING_SOURCE = table.source;

/** Nothing to bridge, a class, or an opening beyond the highest class. */
export type ClassNeeded = BridgingClass | 'none' | 'beyond every class';

const metres = (typed: string): number => round9(tabled(typed, 'm'));

/** The static class for a crack of a width in m: the least whose own limit is not exceeded. */
export function staticClassFor(width: number): ClassNeeded {
  if (width <= 0) return 'none';
  const row = table.static.find(({ above }) => round9(width) <= metres(above));
  return (row?.class as BridgingClass | undefined) ?? 'beyond every class';
}

/** The dynamic class for a crack up to `width` that opens and closes by `change`, both in m. Needs 1000 cycles: three years of days. */
export function dynamicClassFor(width: number, change: number): ClassNeeded {
  if (change <= 0) return 'none';
  const row = table.dynamic.find(
    (one) => one.cycles >= 1000 && round9(change) <= metres(one.change) && round9(width) <= metres(one.high),
  );
  return (row?.class as BridgingClass | undefined) ?? 'beyond every class';
}

/** Width in m that a class was shown to bridge, as its row prints it. */
export function widthOfClass(name: BridgingClass): { readonly width: number; readonly typed: string } {
  const typed =
    table.static.find((one) => one.class === name)?.above ?? table.dynamic.find((one) => one.class === name)?.high;
  if (typed === undefined) throw new Error(`no class ${name} in the table of crack bridging`);
  return { width: tabled(typed, 'm'), typed };
}
