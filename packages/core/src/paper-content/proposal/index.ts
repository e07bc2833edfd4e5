import type { Said } from '../../kernel/said.ts';
import {
  areasOf,
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
  if (openStops(ctx).length > 0) return said('proposal-under-stop');
  if (ctx.option.conditional) return said('proposal-under-conditional', { option: ctx.option.name });
  return said('proposal-under', { option: ctx.option.name });
}

function bigFigures(ctx: PaperContext): Block {
  const priced = known(ctx.option.price);
  const total = priced?.total ?? priced?.price;
  return {
    kind: 'big-figures',
    figures: [
      {
        label: said('proposal-big-price'),
        value: total ? strong(total) : say('proposal-price-not-known'),
        ...(priced?.perArea ? { under: said('proposal-big-per-area', {}, { each: priced.perArea }) } : {}),
      },
      ...areasOf(ctx)
        .slice(0, 2)
        .map((area) => ({ label: said('proposal-big-area', { area: area.name }), value: strong(area.net) })),
    ],
  };
}

/** The offer. It is always issued: under a stop it says so first, and what would lift it. */
export function proposal(ctx: PaperContext): Issued {
  return {
    ok: true,
    paper: paper(ctx, 'proposal', 'en', [
      { kind: 'headline', text: said('proposal-headline', { job: ctx.job.title }), under: under(ctx) },
      ...standing(ctx),
      ...floorBlocks(ctx, 'customer', section(ctx)),
      bigFigures(ctx),
      ...sideBySide(ctx),
      { kind: 'columns', left: found(ctx), right: [...money(ctx), ...changes(ctx)] },
      ...preparationBlocks(ctx),
      ...coatTable(ctx),
      ...scope(ctx),
      ...conditions(ctx),
      ...backInUse(ctx),
      ...acceptance(),
      ...warranty(ctx),
      ...care(),
      { kind: 'signatures', fields: [said('proposal-sign-customer'), said('proposal-sign-firm')] },
    ]),
  };
}
