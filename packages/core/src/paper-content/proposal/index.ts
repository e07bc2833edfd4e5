import type { Said } from '../../kernel/said.ts';
import type { StepBase } from '../../steps/results.ts';
import {
  known,
  openStops,
  overridesSaid,
  type PaperContext,
  paper,
  reasonsOf,
  said,
  say,
  strong,
  technical,
  withLift,
} from '../context.ts';
import { floorBlocks } from '../floor.ts';
import type { Block, Issued } from '../paper.ts';
import { coatTable, preparationBlocks, section } from './build.ts';
import { found } from './found.ts';
import { changes, money, sideBySide } from './money.ts';
import { acceptance, backInUse, care, conditions, scope, warranty } from './promises.ts';
import { why } from './why.ts';

/** What the paper may claim: a stop and a missing fact are said before anything is offered. */
function standing(ctx: PaperContext): readonly Block[] {
  const stops = openStops(ctx);
  const unknown = reasonsOf(technical(ctx), 'not known');
  const lines = (title: string, word: 'stop' | 'not known', all: readonly Said[]): Block => ({
    kind: 'verdict',
    word,
    title: said(title),
    lines: all,
  });
  return [
    ...(stops.length > 0 ? [lines('proposal-stop', 'stop', stops.flatMap(withLift))] : []),
    ...(overridesSaid(ctx).length > 0 ? [lines('proposal-overridden', 'stop', overridesSaid(ctx))] : []),
    ...(unknown.length > 0 ? [lines('proposal-conditional', 'not known', unknown.flatMap(withLift))] : []),
  ];
}

function under(ctx: PaperContext): Said {
  if (openStops(ctx).length > 0) return said('proposal-under-stop', { option: ctx.option.name });
  if (ctx.option.conditional) return said('proposal-under-conditional', { option: ctx.option.name });
  return said('proposal-under', { option: ctx.option.name });
}

/** Caution that bears on the customer's choice; what the crew watches for stands on its own sheet. */
function worthKnowing(ctx: PaperContext): readonly Block[] {
  const { survey } = ctx.plan;
  const { system, thinner, cracks } = ctx.option;
  const careful = reasonsOf([survey, system, thinner, cracks] as readonly StepBase[], 'caution');
  if (careful.length === 0) return [];
  return [{ kind: 'verdict', word: 'caution', title: said('proposal-care-taken'), lines: careful.flatMap(withLift) }];
}

function valueUnder(ctx: PaperContext, id: string | undefined): number | undefined {
  const found = id === undefined ? undefined : ctx.plan.entries[id];
  return found?.kind === 'figure' || found?.kind === 'given' ? found.value : undefined;
}

/** Price, what it is with tax where that is another sum, and when shoes and vehicles may return by the sheet. */
function bigFigures(ctx: PaperContext): Block {
  const priced = known(ctx.option.price);
  const { price, total, perArea } = priced ?? {};
  const taxed = total !== undefined && valueUnder(ctx, total) !== valueUnder(ctx, price);
  const last = known(ctx.option.coats)?.coats.at(-1);
  const returns = ['foot', 'vehicle'].flatMap((what) => {
    const time = last?.times.find((one) => one.what === what);
    return time
      ? [
          {
            label: said(`paper-moment-${what}`),
            value: strong(time.value),
            under: said('proposal-big-return', {}, { at: time.at }),
          },
        ]
      : [];
  });
  return {
    kind: 'big-figures',
    figures: [
      {
        label: said(taxed ? 'proposal-price' : 'proposal-big-price'),
        value: price ? strong(price) : say('proposal-price-not-known'),
        ...(perArea ? { under: said('proposal-big-per-area', {}, { each: perArea }) } : {}),
      },
      ...(total && taxed ? [{ label: said('proposal-total'), value: strong(total) }] : []),
      ...returns,
    ],
  };
}

/** Nobody signs for a floor that is stopped. */
const signing = (ctx: PaperContext): Block =>
  openStops(ctx).length > 0
    ? { kind: 'boxed', lines: [said('proposal-not-for-signature')] }
    : { kind: 'signatures', fields: [said('proposal-sign-customer'), said('proposal-sign-firm')] };

/** The offer. It is always issued: under a stop it says so first, and what would lift it. */
export function proposal(ctx: PaperContext): Issued {
  return {
    ok: true,
    paper: paper(ctx, 'proposal', 'en', [
      { kind: 'headline', text: said('proposal-headline', { job: ctx.job.title }), under: under(ctx) },
      ...standing(ctx),
      ...worthKnowing(ctx),
      ...floorBlocks(ctx, 'customer', section(ctx)),
      bigFigures(ctx),
      ...sideBySide(ctx),
      { kind: 'columns', left: found(ctx), right: [...money(ctx), ...changes(ctx)] },
      ...why(ctx),
      ...preparationBlocks(ctx),
      ...coatTable(ctx),
      ...scope(ctx),
      ...conditions(ctx),
      ...backInUse(ctx),
      ...acceptance(),
      ...warranty(ctx),
      ...care(),
      signing(ctx),
    ]),
  };
}
