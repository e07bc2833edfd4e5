import type { OptionContext } from '../context.ts';
import type { CrackPlan } from '../results.ts';

/** An option with its cracks and joints judged: what preparation and hours lay tasks out for. */
export interface Handled extends OptionContext {
  readonly lines?: readonly CrackPlan[];
}

/** Lines of an area that the tasks of the option treat in one of these ways. */
export function plannedIn(
  { lines = [] }: Handled,
  area: string,
  ways: readonly CrackPlan['planned'][],
): readonly CrackPlan[] {
  return lines.filter((line) => line.area === area && ways.includes(line.planned));
}

/** Closed by the time the first coat goes over it: its own filler, or what keeps resin out of a joint. */
export const CLOSED = ['filled', 'filled and reinforced', 'filled and coated over'] as const;
