import { dashes, heading, known, line, type PaperContext, profileSaid, said, say, saying } from '../context.ts';
import { floorBlocks } from '../floor.ts';
import type { Block } from '../paper.ts';
import { careOf } from './care.ts';
import { emergency } from './emergency.ts';

/** The slab made ready and the gate before the first coat, machines and dust. */
export function preparationPage(ctx: PaperContext, pages: number): readonly Block[] {
  const prepared = known(ctx.option.preparation);
  if (!prepared) return [];
  const page = { job: ctx.job.title, page: '1', pages: `${pages}` };
  return [
    { kind: 'headline', text: said('crew-preparation'), under: said('crew-page-back', page) },
    { kind: 'boxed', strong: true, lines: [said('crew-dust-line'), said('crew-dust-gear')] },
    ...floorBlocks(ctx, 'crew', [
      heading('crew-target'),
      line(profileSaid(ctx, 'crew-profile', prepared.target)),
      {
        kind: 'list',
        marks: 'box',
        lines: ['drops', 'tape', 'profile', 'pull', 'vacuum', 'doors'].map((what) =>
          what === 'profile' ? profileSaid(ctx, 'crew-gate-profile', prepared.target) : say(`crew-gate-${what}`),
        ),
      },
    ]),
    ...emergency(),
    ...careOf(prepared.gate.reasons),
    {
      kind: 'columns',
      left: [heading('crew-machines'), ...dashes(prepared.tooling.map(saying))],
      right: [heading('crew-dust'), ...dashes(prepared.dust.map(saying))],
    },
  ];
}
