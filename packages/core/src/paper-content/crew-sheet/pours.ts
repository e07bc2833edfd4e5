import type { Published } from '../../plan.ts';
import type { CoatSheet } from '../../steps/results.ts';
import {
  bold,
  dashes,
  entry,
  heading,
  moment,
  name,
  type PaperContext,
  said,
  say,
  saying,
  strong,
} from '../context.ts';
import type { Block, Content } from '../paper.ts';
import { type PublishedPour, pourName, spreadsOf } from '../pours.ts';

const EMPTY: Content = { name: '' };
/** Above this many the front shows one row for all of a size, and the back every batch with its times. */
export const MOST_ON_FRONT = 12;

/** Pours of each part of the floor and of each day. */
const poursByPart = (ctx: PaperContext, layer: string): readonly (readonly PublishedPour[])[] =>
  spreadsOf(ctx, layer).map(({ pours, day }) =>
    day ? pours.map((pour) => ({ ...pour, pour: pourName(day, pour.pour) })) : pours,
  );

export const poursOf = (ctx: PaperContext, layer: string): readonly PublishedPour[] => poursByPart(ctx, layer).flat();

/** Days of a floor that takes several: when each begins, where it ends tonight, how it meets yesterday's film. */
export function daysOf(ctx: PaperContext, layer: string): readonly Block[] {
  const days = spreadsOf(ctx, layer).filter(({ day }) => day !== undefined);
  if (days.length === 0) return [];
  const said = days.flatMap(({ day, start, laid }) => [
    ...(day && start && laid
      ? [
          say(
            'crew-day',
            { day: `${day.number}`, days: `${day.of}`, from: moment(ctx, start), until: clock(ctx, laid) },
            { area: day.area },
          ),
        ]
      : []),
    ...(day?.says ?? []).map(saying),
  ]);
  return [heading('crew-days'), ...dashes(said)];
}

const clock = (ctx: PaperContext, at: string): string => moment(ctx, at).slice(11);

const partCell = (pour: PublishedPour, component: string): Content => {
  const part = pour.parts.find((one) => one.component === component);
  if (!part) return EMPTY;
  return part.mass
    ? say('crew-part', {}, { volume: part.volume, mass: part.mass })
    : say('crew-part-volume', {}, { volume: part.volume });
};

/** Whole batches as one row and the last apart. */
function rowsOf(ctx: PaperContext, pours: readonly PublishedPour[], short: boolean) {
  if (!short || pours.length < 3) {
    return pours.map((pour) => ({
      pour,
      span: pour.pour,
      mix: clock(ctx, pour.mixFrom),
      by: clock(ctx, pour.placeBy),
    }));
  }
  const [first, last] = [pours[0], pours.at(-1)];
  if (!first || !last) return [];
  const back = { mix: '', by: '' };
  return [
    { pour: first, span: `${first.pour}–${pours.at(-2)?.pour ?? first.pour}`, ...back },
    { pour: last, span: last.pour, ...back },
  ];
}

/** Batches as they are poured: each part by volume and weight, when to mix, when it must be down, and room for what happened. */
export function pourTable(ctx: PaperContext, coat: Published<CoatSheet>): readonly Block[] {
  const pours = poursOf(ctx, coat.layer);
  const parts = pours[0]?.parts ?? [];
  const thinned = pours.some(({ thinner }) => thinner !== undefined);
  const short = pours.length > MOST_ON_FRONT;
  const rows = poursByPart(ctx, coat.layer).flatMap((part) => rowsOf(ctx, part, short));
  return [
    heading('crew-batches'),
    {
      kind: 'table',
      columns: [
        { head: said('crew-batch') },
        { head: said('crew-mixed'), align: 'right' },
        ...parts.map((part) => ({ head: said('crew-part-named', { part: part.name }), align: 'right' as const })),
        ...(thinned ? [{ head: said('crew-thinner-batch'), align: 'right' as const }] : []),
        { head: said('crew-mix-from'), align: 'right' },
        { head: said('crew-place-by'), align: 'right' },
        { head: said('crew-lot'), blank: true },
      ],
      rows: rows.map(({ pour, span, mix, by }) => [
        bold(span),
        strong(pour.volume),
        ...parts.map(({ component }) => partCell(pour, component)),
        ...(thinned ? [pour.thinner ? entry(pour.thinner) : EMPTY] : []),
        mix ? name(mix) : EMPTY,
        by ? bold(by) : EMPTY,
        EMPTY,
      ]),
    },
  ];
}

/** Where each batch ends and how much floor it covers, and the times where the front has no room. */
export function endTable(ctx: PaperContext, layer: string): readonly Block[] {
  const pours = poursOf(ctx, layer);
  const timed = pours.length > MOST_ON_FRONT;
  return [
    heading('crew-lines'),
    {
      kind: 'table',
      columns: [
        { head: said('crew-batch') },
        ...(timed ? [{ head: said('crew-mix-from') }, { head: said('crew-place-by') }] : []),
        { head: said('crew-area'), align: 'right' },
        { head: said('crew-ends'), width: timed ? 0.66 : 0.68 },
        ...(timed ? [] : [{ head: said('crew-line-at'), blank: true }]),
      ],
      rows: pours.map((pour) => [
        bold(pour.pour),
        ...(timed ? [name(clock(ctx, pour.mixFrom)), bold(clock(ctx, pour.placeBy))] : []),
        entry(pour.area),
        saying(pour.ends),
        ...(timed ? [] : [EMPTY]),
      ]),
    },
  ];
}

/** Stops told in words; the drawing shows the rest. */
const MOST_STOPS = 3;

/** Where to stop if a batch goes wrong, those that need the least tape first. */
export function stopsOf(ctx: PaperContext, layer: string): readonly Block[] {
  const stops = spreadsOf(ctx, layer).flatMap(({ bailOuts, day }) =>
    bailOuts.map((stop) => ({ ...stop, pour: pourName(day, stop.pour) })),
  );
  const taped = (id: string): number => {
    const found = ctx.plan.entries[id];
    return found && 'value' in found ? found.value : 0;
  };
  const least = [...stops].sort((a, b) => taped(a.tape) - taped(b.tape)).slice(0, MOST_STOPS);
  return dashes(
    least.map(({ pour, at, tape, joints }) =>
      joints.length > 0
        ? taped(tape) > 0
          ? say('crew-bail-out-joint', { pour, at: clock(ctx, at), joint: joints.join(', ') }, { tape })
          : say('crew-bail-out-joint-alone', { pour, at: clock(ctx, at), joint: joints.join(', ') })
        : say('crew-bail-out', { pour, at: clock(ctx, at) }, { tape }),
    ),
  );
}
