import { epochOf, instantIn } from '../../kernel/instant.ts';
import type { Published } from '../../plan.ts';
import type { CoatSheet } from '../../steps/results.ts';
import { bold, heading, type PaperContext, said, say, strong } from '../context.ts';
import type { Block, Content } from '../paper.ts';

type Coat = Published<CoatSheet>;

function numberUnder(ctx: PaperContext, id: string): number {
  const found = ctx.plan.entries[id];
  if (found?.kind !== 'given' && found?.kind !== 'figure') throw new Error(`no single number under ${id}`);
  return found.value;
}

const shown = (ctx: PaperContext, epoch: number): string =>
  instantIn(epoch, ctx.job.place.zone).slice(0, 16).replace('T', ' ');

/** Clock time at which the coat below opens or closes by its sheet, where its start is planned. */
function turnOf(ctx: PaperContext, below: Coat, value: string): string | undefined {
  const start = ctx.chosen.starts?.find(({ layer }) => layer === below.layer)?.at;
  return start ? shown(ctx, epochOf(start) + numberUnder(ctx, value) * 1000) : undefined;
}

/** When the coat below opens and closes by its sheet. */
function windowRows(
  ctx: PaperContext,
  below: Coat | undefined,
): readonly { label: Content; value: Content; note?: Content }[] {
  if (!below) return [];
  return below.times
    .filter(({ what }) => what === 'recoat from' || what === 'recoat until')
    .map(({ what, at, value }) => {
      const label = say(what === 'recoat from' ? 'crew-recoat-from' : 'crew-recoat-until', { lower: below.name });
      const turn = turnOf(ctx, below, value);
      if (!turn) return { label, value: strong(value), note: say('crew-at-temperature', {}, { at }) };
      return { label, value: bold(turn), note: say('crew-recoat-note', {}, { time: value, at }) };
    });
}

/** Limits that stand on the front as `stop and call if`, and times that the ladder gives by temperature. */
const ON_FRONT = ['slabLeast', 'slabMost', 'humidityMost'];
const IN_LADDER = ['pot life', 'open time'];

/** What is read before the first batch is opened and stands nowhere else on the sheet. */
export function limitFacts(ctx: PaperContext, coat: Coat, below: Coat | undefined): readonly Block[] {
  const laddered = (coat.ladder ?? []).length > 0;
  const moments = ['pot life', 'open time', 'broadcast until'].filter((what) => !laddered || !IN_LADDER.includes(what));
  return [
    heading('crew-limits', { sheet: coat.sheet }),
    {
      kind: 'facts',
      rows: [
        ...coat.limits
          .filter(({ what }) => !ON_FRONT.includes(what))
          .map(({ what, value }) => ({ label: say(`crew-limit-${what}`), value: strong(value) })),
        ...coat.times
          .filter(({ what }) => moments.includes(what))
          .map(({ what, value, at }) => ({
            label: say(`paper-moment-${what.replaceAll(' ', '-')}`),
            value: strong(value),
            note: say('crew-at-temperature', {}, { at }),
          })),
        ...windowRows(ctx, below),
      ],
    },
  ];
}

const EMPTY: Content = { name: '' };

/** Room for the readings of the day: without them nobody knows later what the coat was laid on. */
export const readingTable = (): readonly Block[] => [
  heading('crew-readings'),
  {
    kind: 'table',
    columns: [
      { head: said('crew-reading-when'), width: 0.2 },
      ...['time', 'slab', 'air', 'humidity', 'dew', 'margin', 'by'].map((what) => ({
        head: said(`crew-reading-${what}`),
        blank: true,
      })),
    ],
    rows: ['before', 'middle', 'end'].map((when) => [
      say(`crew-reading-${when}`),
      ...Array.from({ length: 7 }, () => EMPTY),
    ]),
  },
];

/** The last clock time at which this coat may still begin, by every closing the sheet of the coat below states. */
function latestStart(ctx: PaperContext, below: Coat | undefined): readonly Content[] {
  const closes = (below?.times ?? []).filter(({ what }) => what === 'recoat until');
  const [first] = [...closes].sort((a, b) => numberUnder(ctx, a.value) - numberUnder(ctx, b.value));
  const turn = below && first ? turnOf(ctx, below, first.value) : undefined;
  return below && turn ? [say('crew-stop-late', { lower: below.name, at: turn })] : [];
}

/** Stop and call if: each line a limit that may not be passed. */
export function stopList(ctx: PaperContext, coat: Coat, below: Coat | undefined): readonly Block[] {
  const limit = (what: string): string | undefined => coat.limits.find((one) => one.what === what)?.value;
  const [cold, hot, humid] = [limit('slabLeast'), limit('slabMost'), limit('humidityMost')];
  return [
    heading('crew-stop'),
    {
      kind: 'list',
      marks: 'stop',
      lines: [
        say('crew-stop-dew', {}, { margin: coat.dewMargin }),
        ...(cold ? [say('crew-stop-cold', {}, { limit: cold })] : []),
        ...(hot ? [say('crew-stop-hot', {}, { limit: hot })] : []),
        ...(humid ? [say('crew-stop-humid', {}, { limit: humid })] : []),
        ...latestStart(ctx, below),
        say('crew-stop-wet'),
      ],
    },
  ];
}
