import type { Layer } from '../../catalogue.ts';
import type { Figure } from '../../kernel/entry.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { type OptionContext, productOf, sheetOf } from '../context.ts';
import type { HoursPlan } from '../results.ts';
import { marginLimit, marginReasons } from './margin.ts';
import { nightOf } from './night.ts';
import { around, clock, leastOf, type Reading } from './readings.ts';
import { recoatOf } from './recoat.ts';
import { limitReasons, sheetLimits } from './sheet-limits.ts';
import { sunReasons, warmingReasons } from './warming.ts';

export interface Gated {
  readonly gate: HoursPlan['gates'][number];
  readonly notes: readonly Said[];
}

const startOf = (ctx: OptionContext, layer: Layer | undefined): Instant | undefined =>
  layer && ctx.option.starts?.find((one) => one.layer === layer.id)?.at;

const nameOf = (ctx: OptionContext, layer: Layer): string => layer.name ?? productOf(ctx, layer).name;

/** What a reading decides: margin, limits of the sheet, night. */
function byReadings(
  ctx: OptionContext,
  layer: Layer,
  readings: readonly Reading[],
  start: number,
  trace: Trace,
): { readonly reasons: readonly Reason[]; readonly margin?: Figure<'K'> } {
  const product = productOf(ctx, layer);
  const names = { layer: nameOf(ctx, layer) };
  const near = around(readings, start);
  const stated = Object.keys(product.climate ?? {}).length > 0;
  const silent: readonly Reason[] = stated
    ? []
    : [
        {
          verdict: 'not known',
          code: 'hours-sheet-silent',
          names: { ...names, sheet: sheetOf(product) },
          lift: { code: 'hours-sheet-silent-lift', names: { sheet: sheetOf(product) } },
        },
      ];
  if (near.length === 0) {
    const at = clock(ctx, start);
    const lift = { code: 'hours-no-reading-lift', names: { at } };
    return { reasons: [...silent, { verdict: 'not known', code: 'hours-no-reading', names: { ...names, at }, lift }] };
  }
  const limit = marginLimit(trace, product);
  const limits = sheetLimits(trace, product);
  const night = nightOf(ctx, readings, product, start, names);
  // The reading just after the start belongs to the start, not to the night.
  const cure = night.readings.filter((one) => !near.includes(one));
  const lowest = leastOf([...near, ...cure], ({ margin }) => margin)?.known as Figure<'K'> | undefined;
  return {
    reasons: [
      ...silent,
      ...marginReasons(ctx, 'start', near, limit, names),
      ...limitReasons(ctx, 'start', near, limits, names),
      ...marginReasons(ctx, 'night', cure, limit, names),
      ...limitReasons(ctx, 'night', cure, limits, names),
      ...night.reasons,
    ],
    ...(lowest ? { margin: lowest } : {}),
  };
}

/**
 * Gate of one coat on the readings given: margin above the dew point at the start and until foot traffic (`margin` is
 * the least of them), limits of the sheet, a slab that warms under a coat on concrete, sun, and the coat below. What
 * nobody has read stays not known.
 */
export function gateOf(
  ctx: OptionContext,
  layer: Layer,
  below: Layer | undefined,
  readings: readonly Reading[],
  root: Trace,
): Gated {
  const trace = root.within('gate').within(layer.id);
  const at = startOf(ctx, layer);
  const names = { layer: nameOf(ctx, layer) };
  if (!at) {
    const lift = { code: 'hours-no-start-lift', names };
    const verdict = verdictOf([{ verdict: 'not known', code: 'hours-no-start', names, lift }]);
    return { gate: { layer: layer.id, verdict }, notes: [] };
  }
  const start = epochOf(at);
  const { reasons, margin } = byReadings(ctx, layer, readings, start, trace);
  const lower = startOf(ctx, below);
  const recoat =
    below && lower
      ? recoatOf(
          ctx,
          { product: productOf(ctx, below), name: nameOf(ctx, below), at: lower },
          { name: names.layer, at },
          readings,
          trace,
        )
      : { reasons: [], notes: [] };
  const all: readonly Reason[] = [
    ...reasons,
    ...(layer.onConcrete ? warmingReasons(ctx, readings, start, trace, names) : []),
    ...sunReasons(ctx, productOf(ctx, layer), start, names),
    ...recoat.reasons,
  ];
  const verdict = verdictOf(all, ctx.job.overrides);
  return { gate: { layer: layer.id, at, verdict, ...(margin ? { margin } : {}) }, notes: recoat.notes };
}
