import type { Published } from '../plan.ts';
import type { BuyingLine, QuantitiesPlan } from '../steps/results.ts';
import {
  bold,
  dashes,
  entry,
  heading,
  known,
  line,
  name,
  type PaperContext,
  paper,
  productOf,
  said,
  say,
  saying,
  strong,
} from './context.ts';
import { packsSaid } from './packs.ts';
import type { Block, Content, Issued } from './paper.ts';

const EMPTY: Content = { name: '' };

/** One item: the first size of pack with the sums, further sizes on rows of their own. */
function rowsOf(ctx: PaperContext, item: Published<BuyingLine>): readonly (readonly Content[])[] {
  const [first = EMPTY, ...others] = packsSaid(ctx, item);
  return [
    [bold(item.name), first, entry(item.needed), entry(item.bought), entry(item.left), EMPTY, EMPTY],
    ...others.map((pack) => [EMPTY, pack, EMPTY, EMPTY, EMPTY, EMPTY, EMPTY]),
  ];
}

function itemsTable(ctx: PaperContext, bought: Published<QuantitiesPlan>): Block {
  return {
    kind: 'table',
    columns: [
      { head: said('buying-item') },
      { head: said('buying-buy') },
      { head: said('buying-needed'), align: 'right' },
      { head: said('buying-bought'), align: 'right' },
      { head: said('buying-left'), align: 'right' },
      { head: said('buying-lot'), blank: true },
      { head: said('buying-got'), blank: true },
    ],
    rows: bought.buying.flatMap((item) => rowsOf(ctx, item)),
  };
}

/** How sure each count is, and what would turn it. */
function turns(bought: Published<QuantitiesPlan>): readonly Block[] {
  const near = bought.buying.flatMap(({ name: item, turns: turn }) =>
    turn ? [[bold(item), saying(turn)] as const] : [],
  );
  if (near.length === 0) return [];
  return [
    heading('buying-turns'),
    {
      kind: 'facts',
      rows: near.map(([label, value]) => ({ label, value })),
    },
  ];
}

/** Volume and mass of each part, for a firm that buys drums instead of kits. */
function parts(ctx: PaperContext, bought: Published<QuantitiesPlan>): readonly Block[] {
  const rows = bought.layers.flatMap((layer) =>
    layer.components.map(({ component, volume, mass }): readonly Content[] => {
      const called = productOf(ctx, layer.product).components.find(({ id }) => id === component)?.name ?? component;
      return [name(layer.name), name(called), entry(volume), mass ? entry(mass) : say('paper-not-known')];
    }),
  );
  if (rows.length === 0) return [];
  return [
    heading('buying-parts'),
    {
      kind: 'table',
      columns: [
        { head: said('buying-coat') },
        { head: said('buying-part') },
        { head: said('buying-volume'), align: 'right' },
        { head: said('buying-mass'), align: 'right' },
      ],
      rows,
    },
  ];
}

function left(ctx: PaperContext, bought: Published<QuantitiesPlan>): readonly Block[] {
  const rows = bought.buying.flatMap((item) =>
    (item.leftByComponent ?? []).map(({ component, volume }) => {
      const called = productOf(ctx, item.item).components.find(({ id }) => id === component)?.name ?? component;
      return { label: name(`${item.name}, ${called}`), value: entry(volume) };
    }),
  );
  return rows.length > 0 ? [heading('buying-left-parts'), { kind: 'facts', rows }] : [];
}

/** Consumables, hire, disposal: what the price book counts beside material. Names and amounts, no money. */
function beside(ctx: PaperContext): readonly Block[] {
  const priced = known(ctx.option.price);
  const lines = (priced?.lines ?? []).filter(({ kind }) => kind === 'line');
  if (lines.length === 0) return [heading('buying-beside'), line(say('buying-beside-not-known'))];
  return [
    heading('buying-beside'),
    { kind: 'facts', rows: lines.map((one) => ({ label: name(one.name), value: entry(one.quantity) })) },
  ];
}

/** Notes of the quantities that bear on what is bought; how numbers were counted stays in the working. */
const KEPT =
  /^quantities-(one-lot|reserve|thinner|thinner-not-sold|filler-not-sold|bought-jointly|addition-not-counted|broadcast-tight|no-packs|packs-not-proven)$/;

export function buyingList(ctx: PaperContext): Issued {
  const bought = known(ctx.option.quantities);
  if (!bought || bought.buying.length === 0) {
    const reasons = ctx.option.quantities.verdict.reasons;
    return { ok: false, kind: 'buying-list', why: [said('buying-nothing-counted'), ...reasons] };
  }
  const notes = (bought.notes as readonly { readonly code: string }[]).filter(({ code }) => KEPT.test(code));
  const broadcast = bought.broadcast.flatMap(({ name: media, thrown, back }) => [
    { label: name(media), value: strong(thrown), note: say('buying-thrown') },
    ...(back ? [{ label: name(media), value: entry(back), note: say('buying-back') }] : []),
  ]);
  return {
    ok: true,
    paper: paper(ctx, 'buying-list', 'en', [
      { kind: 'headline', text: said('buying-headline', { option: ctx.option.name }) },
      ...(ctx.option.conditional || ctx.option.verdict === 'stop' ? [line(say('buying-wait'))] : []),
      itemsTable(ctx, bought),
      ...dashes(notes.map(saying)),
      ...turns(bought),
      ...parts(ctx, bought),
      ...left(ctx, bought),
      ...(broadcast.length > 0 ? [heading('buying-broadcast'), { kind: 'facts', rows: broadcast } as const] : []),
      ...beside(ctx),
    ]),
  };
}
