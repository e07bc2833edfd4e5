import type { Product } from '../../catalogue.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact, givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import { below } from './margin.ts';
import { clock, leastOf, type Reading } from './readings.ts';

type SheetTime = NonNullable<Product['times']>[number];

export interface Deadlines {
  readonly reasons: readonly Reason[];
  readonly notes: readonly Said[];
}

interface Wanted {
  readonly what: 'foot' | 'vehicle';
  readonly by: Instant;
}

function wantedOf(ctx: OptionContext): readonly Wanted[] {
  const { footBy, vehicleBy } = ctx.job.use ?? {};
  return [
    ...(footBy ? [{ what: 'foot', by: footBy } as const] : []),
    ...(vehicleBy ? [{ what: 'vehicle', by: vehicleBy } as const] : []),
  ];
}

/** The point of the sheet next to the coldest slab read after the start; without a reading the coldest point. */
export function pointFor(points: readonly SheetTime[], slab: number | undefined): SheetTime | undefined {
  const distance = (time: SheetTime): number => (slab === undefined ? time.at.value : Math.abs(time.at.value - slab));
  return [...points].sort((a, b) => distance(a) - distance(b) || b.value.value - a.value.value)[0];
}

/**
 * When the customer needs the floor against the last coat's own times. It is a conditional statement at a temperature
 * the sheet states, counted from the start of the coat; nothing is extrapolated, and a slab colder than that is said.
 */
export function deadlines(ctx: OptionContext, readings: readonly Reading[], trace: Trace): Deadlines {
  const wanted = wantedOf(ctx);
  const layer = ctx.system.layers.at(-1);
  if (wanted.length === 0 || !layer) return { reasons: [], notes: [] };
  const product = productOf(ctx, layer);
  const name = layer.name ?? product.name;
  const start = ctx.option.starts?.find((one) => one.layer === layer.id)?.at;
  const reasons: Reason[] = [];
  const notes: Said[] = [];
  for (const { what, by } of wanted) {
    const wish = { layer: name, by: clock(ctx, epochOf(by)), use: `@hours-use-${what}` };
    if (!start) {
      notes.push({ code: 'hours-deadline-no-start', names: wish });
      continue;
    }
    const begun = epochOf(start);
    const coldest = leastOf(
      readings.filter(({ epoch }) => epoch >= begun),
      ({ slab }) => slab,
    )?.known;
    const point = pointFor(
      (product.times ?? []).filter((time) => time.what === what),
      coldest?.value,
    );
    if (!point) {
      notes.push({ code: 'hours-deadline-not-on-sheet', names: wish });
      continue;
    }
    const t = trace.within('deadline').within(what);
    const where = sheetOf(product);
    const time = givenFact(t, 'time', point.value, { where });
    const temperature = givenField(t, 'temperature', point.at, 'data sheet', { where });
    const ready = begun + time.value * 1000;
    const figures = { time: time.id, temperature: temperature.id };
    const names = { ...wish, ready: clock(ctx, ready) };
    if (ready > epochOf(by)) {
      const code = 'hours-deadline-missed';
      reasons.push({ verdict: 'caution', code, figures, names, source: time.id, lift: { code: `${code}-lift` } });
    } else if (coldest && below(coldest.value, point.at.value)) {
      notes.push({ code: 'hours-deadline-if-as-warm', figures: { ...figures, slab: coldest.id }, names });
    } else notes.push({ code: 'hours-deadline-met', figures, names });
  }
  return { reasons, notes };
}
