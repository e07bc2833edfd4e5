import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { OptionContext } from '../context.ts';
import { totalLength } from '../formulas/survey.ts';
import type { CoatedArea } from '../quantities/coated-areas.ts';
import type { JointMeasure } from '../results.ts';
import type { TaskList } from './task-list.ts';

export interface JointsDone {
  readonly ends: readonly string[];
  readonly notes: readonly Said[];
}

/** Whether a joint is cut again through the finished floor. */
export const isRecut = (ctx: OptionContext, kind: JointMeasure['kind']): boolean =>
  kind === 'isolation' || ctx.job.use?.traffic === 'forklift';

/**
 * Joints re-cut through the finished floor and filled. Isolation joints always: the building moves there. All others
 * where hard wheels roll over them, because a coat bridging the joint chips along it. The rest are coated over and the
 * note says that a line may come back.
 */
export function recutJoints(
  ctx: OptionContext,
  trace: Trace,
  list: TaskList,
  areas: readonly CoatedArea[],
  after: readonly string[],
): JointsDone {
  const ends: string[] = [];
  const notes: Said[] = [];
  for (const { measure } of areas) {
    const cut = measure.joints.filter(({ kind }) => isRecut(ctx, kind));
    if (cut.length < measure.joints.length)
      notes.push({ code: 'hours-joints-coated-over', names: { area: measure.name } });
    if (cut.length === 0) continue;
    const length = trace.figure(`joints.${measure.id}`, totalLength, { lengths: cut.map((joint) => joint.length) });
    ends.push(list.length('joint-recut-and-fill', { on: [measure.id], area: measure.id, after }, length));
  }
  return { ends, notes };
}
