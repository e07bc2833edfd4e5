import { dashes, heading, known, line, type PaperContext, profileSaid, said, say, saying } from '../context.ts';
import { floorBlocks } from '../floor.ts';
import type { Block } from '../paper.ts';
import { careCall, careOf } from './care.ts';
import { emergency } from './emergency.ts';

/** First sheet: on its front the slab made ready and the gate before the first coat, on its back machines and dust. */
export function preparationPage(ctx: PaperContext, pages: number): readonly Block[] {
  const prepared = known(ctx.option.preparation);
  if (!prepared) return [];
  const page = { job: ctx.job.title, page: '1', pages: `${pages}` };
  return [
    { kind: 'headline', text: said('crew-preparation'), under: said('crew-page', page) },
    { kind: 'boxed', strong: true, lines: [said('crew-dust-line'), said('crew-dust-gear')] },
    ...careCall(prepared.gate.reasons),
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
    { kind: 'page-break' },
    { kind: 'headline', text: said('crew-preparation-back'), under: said('crew-page-back', page) },
    ...careOf(prepared.gate.reasons),
    heading('crew-machines'),
    ...dashes(prepared.tooling.map(saying)),
    heading('crew-dust'),
    ...dashes(prepared.dust.map(saying)),
  ];
}
