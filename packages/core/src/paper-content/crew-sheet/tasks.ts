import type { Published } from '../../plan.ts';
import type { Task } from '../../steps/results.ts';
import { areasOf, entry, known, name, type PaperContext, said, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';
import { hoursAhead } from './hours.ts';

const EMPTY: Content = { name: '' };

/** Coat and, where there is more than one, area of a task: what it is done on. */
function placeOf(ctx: PaperContext, task: Published<Task>): string {
  const areas = areasOf(ctx);
  const area = areas.length > 1 ? areas.find(({ id }) => id === task.area)?.name : undefined;
  const coat = known(ctx.option.system)?.layers.find(({ layer }) => layer === task.layer)?.name;
  return [coat, area].filter(Boolean).join(', ');
}

/** All tasks in their order, with the quantity and room to write what really happened. */
export function taskTable(ctx: PaperContext, tasks: readonly Published<Task>[]): Block {
  return {
    kind: 'table',
    columns: [
      { head: said('crew-task') },
      { head: said('crew-place') },
      { head: said('crew-quantity'), align: 'right' },
      { head: said('crew-person-time'), align: 'right' },
      { head: said('crew-began'), blank: true },
      { head: said('crew-done'), blank: true },
      { head: said('crew-who'), blank: true },
    ],
    rows: tasks.map((task) => [
      say(`task-${task.work}`),
      name(placeOf(ctx, task)),
      entry(task.quantity),
      entry(task.time),
      EMPTY,
      EMPTY,
      EMPTY,
    ]),
  };
}

/** First page: the whole work in order, who is there, and what is left when the last coat is down. */
export function orderPage(ctx: PaperContext, tasks: readonly Published<Task>[], pages: number): readonly Block[] {
  const page = { job: ctx.job.title, page: '1', pages: `${pages}` };
  return [
    {
      kind: 'headline',
      text: said('crew-order'),
      under: said('crew-order-people', page, { people: ctx.option.people }),
    },
    taskTable(ctx, tasks),
    { kind: 'paragraph', content: [say('crew-after')] },
    ...hoursAhead(ctx),
  ];
}
