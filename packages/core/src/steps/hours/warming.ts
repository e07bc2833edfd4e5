import type { Product } from '../../catalogue.ts';
import type { Figure } from '../../kernel/entry.ts';
import { epochOf } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import { slabRate } from '../formulas/hours-tasks.ts';
import { clock, type Reading } from './readings.ts';

/** Two readings further from the start than this show another part of the day. */
const TREND = 4 * 3600_000;
/** How long a film stays soft enough for air or sun to matter, where the sheet states no time at all. An assumption. */
const SOFT = 2 * 3600_000;

type Names = Readonly<Record<string, string>>;

/** Readings of one place on both sides of the start; without one after it, the last two before. */
function pairAt(readings: readonly Reading[], start: number): readonly [Reading, Reading] | undefined {
  const before = readings.filter(({ epoch }) => epoch <= start);
  const last = before.at(-1);
  const next = readings.find(({ epoch }) => epoch > start);
  if (last && next) return [last, next];
  const earlier = before.at(-2);
  return last && earlier ? [earlier, last] : undefined;
}

/** How fast the slab warms around a start, the fastest place of those read; undefined when no place was read twice. */
export function trendAt(readings: readonly Reading[], start: number, trace: Trace): Figure<'K/s'> | undefined {
  const near = readings.filter(({ slab, epoch }) => slab !== undefined && Math.abs(epoch - start) <= TREND);
  let fastest: Figure<'K/s'> | undefined;
  for (const [i, where] of [...new Set(near.map((one) => one.where))].entries()) {
    const pair = pairAt(
      near.filter((one) => one.where === where),
      start,
    );
    const [first, second] = pair ?? [];
    if (!first?.slab || !second?.slab || second.epoch === first.epoch) continue;
    const t = trace.within(`trend.${i}`);
    const between = t.given('between', {
      value: (second.epoch - first.epoch) / 1000,
      unit: 's',
      origin: 'reading',
      where: `${first.at} – ${second.at}`,
      shows: 'duration',
    });
    const rate = t.figure('rate', slabRate, { earlier: first.slab, later: second.slab, between });
    if (!fastest || rate.value > fastest.value) fastest = rate;
  }
  return fastest;
}

/** The first reading after which the slab no longer warms, if one was taken. */
function turning(readings: readonly Reading[], start: number): Reading | undefined {
  const later = readings.filter(({ slab, epoch }) => slab !== undefined && epoch > start);
  return later.find((one, i) => {
    const next = later[i + 1];
    return next?.where === one.where && (next.slab?.value ?? 0) <= (one.slab?.value ?? 0);
  });
}

/**
 * A coat on bare concrete that warms is pushed up by the air in the pores: holes with a rim. Whether the slab warms is
 * read off two readings, not off the noon peak of the air, which comes hours before that of the slab.
 */
export function warmingReasons(
  ctx: OptionContext,
  readings: readonly Reading[],
  start: number,
  trace: Trace,
  names: Names,
): readonly Reason[] {
  const rate = trendAt(readings, start, trace);
  if (!rate) {
    return [{ verdict: 'caution', code: 'hours-trend-not-known', names, lift: { code: 'hours-trend-not-known-lift' } }];
  }
  if (rate.value <= 0) return [];
  const turn = turning(readings, start);
  return [
    {
      verdict: 'caution',
      code: 'hours-slab-warming',
      figures: { rate: rate.id },
      names,
      source: 'outgassing-article-2021',
      lift: turn
        ? { code: 'hours-slab-warming-lift-until', names: { at: clock(ctx, turn.epoch) } }
        : { code: 'hours-slab-warming-lift' },
    },
  ];
}

/** Time until which a film may still be marked by the sun: touch dry, else until it may be coated over. */
export function softFor(product: Product): number {
  const times = product.times ?? [];
  const longest = (what: string): number =>
    Math.max(0, ...times.filter((time) => time.what === what).map(({ value }) => value.value * 1000));
  return longest('touch dry') || longest('recoat from') || SOFT;
}

/** Patches of sun on the wet film: the slab under them warms first, and the film skins there before it does beside. */
export function sunReasons(ctx: OptionContext, product: Product, start: number, names: Names): readonly Reason[] {
  const until = start + softFor(product);
  const wanted = new Set(ctx.option.areas);
  return ctx.job.areas
    .filter(({ id }) => wanted.has(id))
    .flatMap((area): readonly Reason[] => {
      const lying = (area.sun ?? []).filter(
        (patch) =>
          (patch.from === undefined || epochOf(patch.from) < until) &&
          (patch.until === undefined || epochOf(patch.until) > start),
      );
      if (lying.length === 0) return [];
      const ends = lying.map((patch) => (patch.until === undefined ? Number.NaN : epochOf(patch.until)));
      const last = Math.max(...ends);
      return [
        {
          verdict: 'caution',
          code: 'hours-sun-on-the-floor',
          names: { ...names, area: area.name },
          lift: Number.isFinite(last)
            ? { code: 'hours-sun-on-the-floor-lift-until', names: { at: clock(ctx, last) } }
            : { code: 'hours-sun-on-the-floor-lift' },
        },
      ];
    });
}
