import type { Layer, Product } from '../../catalogue.ts';
import type { Band, Figure, Known } from '../../kernel/entry.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { DayTable } from '../../spread/index.ts';
import type { MixedProduct } from '../as-mixed.ts';
import { givenFact, givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import { leastInSequence, openFromPot, workingFromPot } from '../formulas/spread.ts';
import { moistOpen } from '../moist-open.ts';
import type { CoatDay } from '../results.ts';

export interface SpreadTimes {
  readonly working: Known<'s'>;
  readonly open: Known<'s'>;
  readonly openFrom: 'day' | 'data sheet' | 'own test' | 'assumed';
  /** A time is a guess, or stands on a sheet for a colder floor than this one. */
  readonly assumed: boolean;
  readonly workingMin: DayTable;
  readonly openMin: DayTable;
  readonly notes: readonly Said[];
}

/** Share of a pot life in which a batch is down and rolled: assumed. */
const POT_SHARE = 0.7;
/** Share of a pot life taken as open time where nothing at all is known of it: assumed. */
const OPEN_SHARE = 0.4;

/** What moist air does, said of a coat by its name. */
const SAID_HERE: Readonly<Record<string, string>> = {
  'day-water-above-sheet': 'spread-water-above-sheet',
  'cure-humidity-unknown': 'spread-humidity-not-on-sheet',
};

type SheetTime = NonNullable<Product['times']>[number];

/** The point of the sheet at a temperature not below the slab's: a warmer floor has less time. Else its warmest. */
function pointAt(product: Product, what: SheetTime['what'], slab: number | undefined): SheetTime | undefined {
  const points = (product.times ?? [])
    .filter((time) => time.what === what)
    .sort((a, b) => a.at.value - b.at.value || a.value.value - b.value.value);
  if (slab === undefined) return points.at(-1);
  return points.find(({ at }) => at.value >= slab - 1e-9) ?? points.at(-1);
}

/** Readings within two hours of the start, the nearest first. */
function readingsNear(ctx: OptionContext, start: Instant) {
  const away = ({ at }: { readonly at: Instant }): number => Math.abs(epochOf(at) - epochOf(start));
  return (ctx.job.survey.climate ?? [])
    .filter((reading) => away(reading) <= 7_200_000)
    .sort((a, b) => away(a) - away(b));
}

/** Longest wait after which a lap still vanished, where somebody tried. */
function triedOpen(ctx: OptionContext, product: MixedProduct) {
  const tests = (ctx.job.survey.openTimeTests ?? []).filter(
    (test) => test.product === product.id && test.mix === product.mixed,
  );
  const tied = tests.flatMap((test) =>
    test.ties.filter(({ vanished }) => vanished).map(({ after }) => ({ after, slab: test.slab.value, on: test.on })),
  );
  return tied.sort((a, b) => b.after.value - a.after.value)[0];
}

const spanOf = ({ value, band: [low, high] = [value, value] }: Known<'s'>) => ({
  time: value,
  low,
  high,
  cautions: [],
});

const minutes = (seconds: number): number => seconds / 60;

/** Working time and open time of a coat by the clock; undefined where the sheet names neither pot life nor open time. */
export function spreadTimes(
  ctx: OptionContext,
  layer: Layer,
  start: Instant,
  startMin: number,
  coat: CoatDay | undefined,
  trace: Trace,
): SpreadTimes | undefined {
  const product = productOf(ctx, layer);
  const names = { layer: layer.name ?? product.name, sheet: sheetOf(product) };
  const where = sheetOf(product);
  const near = readingsNear(ctx, start);
  const slab = near.find((reading) => reading.slab)?.slab?.value;
  const notes: Said[] = [];
  let assumed = false;
  const sheetTime = (what: 'pot life' | 'open time'): Known<'s'> | undefined => {
    const point = pointAt(product, what, slab);
    if (!point) return undefined;
    const id = what.replace(' ', '-');
    const known = givenFact(trace, id, point.value, { where });
    const at = trace.given(`${id}-at`, {
      value: point.at.value,
      unit: '°C',
      origin: 'data sheet',
      where,
      typed: point.at.typed,
      shows: 'temperature',
    });
    if (slab !== undefined && slab > point.at.value + 1e-9) {
      assumed = true;
      notes.push({ code: `spread-${id}-warmer-than-sheet`, names, figures: { time: known.id, at: at.id } });
    } else notes.push({ code: `spread-${id}-by-sheet`, names, figures: { time: known.id, at: at.id } });
    return known as Known<'s'>;
  };
  const pot = sheetTime('pot life');
  const share = trace.given('working-share', {
    value: POT_SHARE,
    unit: '1',
    origin: 'assumed',
    says: 'spread-working-share-assumed',
    shows: 'share',
  });
  const working = pot ? trace.figure('working', workingFromPot, { potLife: pot, share }) : undefined;

  const tried = triedOpen(ctx, product);
  let open: Known<'s'> | undefined;
  let openFrom: SpreadTimes['openFrom'] = 'data sheet';
  if (tried) {
    open = trace.given('open-tried', {
      value: tried.after.value,
      unit: 's',
      origin: 'own test',
      typed: tried.after.typed,
      when: tried.on,
      shows: 'duration',
    });
    openFrom = 'own test';
    if (slab !== undefined && slab > tried.slab + 3) {
      assumed = true;
      notes.push({ code: 'spread-open-tried-colder', names, figures: { time: open.id } });
    }
  } else {
    open = sheetTime('open time');
    const point = pointAt(product, 'open time', slab);
    if (point?.value.origin === 'own test') openFrom = 'own test';
  }
  if (!open && pot) {
    const part = trace.given('open-share', {
      value: OPEN_SHARE,
      unit: '1',
      origin: 'assumed',
      says: 'spread-open-assumed',
      shows: 'share',
    });
    open = trace.figure('open-assumed', openFromPot, { potLife: pot, share: part });
    openFrom = 'assumed';
    assumed = true;
    notes.push({ code: 'spread-open-assumed', names, figures: { time: open.id, share: part.id } });
  }
  if (!open) return undefined;
  const placed = working ?? open;
  const [read] = near;
  // what was tried here was tried in air of its own, which nobody noted
  const moist =
    read && !tried && !coat
      ? moistOpen(
          product,
          (t) => ({
            air: givenField(t, 'air', read.air, 'reading', { when: read.at }),
            humidity: givenField(t, 'humidity', read.humidity, 'reading', { when: read.at }),
          }),
          trace,
          pointAt(product, 'open time', slab),
        )
      : undefined;
  if (!working) {
    assumed = true;
    notes.push({ code: 'spread-working-not-on-sheet', names, figures: { time: open.id } });
  }
  for (const { code, figures = {} } of moist?.holds ?? [])
    notes.push({ code: SAID_HERE[code] ?? code, names, figures });
  const byClock = coat ? byDay(coat, start, startMin) : {};
  const shortest = (name: string, table: DayTable, along: readonly string[], band?: Band): Figure<'s'> =>
    trace.taken(name, leastInSequence, {
      value: Math.min(...table.map(([, value]) => value)) * 60,
      unit: 's',
      shows: 'duration',
      inputs: { along },
      ...(band ? { band } : {}),
    });
  const openOfDay =
    byClock.open && openFrom !== 'assumed'
      ? shortest('open-by-day', byClock.open, [open.id, ...(byClock.decides ?? [])], byClock.openBand)
      : undefined;
  const openInAir = moist ? moist.of(spanOf(open)) : undefined;
  const openOfAir =
    moist && openInAir
      ? shortest(
          'open-in-air',
          [[startMin, minutes(openInAir.time)]],
          [open.id, moist.ratio.id],
          [openInAir.low, openInAir.high],
        )
      : undefined;
  const workingOfDay = byClock.working
    ? shortest('working-by-day', byClock.working, [share.id, ...(byClock.potIds ?? [])])
    : undefined;
  if (openOfDay) {
    const figures = { open: openOfDay.id, working: (workingOfDay ?? placed).id };
    notes.push({ code: 'spread-times-of-the-day', names, figures });
  }
  return {
    working: workingOfDay ?? placed,
    open: openOfDay ?? openOfAir ?? open,
    openFrom: openOfDay ? 'day' : openFrom,
    assumed: assumed && !(openOfDay && workingOfDay),
    workingMin: byClock.working ?? [[startMin, minutes(placed.value)]],
    openMin: openOfDay && byClock.open ? byClock.open : [[startMin, minutes((openOfAir ?? open).value)]],
    notes,
  };
}

interface ByClock {
  readonly working?: DayTable;
  readonly potIds?: readonly string[];
  readonly open?: DayTable;
  readonly openBand?: Band;
  readonly decides?: readonly string[];
}

/** Pot lives and open times of the day's own temperatures, minute of the day by minute of the day. */
function byDay(coat: CoatDay, start: Instant, startMin: number): ByClock {
  const minuteOf = (at: Instant): number => startMin + (epochOf(at) - epochOf(start)) / 60_000;
  const rising = (rows: readonly (readonly [number, number])[]): DayTable =>
    rows.filter(([at], i) => i === 0 || at > (rows[i - 1]?.[0] ?? 0) + 1e-6);
  const pots = coat.pots.flatMap(({ at, time }) => (time ? [{ at: minuteOf(at), time }] : []));
  const working = rising(pots.map(({ at, time }) => [at, (POT_SHARE * time.value) / 60] as const));
  return {
    ...(working.length > 0 ? { working, potIds: pots.map(({ time }) => time.id) } : {}),
    ...openByDay(coat, minuteOf, rising),
  };
}

/** Open time of the first metre and of the last, each from its own moment of laying. */
function openByDay(
  { milestones, start: begun }: CoatDay,
  minuteOf: (at: Instant) => number,
  rising: (rows: readonly (readonly [number, number])[]) => DayTable,
): Pick<ByClock, 'open' | 'openBand' | 'decides'> {
  const stage = milestones.find(({ what }) => what === 'open');
  if (!stage || !begun) return {};
  const since = (from: Instant, to: Instant): number => (epochOf(to) - epochOf(from)) / 1000;
  const ends = [
    { from: begun.at, span: stage.first },
    { from: begun.laid, span: stage.last },
  ];
  // instants are told to the minute: an open time that rounds to nothing is no time
  if (ends.some(({ from, span }) => since(from, span.at) < 30)) return {};
  const open = rising(ends.map(({ from, span }) => [minuteOf(from), since(from, span.at) / 60] as const));
  const low = Math.min(...ends.map(({ from, span }) => since(from, span.low)));
  const highs = ends.flatMap(({ from, span }) => (span.high ? [since(from, span.high)] : []));
  return {
    open,
    decides: [stage.warm.id],
    ...(highs.length === ends.length ? { openBand: [low, Math.min(...highs)] as const } : {}),
  };
}
