import type { Moment } from '../../catalogue.ts';
import { answered } from '../../plan.ts';
import {
  areasOf,
  dashes,
  drawnArea,
  heading,
  known,
  line,
  moment,
  type PaperContext,
  say,
  saying,
  strong,
  technical,
} from '../context.ts';
import type { Block, Content } from '../paper.ts';

/** Floor and verticals that are coated; everything that is not is named beside it. */
export function scope(ctx: PaperContext): readonly Block[] {
  const coated = ctx.system.layers.some((layer) => layer.verticals);
  const out = new Set(ctx.chosen.leaveOut ?? []);
  const inside = areasOf(ctx).flatMap((area): readonly Content[] => [
    say('proposal-included-area', { area: area.name }, { net: area.net }),
    ...area.verticals
      .filter(({ id }) => coated && !out.has(id))
      .map((one) =>
        say(
          'proposal-included-vertical',
          { vertical: one.id, kind: `@paper-${one.kind.replaceAll(' ', '-')}` },
          { length: one.length },
        ),
      ),
  ]);
  const outside: Content[] = areasOf(ctx).flatMap((area) => [
    ...area.verticals
      .filter(({ id }) => !coated || out.has(id))
      .map((one) => say('proposal-excluded-vertical', { vertical: one.id })),
    ...(drawnArea(ctx, area.id)?.holes ?? []).map((hole) =>
      say('proposal-excluded-hole', { hole: hole.name ?? hole.id }),
    ),
  ]);
  const others = ctx.job.areas
    .filter(({ id }) => !ctx.chosen.areas.includes(id))
    .map((area) => say('proposal-excluded-area', { area: area.name }));
  const always = ['moving', 'levelling', 'hollows', 'repairs'].map((what) => say(`proposal-excluded-${what}`));
  return [
    {
      kind: 'columns',
      left: [heading('proposal-included'), ...dashes(inside)],
      right: [heading('proposal-excluded'), ...dashes([...outside, ...others, ...always])],
    },
  ];
}

/** What the customer keeps to, so that the price and the day hold. */
export function conditions(ctx: PaperContext): readonly Block[] {
  const { building } = ctx.job.survey;
  const power = building?.power ? say('proposal-condition-power-seen') : say('proposal-condition-power');
  return [
    heading('proposal-conditions'),
    ...dashes([
      say('proposal-condition-empty'),
      say('proposal-condition-heat'),
      power,
      say('proposal-condition-no-traffic'),
      say('proposal-condition-neighbours'),
      say('proposal-condition-weather'),
      say('proposal-condition-dust'),
    ]),
  ];
}

const RETURN: readonly Moment[] = ['foot', 'light', 'vehicle', 'full'];

/** The return to service on the slab's own hours, each instant with its band and the condition it stands on. */
function byForecast(ctx: PaperContext): readonly Block[] {
  const { day } = ctx.option;
  const lit = day && answered(day) ? day : undefined;
  const last = lit?.coats.at(-1);
  const stages = (last?.milestones ?? []).filter(({ what }) => RETURN.includes(what as Moment));
  if (!lit || !last?.start || stages.length === 0) return [];
  return [
    heading('proposal-return'),
    line(say('proposal-return-promise', { laid: moment(ctx, last.start.laid) })),
    {
      kind: 'facts',
      rows: stages.map(({ what, last: span, warm }) => ({
        label: say(`paper-moment-${what}`),
        value: { name: moment(ctx, span.at), strong: true } as const,
        note: span.high
          ? say('proposal-return-holds', { low: moment(ctx, span.low), high: moment(ctx, span.high) }, { warm })
          : say('proposal-return-holds-open', { low: moment(ctx, span.low) }, { warm }),
      })),
    },
    ...dashes(lit.promises.flatMap(({ says, basis }) => [saying(says), saying(basis)])),
  ];
}

/** Only what the sheet of the last coat says, at its own temperature: nothing is worked out here. */
export function backInUse(ctx: PaperContext): readonly Block[] {
  const forecast = byForecast(ctx);
  if (forecast.length > 0) return forecast;
  const last = known(ctx.option.coats)?.coats.at(-1);
  const rows = (last?.times ?? [])
    .filter(({ what }) => RETURN.includes(what as Moment))
    .map(({ what, at, value }) => ({
      label: say(`paper-moment-${what}`),
      value: strong(value),
      note: say('proposal-return-at', {}, { at }),
    }));
  if (!last || rows.length === 0) return [heading('proposal-return'), line(say('proposal-return-not-known'))];
  const noted = (known(ctx.option.hours)?.notes ?? []).filter(({ code }) => code.startsWith('hours-deadline-'));
  return [
    heading('proposal-return'),
    line(say('proposal-return-rule', { sheet: last.sheet, coat: last.name })),
    { kind: 'facts', rows },
    ...dashes(noted.map(saying)),
  ];
}

export function acceptance(): readonly Block[] {
  return [
    heading('proposal-acceptance'),
    ...dashes(['view', 'light', 'sample', 'marks'].map((what) => say(`proposal-acceptance-${what}`))),
  ];
}

/** Warranty with its exclusions; a stop taken on somebody's word is one of them, by name. */
export function warranty(ctx: PaperContext): readonly Block[] {
  const seen = new Set<string>();
  const overridden = technical(ctx).flatMap(({ verdict }) =>
    (verdict.overrides ?? []).flatMap((one) => {
      if (seen.has(one.code)) return [];
      seen.add(one.code);
      const reasons = verdict.reasons.filter(({ code }) => code === one.code).map(saying);
      return [say('proposal-warranty-override', { by: one.by, on: one.on, why: one.why }), ...reasons];
    }),
  );
  const excluded = ['movement', 'moisture', 'chemicals', 'impact', 'light', 'neglect'].map((what) =>
    say(`proposal-warranty-not-${what}`),
  );
  return [
    heading('proposal-warranty'),
    ...dashes(
      ['who', 'covers', 'remedy', 'claim'].map((what) =>
        say(`proposal-warranty-${what}`, { firm: ctx.job.firm?.name ?? '______' }),
      ),
    ),
    line(say('proposal-warranty-not')),
    ...dashes([...excluded, ...overridden]),
    line(say('proposal-warranty-law')),
  ];
}

export function care(): readonly Block[] {
  return [
    heading('proposal-care'),
    ...dashes(['first-week', 'wash', 'jack', 'repair'].map((what) => say(`proposal-care-${what}`))),
  ];
}
