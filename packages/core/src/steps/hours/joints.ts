import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Handled, plannedIn } from '../cracks/handled.ts';
import { totalLength } from '../formulas/survey.ts';
import type { CoatedArea } from '../quantities/coated-areas.ts';
import type { AreaMeasure } from '../results.ts';
import type { TaskList } from './task-list.ts';

export interface JointsDone {
  readonly ends: readonly string[];
  readonly notes: readonly Said[];
}

/** Lengths cut again in an area: what the cracks step honours; where nobody judged the lines, isolation joints alone. */
const recutIn = (ctx: Handled, { id, joints }: AreaMeasure): readonly Known<'m'>[] =>
  ctx.lines
    ? plannedIn(ctx, id, ['re-cut and filled']).map(({ length }) => length)
    : joints.filter(({ kind }) => kind === 'isolation').map(({ length }) => length);

/**
 * Joints and moving cracks cut again through the finished floor and filled flexible, because no coat was shown to bridge
 * them or hard wheels would chip it there. What somebody chose to coat over is said: a line may come back.
 */
export function recutJoints(
  ctx: Handled,
  trace: Trace,
  list: TaskList,
  areas: readonly CoatedArea[],
  after: readonly string[],
): JointsDone {
  const ends: string[] = [];
  const notes: Said[] = [];
  for (const { measure } of areas) {
    const lengths = recutIn(ctx, measure);
    if (plannedIn(ctx, measure.id, ['filled and coated over']).length > 0)
      notes.push({ code: 'hours-joints-coated-over', names: { area: measure.name } });
    if (lengths.length === 0) continue;
    const length = trace.figure(`joints.${measure.id}`, totalLength, { lengths });
    ends.push(list.length('joint-recut-and-fill', { on: [measure.id], area: measure.id, after }, length));
  }
  return { ends, notes };
}
