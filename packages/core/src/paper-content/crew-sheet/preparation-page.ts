import { dashes, heading, known, line, type PaperContext, profileSaid, said, say, saying } from '../context.ts';
import { floorBlocks } from '../floor.ts';
import type { Block } from '../paper.ts';
import { careOf } from './care.ts';
import { emergency } from './emergency.ts';
import { tasksBefore, taskTable } from './tasks.ts';

/** First page: the slab made ready, dust kept down, and the gate before the first coat. */
export function preparationPage(ctx: PaperContext, pages: number): readonly Block[] {
  const prepared = known(ctx.option.preparation);
  const timed = known(ctx.option.hours);
  if (!prepared || !timed) return [];
  const tasks = tasksBefore(timed.tasks);
  return [
    {
      kind: 'headline',
      text: said('crew-preparation'),
      under: said('crew-page', { job: ctx.job.title, page: '1', pages: `${pages}` }),
    },
    { kind: 'boxed', strong: true, lines: [said('crew-dust-line'), said('crew-dust-gear')] },
    ...careOf(ctx, prepared.gate.reasons),
    ...floorBlocks(ctx, 'crew', [
      heading('crew-target'),
      line(profileSaid(ctx, 'crew-profile', prepared.target)),
      ...dashes(prepared.tooling.map(saying)),
    ]),
    heading('crew-order'),
    ...taskTable(ctx, tasks),
    heading('crew-dust'),
    ...dashes(prepared.dust.map(saying)),
    heading('crew-gate'),
    {
      kind: 'list',
      marks: 'box',
      lines: ['drops', 'tape', 'profile', 'pull', 'vacuum', 'doors'].map((what) =>
        what === 'profile' ? profileSaid(ctx, 'crew-gate-profile', prepared.target) : say(`crew-gate-${what}`),
      ),
    },
    ...emergency(ctx),
  ];
}
