import { answered } from '../../plan.ts';
import { bold, heading, known, line, moment as momentOf, type PaperContext, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';

/** The hours of one coat as the forecast gives them: last metre, the next coat, shoes, the lowest margin. */
function hoursOf(ctx: PaperContext, layer: string): readonly Content[] {
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
    say('crew-hours-laid', { from: moment(start.at), until: moment(start.laid) }),
    ...(start.margin && start.marginAt
      ? [say('crew-hours-margin', { at: moment(start.marginAt) }, { margin: start.margin })]
      : []),
    ...stages,
  ];
}

/** The hours of every coat, one after the other as they come. */
export function hoursAhead(ctx: PaperContext): readonly Block[] {
  const coats = known(ctx.option.coats)?.coats ?? [];
  const told = coats.flatMap(({ layer, name: coat }) => {
    const hours = hoursOf(ctx, layer);
    return hours.length > 0 ? [line(bold(`${coat}:`), ...hours)] : [];
  });
  return told.length > 0 ? [heading('crew-hours'), ...told] : [];
}
