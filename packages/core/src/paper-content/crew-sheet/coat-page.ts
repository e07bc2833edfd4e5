import type { Published } from '../../plan.ts';
import type { CoatSheet } from '../../steps/results.ts';
import {
  dashes,
  drawnArea,
  heading,
  known,
  line,
  moment,
  type PaperContext,
  productOf,
  said,
  say,
  saying,
} from '../context.ts';
import { floorBlocks } from '../floor.ts';
import type { Block, Content } from '../paper.ts';
import { batchTable } from './batches.ts';
import { careOf } from './care.ts';
import { emergency } from './emergency.ts';
import { limitFacts, readingTable, stopList } from './limits.ts';
import { tasksAfter, taskTable } from './tasks.ts';

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
      said('crew-gear-own-entry'),
    ],
  };
}

/** Doors as the crew leaves them: shut ones first, the way out last. */
function ways(ctx: PaperContext): readonly Content[] {
  const exits = ctx.chosen.areas.flatMap((id) => drawnArea(ctx, id)?.exits ?? []);
  const shut = exits.filter((exit) => exit.shut);
  const open = exits.filter((exit) => !exit.shut);
  return [
    ...shut.map((exit) => say('crew-door-shut', { exit: exit.name ?? exit.id })),
    ...(open.length > 0
      ? [say('crew-way-out', { exits: open.map((exit) => exit.name ?? exit.id).join(', ') })]
      : [say('crew-way-out-not-drawn')]),
  ];
}

/** What is on hand beside the batches. */
function spare(ctx: PaperContext, coat: Coat): readonly Content[] {
  const bought = known(ctx.option.quantities);
  const item = bought?.buying.find((one) => one.kind === 'product' && one.item === coat.product);
  const quantity = bought?.layers.find(({ layer }) => layer === coat.layer);
  const thrown = bought?.broadcast.find(({ layer }) => layer === coat.layer);
  return [
    ...(quantity ? [say('crew-needed', {}, { needed: quantity.needed })] : []),
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

/** One coat on one page, to hang beside the mixing place. */
export function coatPage(ctx: PaperContext, index: number, pages: number): readonly Block[] {
  const coats = known(ctx.option.coats)?.coats ?? [];
  const timed = known(ctx.option.hours);
  const fit = known(ctx.option.system)?.layers[index];
  const coat = coats[index];
  if (!coat || !timed || !fit) return [];
  const gate = timed.gates.find(({ layer }) => layer === coat.layer);
  const last = index === coats.length - 1;
  const general = [...timed.verdict.reasons].filter(({ code }) => code === 'hours-two-people-broadcast');
  const reasons = [...(gate?.verdict.reasons ?? []), ...general.filter(({ names }) => names?.layer === coat.name)];
  return [
    {
      kind: 'headline',
      text: said('crew-coat', { coat: coat.name }),
      under: said('crew-page', { job: ctx.job.title, page: `${index + 2}`, pages: `${pages}` }),
    },
    line(
      gate?.at
        ? say('crew-start', { at: moment(ctx, gate.at) }, { people: ctx.option.people })
        : say('crew-start-not-known', {}, { people: ctx.option.people }),
    ),
    skin(ctx, coat),
    ...careOf(ctx, reasons),
    ...floorBlocks(ctx, 'crew', [
      heading('crew-how'),
      ...dashes([
        say('crew-film', {}, { wet: fit.wet }),
        ...(fit.wetVertical ? [say('crew-film-vertical', {}, { wet: fit.wetVertical })] : []),
        ...ways(ctx),
        ...spare(ctx, coat),
        ...thinned(ctx, coat),
        say('crew-second-pail'),
      ]),
    ]),
    ...batchTable(ctx, coat),
    { kind: 'frame', title: said('crew-lines'), text: said('crew-lines-need'), lines: 4 },
    ...limitFacts(ctx, coat, coats[index - 1]),
    { kind: 'frame', title: said('crew-ladder'), text: said('crew-ladder-need'), lines: 4 },
    ...readingTable(),
    heading('crew-order'),
    ...taskTable(ctx, [
      ...timed.tasks.filter(({ layer }) => layer === coat.layer),
      ...(last ? tasksAfter(timed.tasks) : []),
    ]),
    ...stopList(coat),
    ...(last ? [line(say('crew-after'))] : []),
    ...emergency(ctx),
  ];
}
