import type { Published } from '../../plan.ts';
import type { CoatSheet } from '../../steps/results.ts';
import { dashes, drawnArea, known, line, moment, type PaperContext, productOf, said, say, saying } from '../context.ts';
import { floorBlocks } from '../floor.ts';
import type { Block, Content } from '../paper.ts';
import { spreadsOf } from '../pours.ts';
import { batchTable } from './batches.ts';
import { careful, careOf } from './care.ts';
import { emergency } from './emergency.ts';
import { ladderTable } from './ladder.ts';
import { limitFacts, readingTable, stopList } from './limits.ts';
import { daysOf, endTable, poursOf, pourTable, stopsOf } from './pours.ts';

type Coat = Published<CoatSheet>;

/** Skin first: what goes through it does not come out again. */
function skin(ctx: PaperContext, coat: Coat): Block {
  const { isocyanate, amine } = productOf(ctx, coat.product);
  return {
    kind: 'boxed',
    strong: true,
    lines: [
      said('crew-skin'),
      ...(isocyanate ? [said('crew-isocyanate')] : []),
      ...(amine ? [said('crew-amine')] : []),
      ...(isocyanate || amine ? [] : [said('crew-gear-own-entry')]),
    ],
  };
}

/** Doors as the crew leaves them: shut ones first, the way out last. */
function ways(ctx: PaperContext, layer: string): readonly Content[] {
  const exits = ctx.chosen.areas.flatMap((id) => drawnArea(ctx, id)?.exits ?? []);
  const shut = exits.filter((exit) => exit.shut);
  // rooms spread as one floor: a doorway from one into the next is no way out
  const joined = spreadsOf(ctx, layer).flatMap((coat) => coat.joined?.exits ?? []);
  const drawn = exits.filter((exit) => !exit.shut).map((exit) => exit.name ?? exit.id);
  const open = joined.length > 0 ? joined.map((exit) => exit.name) : drawn;
  return [
    ...shut.map((exit) => say('crew-door-shut', { exit: exit.name ?? exit.id })),
    ...(open.length > 0 ? [say('crew-way-out', { exits: open.join(', ') })] : [say('crew-way-out-not-drawn')]),
  ];
}

/** What is on hand beside the batches. */
function spare(ctx: PaperContext, coat: Coat): readonly Content[] {
  const bought = known(ctx.option.quantities);
  const item = bought?.buying.find((one) => one.kind === 'product' && one.item === coat.product);
  const quantity = bought?.layers.find(({ layer }) => layer === coat.layer);
  const thrown = bought?.broadcast.find(({ layer }) => layer === coat.layer);
  return [
    ...(item ? [say('crew-spare', { product: item.name }, { left: item.left })] : []),
    ...(quantity?.thinner ? [say('crew-thinner', {}, { thinner: quantity.thinner })] : []),
    ...(thrown ? [say('crew-thrown', { media: thrown.name }, { thrown: thrown.thrown })] : []),
  ];
}

/** How thinner changes the gauge, the time and what must leave the film. */
function thinned(ctx: PaperContext, coat: Coat): readonly Content[] {
  const notes = known(ctx.option.thinner)?.notes ?? [];
  return notes
    .filter(({ code, names }) => names?.layer === coat.name && /^thinner-(old-gauge|open-time|entrapment)/.test(code))
    .map(saying);
}

/** One coat on one sheet: the front hangs beside the mixing place, the back is read before the first lid is opened. */
export function coatPage(ctx: PaperContext, index: number, pages: number): readonly Block[] {
  const coats = known(ctx.option.coats)?.coats ?? [];
  const timed = known(ctx.option.hours);
  const fit = known(ctx.option.system)?.layers[index];
  const coat = coats[index];
  if (!coat || !timed || !fit) return [];
  const gate = timed.gates.find(({ layer }) => layer === coat.layer);
  const general = [...timed.verdict.reasons].filter(({ code }) => code === 'hours-two-people-broadcast');
  const reasons = [...(gate?.verdict.reasons ?? []), ...general.filter(({ names }) => names?.layer === coat.name)];
  const at = gate?.at;
  const page = { job: ctx.job.title, page: `${index + 2}`, pages: `${pages}`, careful: careful(reasons) };
  const start = at
    ? said('crew-start', { ...page, at: moment(ctx, at) }, { people: ctx.option.people })
    : said('crew-start-not-known', page, { people: ctx.option.people });
  const below = coats[index - 1];
  const planned = poursOf(ctx, coat.layer).length > 0;
  const frame = (title: string, text: string): Block => ({
    kind: 'frame',
    title: said(title),
    text: said(text),
    lines: 3,
  });
  const byTemperature = ladderTable(coat);
  const ladder = byTemperature.length > 0 ? byTemperature : [frame('crew-ladder', 'crew-ladder-need')];
  return [
    { kind: 'headline', text: said('crew-coat', { coat: coat.name }), under: start },
    skin(ctx, coat),
    ...floorBlocks(ctx, 'crew', stopList(ctx, coat, below), coat.layer),
    line(
      say('crew-film', {}, { wet: fit.wet }),
      ...(fit.wetVertical ? [say('crew-film-vertical', {}, { wet: fit.wetVertical })] : []),
      coat.mixTime ? say('crew-mix-time', {}, { time: coat.mixTime }) : say('crew-mix-time-not-known'),
      ...ways(ctx, coat.layer),
    ),
    ...(planned ? pourTable(ctx, coat) : batchTable(ctx, coat)),
    ...emergency(),
    { kind: 'page-break', hand: true },
    { kind: 'headline', text: said('crew-coat-back', { coat: coat.name }), under: said('crew-page-back', page) },
    ...daysOf(ctx, coat.layer),
    ...(planned ? endTable(ctx, coat.layer) : []),
    {
      kind: 'columns',
      left: [...ladder, ...dashes([say('crew-second-pail'), ...spare(ctx, coat), ...thinned(ctx, coat)])],
      right: [
        ...(planned ? stopsOf(ctx, coat.layer) : [frame('crew-lines', 'crew-lines-need')]),
        ...limitFacts(ctx, coat, below),
      ],
    },
    ...careOf(reasons),
    ...readingTable(),
  ];
}
