import type { Published } from '../../plan.ts';
import type { Task } from '../../steps/results.ts';
import { areasOf, entry, name, type PaperContext, said, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';

const EMPTY: Content = { name: '' };

type Listed = Published<Task>;
const firstCoat = (tasks: readonly Listed[]): number => tasks.findIndex(({ layer }) => layer !== undefined);

/** What is done before the first coat: in the order of the plan, nothing of a coat among it. */
export const tasksBefore = (tasks: readonly Listed[]): readonly Listed[] =>
  tasks.filter(({ layer }, i) => layer === undefined && (firstCoat(tasks) < 0 || i < firstCoat(tasks)));

/** What is left to do once the coats are down: joints re-cut, packing. */
export const tasksAfter = (tasks: readonly Listed[]): readonly Listed[] =>
  tasks.filter(({ layer }, i) => layer === undefined && firstCoat(tasks) >= 0 && i > firstCoat(tasks));

/** Tasks in their order, with the quantity and room to write what really happened. */
export function taskTable(ctx: PaperContext, tasks: readonly Listed[]): readonly Block[] {
  if (tasks.length === 0) return [];
  const many = areasOf(ctx).length > 1;
  const areaName = (id: string | undefined): string => areasOf(ctx).find((area) => area.id === id)?.name ?? '';
  return [
    {
      kind: 'table',
      columns: [
        { head: said('crew-task') },
        ...(many ? [{ head: said('crew-area') }] : []),
        { head: said('crew-quantity'), align: 'right' as const },
        { head: said('crew-person-time'), align: 'right' as const },
        { head: said('crew-began'), blank: true },
        { head: said('crew-done'), blank: true },
        { head: said('crew-who'), blank: true },
      ],
      rows: tasks.map((task) => [
        say(`task-${task.work}`),
        ...(many ? [name(areaName(task.area))] : []),
        entry(task.quantity),
        entry(task.time),
        EMPTY,
        EMPTY,
        EMPTY,
      ]),
    },
  ];
}
