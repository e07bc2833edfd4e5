import {
  areasOf,
  bold,
  dashes,
  entry,
  heading,
  known,
  line,
  name,
  type PaperContext,
  productOf,
  profileSaid,
  said,
  say,
} from '../context.ts';
import type { Block, Content, SectionLayer } from '../paper.ts';

/** The cut through the floor from the concrete up: what is ground, what is laid, what is thrown. */
export function section(ctx: PaperContext): readonly Block[] {
  const fitted = known(ctx.option.system);
  const prepared = known(ctx.option.preparation);
  if (!fitted) return [];
  const slab: SectionLayer = {
    kind: 'concrete',
    title: prepared ? profileSaid(ctx, 'proposal-cut-slab', prepared.target) : say('proposal-cut-slab-plain'),
  };
  const above = fitted.layers.flatMap((layer): readonly SectionLayer[] => {
    const coat = known(ctx.option.coats)?.coats.find((one) => one.layer === layer.layer);
    const media = ctx.system.layers.find(({ id }) => id === layer.layer)?.broadcast?.media;
    const thrown = ctx.catalogue.media?.find(({ id }) => id === media)?.name;
    return [
      {
        kind: 'film',
        title: say('proposal-cut-film', { coat: layer.name }, { dry: layer.dry }),
        note: say(`paper-chemistry-${productOf(ctx, layer.product).chemistry.replaceAll(' ', '-')}`),
      },
      ...(thrown
        ? [
            {
              kind: 'broadcast',
              title: bold(thrown),
              ...(coat?.broadcast ? { note: say('proposal-cut-thrown', {}, { rate: coat.broadcast }) } : {}),
            } as const,
          ]
        : []),
    ];
  });
  return [heading('proposal-what-you-get'), { kind: 'section', layers: [slab, ...above] }];
}

/** Coats with type, films, coverage and what is broadcast. */
export function coatTable(ctx: PaperContext): readonly Block[] {
  const fitted = known(ctx.option.system);
  if (!fitted) return [];
  const coats = known(ctx.option.coats)?.coats ?? [];
  const unknown = say('paper-not-known');
  return [
    heading('proposal-coats'),
    {
      kind: 'table',
      columns: [
        { head: said('proposal-coat') },
        { head: said('proposal-type') },
        { head: said('proposal-wet'), align: 'right' },
        { head: said('proposal-dry'), align: 'right' },
        { head: said('proposal-covers'), align: 'right' },
        { head: said('proposal-thrown'), align: 'right' },
      ],
      rows: fitted.layers.map((layer): readonly Content[] => {
        const coat = coats.find((one) => one.layer === layer.layer);
        return [
          bold(layer.name),
          say(`paper-chemistry-${productOf(ctx, layer.product).chemistry.replaceAll(' ', '-')}`),
          entry(layer.wet),
          entry(layer.dry),
          coat?.coverage ? entry(coat.coverage) : unknown,
          coat?.broadcast ? entry(coat.broadcast) : name('–'),
        ];
      }),
    },
    ...dashes([say('proposal-lot-rule')]),
  ];
}

/** Preparation to a named profile, then each crack and joint of the plan and what is done with it. */
export function preparationBlocks(ctx: PaperContext): readonly Block[] {
  const prepared = known(ctx.option.preparation);
  if (!prepared) return [heading('proposal-preparation'), line(say('proposal-preparation-not-known'))];
  const method = prepared.chosen
    ? profileSaid(ctx, 'proposal-prepared-by', prepared.target, {
        names: { method: `@preparation-method-${prepared.chosen}` },
        figures: { passes: prepared.passes },
      })
    : profileSaid(ctx, 'proposal-prepared-to', prepared.target);
  const edge = areasOf(ctx).map((area) => say('proposal-edges', { area: area.name }, { edge: area.edge }));
  const removal = ctx.survey?.removal === 'held' ? [say('proposal-removal-held')] : [];
  return [heading('proposal-preparation'), ...dashes([method, ...removal, ...edge]), ...linesTreated(ctx)];
}

/** Each crack and joint of the plan by its line: what is done with it. What the first winter shows stands under why. */
function linesTreated(ctx: PaperContext): readonly Block[] {
  const judged = known(ctx.option.cracks);
  if (!judged) return [line(say('proposal-lines-not-known'))];
  if (judged.cracks.length === 0) return [];
  const areaName = (id: string): string => areasOf(ctx).find((area) => area.id === id)?.name ?? id;
  return [
    heading('proposal-lines'),
    ...dashes(
      judged.cracks.map((one) =>
        say(
          `proposal-line-${one.planned.replaceAll(' ', '-')}`,
          { line: one.id, kind: `@cracks-kind-${one.kind}`, area: areaName(one.area) },
          { length: one.length },
        ),
      ),
    ),
  ];
}
