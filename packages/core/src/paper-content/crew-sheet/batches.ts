import type { Published } from '../../plan.ts';
import type { CoatSheet } from '../../steps/results.ts';
import { bold, heading, line, type PaperContext, said, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';

type Coat = Published<CoatSheet>;
type Group = Coat['batches'][number];

const EMPTY: Content = { name: '' };
/** Above this many batches one row stands for all of a size: the sheet stays one page. */
const MOST_ROWS = 16;

function countOf(ctx: PaperContext, { count }: Group): number {
  const found = ctx.plan.entries[count];
  if (found?.kind !== 'given') throw new Error(`a count of batches is no count: ${count}`);
  return found.value;
}

const partCell = (group: Group, component: string): Content => {
  const part = group.parts.find((one) => one.component === component);
  if (!part) return EMPTY;
  return part.mass
    ? say('crew-part', {}, { volume: part.volume, mass: part.mass })
    : say('crew-part-volume', {}, { volume: part.volume });
};

/** Batches with each part by volume and by weight, and room for what happened. */
export function batchTable(ctx: PaperContext, coat: Coat): readonly Block[] {
  const [first] = coat.batches;
  if (!first) return [heading('crew-batches'), line(say('crew-batches-not-known'))];
  const counted = coat.batches.map((group) => ({ group, count: countOf(ctx, group) }));
  const total = counted.reduce((sum, { count }) => sum + count, 0);
  let next = 1;
  const rows = counted.flatMap(({ group, count }) => {
    const cells = [
      { entry: group.volume, strong: true } as const,
      ...first.parts.map(({ component }) => partCell(group, component)),
      EMPTY,
      EMPTY,
      EMPTY,
    ];
    const from = next;
    next += count;
    if (total > MOST_ROWS) {
      const span = count === 1 ? `${from}` : `${from}–${from + count - 1}`;
      return [[bold(span), ...cells]];
    }
    return Array.from({ length: count }, (_, i) => [bold(`${from + i}`), ...cells]);
  });
  return [
    heading('crew-batches'),
    {
      kind: 'table',
      columns: [
        { head: said('crew-batch') },
        { head: said('crew-mixed'), align: 'right' },
        ...first.parts.map((part) => ({ head: said('crew-part-named', { part: part.name }), align: 'right' as const })),
        { head: said('crew-mixed-at'), blank: true },
        { head: said('crew-line-at'), blank: true },
        { head: said('crew-lot'), blank: true },
      ],
      rows,
    },
  ];
}
