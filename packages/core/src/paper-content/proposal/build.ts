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
  saying,
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
  const held = ctx.survey?.cutting === 'held';
  const cracks = areasOf(ctx).flatMap((area) =>
    area.cracks.map((crack) => {
      const done = crack.moves === 'yes' ? 'kept' : held ? 'held' : 'filled';
      return say(`proposal-crack-${done}`, { crack: crack.id, area: area.name }, { length: crack.length });
    }),
  );
  const joints = areasOf(ctx).flatMap((area) =>
    area.joints.map((joint) => {
      const done = joint.kind === 'isolation' ? 'open' : 'coated';
      return say(
        `proposal-joint-${done}`,
        { joint: joint.id, kind: `@paper-joint-${joint.kind}`, area: area.name },
        { length: joint.length },
      );
    }),
  );
  const removal = ctx.survey?.removal === 'held' ? [say('proposal-removal-held')] : [];
  return [
    heading('proposal-preparation'),
    ...dashes([method, ...removal, ...edge, ...cracks, ...joints, ...jointsLater(ctx)]),
  ];
}

/** What the hours already say of joints that are coated over. */
function jointsLater(ctx: PaperContext): readonly Content[] {
  const notes = known(ctx.option.hours)?.notes ?? [];
  return notes.filter(({ code }) => code === 'hours-joints-coated-over').map(saying);
}
