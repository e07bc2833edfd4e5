import type { Published } from '../../plan.ts';
import type { SurveyPlan } from '../../steps/results.ts';
import { areasOf, day, entry, heading, moment, name, type PaperContext, say, saying, strong } from '../context.ts';
import type { Block, Content } from '../paper.ts';

interface Row {
  readonly label: Content;
  readonly value: Content;
  readonly note?: Content;
}

/** Each moisture reading with method, edition, depth, place and day: without them it is only a number. */
function moisture(ctx: PaperContext, survey: Published<SurveyPlan>): readonly Row[] {
  return survey.moisture.tests.map((judged) => {
    const test = ctx.job.survey.moisture?.tests?.find(({ id }) => id === judged.id);
    const names = {
      method: judged.method,
      edition: test?.edition ?? '-',
      where: judged.where ?? '-',
      date: test?.on ? day(ctx, test.on) : '-',
    };
    return {
      label: say('proposal-found-moisture', names),
      value: judged.value ? strong(judged.value) : say('paper-not-known'),
      ...(judged.counts ? {} : { note: saying(judged.why[0] ?? { code: 'proposal-does-not-count' }) }),
    };
  });
}

function pulls(ctx: PaperContext, survey: Published<SurveyPlan>): readonly Row[] {
  if (!survey.pullOff) {
    return [{ label: say('proposal-found-pull-off-none'), value: say('paper-not-known') }];
  }
  const after = (ctx.job.survey.pullOffs ?? []).filter(({ after: when }) => when === 'preparation');
  const dates = [...new Set(after.flatMap(({ on }) => (on ? [day(ctx, on)] : [])))].join(', ');
  const methods = [...new Set(after.flatMap(({ method }) => (method ? [method] : [])))].join(', ');
  const { mean, least, counted } = survey.pullOff;
  return [
    {
      label: say('proposal-found-pull-off', { method: methods || '-', date: dates || '-' }, { counted }),
      value: strong(mean),
      note: say('proposal-found-pull-off-least', {}, { least }),
    },
  ];
}

/** Cracks, joints and spots line by line, so that each can be found on the plan. */
function lines(ctx: PaperContext): readonly Row[] {
  return areasOf(ctx).flatMap((area): readonly Row[] => [
    ...area.cracks.map((crack) => ({
      label: say('proposal-found-crack', { crack: crack.id, area: area.name }),
      value: strong(crack.length),
      note: crack.width
        ? say(`proposal-crack-moves-${crack.moves.replaceAll(' ', '-')}`, {}, { width: crack.width })
        : say('proposal-crack-width-not-known'),
    })),
    ...area.spots.map((spot) => ({
      label: say('proposal-found-spot', { spot: `@paper-spot-${spot.kind.replaceAll(' ', '-')}`, area: area.name }),
      value: strong(spot.extent),
    })),
  ]);
}

function lowestMargin(ctx: PaperContext, survey: Published<SurveyPlan>): readonly Row[] {
  const valued = survey.margins.flatMap((one) => {
    const margin = ctx.plan.entries[one.margin];
    return margin?.kind === 'figure' ? [{ one, value: margin.value }] : [];
  });
  const [least] = valued.sort((a, b) => a.value - b.value);
  if (!least) return [];
  return [
    {
      label: say('proposal-found-margin', { at: moment(ctx, least.one.at) }),
      value: strong(least.one.margin),
    },
  ];
}

/** Limits of the chosen sheets beside what was found. */
function limits(ctx: PaperContext): readonly Row[] {
  const { system } = ctx.option;
  if ('unanswered' in system) return [];
  return system.moistureLimit.map(({ method, limit, layer }) => {
    const layerName = system.layers.find((one) => one.layer === layer)?.name ?? layer;
    return { label: say('proposal-found-limit', { method, layer: layerName }), value: entry(limit) };
  });
}

/** What was measured and seen, with day and method. */
export function found(ctx: PaperContext): readonly Block[] {
  const { survey } = ctx;
  if (!survey) return [heading('proposal-found'), { kind: 'paragraph', content: [say('paper-not-known')] }];
  const { on, by } = ctx.job.survey;
  const seen =
    on || by
      ? [{ label: say('proposal-found-by'), value: name([by, on && day(ctx, on)].filter(Boolean).join(', ')) }]
      : [];
  return [
    heading('proposal-found'),
    {
      kind: 'facts',
      rows: [
        ...seen,
        ...moisture(ctx, survey),
        ...limits(ctx),
        ...pulls(ctx, survey),
        ...lowestMargin(ctx, survey),
        ...lines(ctx),
      ],
    },
  ];
}
