import type { Product } from '../../catalogue.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact, givenField, type OptionContext, sheetOf } from '../context.ts';
import { below } from './margin.ts';
import { clock, leastOf, type Reading } from './readings.ts';

type SheetTime = NonNullable<Product['times']>[number];

const pointsOf = (product: Product, what: SheetTime['what']): readonly SheetTime[] =>
  (product.times ?? []).filter((time) => time.what === what);

export interface Recoat {
  readonly reasons: readonly Reason[];
  readonly notes: readonly Said[];
}

/** A time of the sheet with what it takes to say it. */
function said(trace: Trace, name: string, product: Product, time: SheetTime) {
  const t = trace.within(name);
  const where = sheetOf(product);
  return {
    time: givenFact(t, 'time', time.value, { where }).id,
    temperature: givenField(t, 'temperature', time.at, 'data sheet', { where }).id,
  };
}

/**
 * Time between two coats against the window of the lower one, start to start, at the temperatures its sheet states and
 * nowhere else. Earlier than its soonest opening or later than its latest closing is said; on a slab colder than the
 * sheet's the opening is a condition, because the film takes longer and how much is not computed here.
 */
export function recoatOf(
  ctx: OptionContext,
  lower: { readonly product: Product; readonly name: string; readonly at: Instant },
  upper: { readonly name: string; readonly at: Instant },
  readings: readonly Reading[],
  trace: Trace,
): Recoat {
  const [laid, over] = [epochOf(lower.at), epochOf(upper.at)];
  const names = { layer: upper.name, lower: lower.name, at: clock(ctx, over) };
  if (over <= laid) {
    const code = 'hours-coats-out-of-order';
    return { reasons: [{ verdict: 'stop', code, names, lift: { code: `${code}-lift` } }], notes: [] };
  }
  const reasons: Reason[] = [];
  const notes: Said[] = [];
  const [opens] = [...pointsOf(lower.product, 'recoat from')].sort((a, b) => a.value.value - b.value.value);
  if (!opens) {
    const code = 'hours-recoat-not-on-sheet';
    reasons.push({ verdict: 'caution', code, names, lift: { code: `${code}-lift`, names } });
  } else {
    const figures = said(trace, 'recoat-from', lower.product, opens);
    const coldest = leastOf(
      readings.filter(({ epoch }) => epoch >= laid && epoch <= over),
      ({ slab }) => slab,
    )?.known;
    if (over - laid < opens.value.value * 1000) {
      const code = 'hours-recoat-too-early';
      reasons.push({ verdict: 'stop', code, figures, names, lift: { code: `${code}-lift` } });
    } else if (coldest && below(coldest.value, opens.at.value)) {
      notes.push({ code: 'hours-recoat-if-as-warm', figures: { ...figures, slab: coldest.id }, names });
    }
  }
  const [closes] = [...pointsOf(lower.product, 'recoat until')].sort((a, b) => b.value.value - a.value.value);
  if (closes && over - laid > closes.value.value * 1000) {
    reasons.push({
      verdict: 'caution',
      code: 'hours-recoat-too-late',
      figures: said(trace, 'recoat-until', lower.product, closes),
      names,
      lift: { code: 'hours-recoat-too-late-lift' },
    });
  }
  return { reasons, notes };
}
