import { answered } from '../../plan.ts';
import { dashes, heading, moment as momentOf, type PaperContext, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';

/** The hours of one coat as the forecast gives them: last metre, tack free, the next coat, the lowest margin. */
export function hoursOf(ctx: PaperContext, layer: string): readonly Block[] {
  const { day } = ctx.option;
  const coat = day && answered(day) ? day.coats.find((one) => one.layer === layer) : undefined;
  if (!coat?.start) return [];
  const moment = (at: string): string => momentOf(ctx, at);
  const { start, milestones } = coat;
  const stages = milestones.flatMap(({ what, first, last, warm }): readonly Content[] => {
    const stage = what.replaceAll(' ', '-');
    if (stage === 'recoat-opens')
      return [
        say(
          'crew-hours-recoat-from',
          { first: moment(first.at), last: moment(last.at), late: moment(last.high ?? last.at) },
          { warm },
        ),
      ];
    if (stage === 'recoat-closes') return [say('crew-hours-recoat-until', { at: moment(first.low) })];
    if (stage === 'foot')
      return [say('crew-hours-foot', { at: moment(last.at), late: moment(last.high ?? last.at) }, { warm })];
    return [];
  });
  return [
    heading('crew-hours'),
    ...dashes([
      say('crew-hours-laid', { from: moment(start.at), until: moment(start.laid) }),
      ...(start.margin && start.marginAt
        ? [say('crew-hours-margin', { at: moment(start.marginAt) }, { margin: start.margin })]
        : []),
      ...stages,
    ]),
  ];
}
