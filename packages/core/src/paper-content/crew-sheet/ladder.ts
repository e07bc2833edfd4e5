import type { Published } from '../../plan.ts';
import type { CoatSheet } from '../../steps/results.ts';
import { heading, line, said, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';

const EMPTY: Content = { name: '' };

/** Times and batch by temperature: what holds when slab and material are not as planned. */
export function ladderTable(coat: Published<CoatSheet>): readonly Block[] {
  const rungs = coat.ladder ?? [];
  if (rungs.length === 0) return [];
  return [
    heading('crew-ladder'),
    {
      kind: 'table',
      columns: [
        { head: said('crew-ladder-at'), align: 'right' },
        { head: said('crew-ladder-pot'), align: 'right' },
        { head: said('crew-ladder-open'), align: 'right' },
        { head: said('crew-ladder-batch'), align: 'right' },
      ],
      rows: rungs.map(({ at, potLife, openTime, batch }) => [
        { entry: at, strong: true },
        potLife ? { entry: potLife } : EMPTY,
        openTime ? { entry: openTime } : EMPTY,
        batch ? { entry: batch } : EMPTY,
      ]),
    },
    line(say('crew-ladder-rule')),
  ];
}
