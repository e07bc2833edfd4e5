import type { Task } from '../results.ts';
import { type Laid, layout, type Stretches } from './layout.ts';

/**
 * The preparation laid out so that it ends before the first coat: begun on the latest morning that still leaves time
 * enough, else as early as can be. Without a chosen start it begins with the next working hours.
 */
export function preparationFrom(
  tasks: readonly Task[],
  crew: { readonly people: number; readonly hours: Stretches },
  now: number,
  firstCoat: number | undefined,
  slower = 1,
): Laid {
  const earliest = Math.max(now, crew.hours.find(({ to }) => to > now)?.from ?? now);
  if (firstCoat !== undefined) {
    const mornings = crew.hours.filter(({ from }) => from >= now && from < firstCoat).map(({ from }) => from);
    for (const morning of mornings.reverse()) {
      const laid = layout(tasks, crew.people, crew.hours, morning);
      if (!laid.unfinished && laid.end <= firstCoat) return laid;
    }
    // A coat whose start lies behind was prepared for before it: nothing is said against that.
    if (firstCoat <= now) return layout([], crew.people, crew.hours, firstCoat);
  }
  return layout(tasks, crew.people, crew.hours, earliest, slower);
}
