import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenCount, type OptionContext } from '../context.ts';
import { type CoatedArea, coatedAreas } from '../quantities/coated-areas.ts';
import type { PreparationPlan, QuantitiesPlan, SurveyPlan, SystemPlan, Task } from '../results.ts';
import { assumed } from './assumed.ts';
import { coatTasks, LAYER_WORKS } from './coat.ts';
import { recutJoints } from './joints.ts';
import { WorkRates } from './rates.ts';
import { TaskList } from './task-list.ts';

export interface TasksPlanned {
  readonly tasks: readonly Task[];
  readonly notes: readonly Said[];
}

/** What waits for nothing is begun first, what nothing waits for comes last: the chain is closed around the coats. */
function chained(tasks: readonly Task[], after: readonly string[]): readonly Task[] {
  return tasks.map((task) => (task.after.length > 0 ? task : { ...task, after }));
}

function lastOf(tasks: readonly Task[]): readonly string[] {
  const waitedFor = new Set(tasks.flatMap(({ after }) => after));
  return tasks.map(({ id }) => id).filter((id) => !waitedFor.has(id));
}

/** A firm's own set-up counts its masking; the default counts it along the edges. */
function begin(list: TaskList, rates: WorkRates, areas: readonly CoatedArea[], trace: Trace): readonly string[] {
  const once = givenCount(trace, 'once', 1, 'chosen');
  const ends = [list.count('set-up', { on: [], after: [] }, once)];
  if (rates.ownRate('set-up') && !rates.ownRate('mask')) return ends;
  for (const { measure } of areas) {
    ends.push(list.length('mask', { on: [measure.id], area: measure.id, after: [] }, measure.perimeter));
  }
  return ends;
}

function notesOn(ctx: OptionContext): readonly Said[] {
  const known = new Set<string | undefined>([undefined, ...LAYER_WORKS]);
  return ctx.system.layers
    .filter(({ work }) => !known.has(work))
    .map(({ id, name, work = '' }) => ({
      code: 'hours-work-unknown',
      names: { layer: name ?? id, work, known: LAYER_WORKS.join(', ') },
    }));
}

/** All tasks of the option in the order they are done: set-up, preparation, coats, joints, handing over. */
export function allTasks(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  prepared: PreparationPlan,
  fitted: SystemPlan,
  quantified: QuantitiesPlan,
  trace: Trace,
): TasksPlanned {
  const rates = new WorkRates(ctx, trace);
  const list = new TaskList(trace, rates);
  const areas = coatedAreas(ctx, surveyed);
  const { layers } = ctx.system;
  const setUp = begin(list, rates, areas, trace);
  const start = list.tasks.length;
  const preparing = chained(prepared.tasks, setUp);
  const rough = areas.length > 0 && layers.slice(0, -1).some(({ broadcast }) => broadcast !== undefined);
  const slower = rough
    ? assumed(trace, 'rough-floor', 'roughTimes', '1', 'hours-rough-floor-assumed', 'plain')
    : undefined;
  let ends = preparing.length > 0 ? lastOf(preparing) : setUp;
  layers.forEach((layer, i) => {
    const fit = fitted.layers.find((one) => one.layer === layer.id);
    const quantity = quantified.layers.find((one) => one.layer === layer.id);
    ends = coatTasks(ctx, trace, list, { layer, below: layers[i - 1], fit, quantity, areas, slower }, ends);
  });
  const joints = recutJoints(ctx, trace, list, areas, ends);
  if (joints.ends.length > 0) ends = joints.ends;
  const handOver = givenCount(trace, 'one-hand-over', 1, 'chosen');
  list.count('pack-and-hand-over', { on: [], after: ends }, handOver);
  return {
    tasks: [...list.tasks.slice(0, start), ...preparing, ...list.tasks.slice(start)],
    notes: [...rates.notes, ...joints.notes, ...notesOn(ctx)],
  };
}
