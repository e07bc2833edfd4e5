import type { Product } from '../../catalogue.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact, givenField, type OptionContext, sheetOf } from '../context.ts';
import { clock } from './readings.ts';

type SheetTime = NonNullable<Product['times']>[number];

const pointsOf = (product: Product, what: SheetTime['what']): readonly SheetTime[] =>
  (product.times ?? []).filter((time) => time.what === what);

/** The time of the sheet that is tightest, with what it takes to say it. */
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
 * nowhere else. Earlier than its soonest opening or later than its latest closing is said; between points of the sheet
 * nothing is computed here.
 */
export function recoatReasons(
  ctx: OptionContext,
  lower: { readonly product: Product; readonly name: string; readonly at: Instant },
  upper: { readonly name: string; readonly at: Instant },
  trace: Trace,
): readonly Reason[] {
  const gap = epochOf(upper.at) - epochOf(lower.at);
  const names = { layer: upper.name, lower: lower.name, at: clock(ctx, epochOf(upper.at)) };
  if (gap <= 0) {
    const code = 'hours-coats-out-of-order';
    return [{ verdict: 'stop', code, names, lift: { code: 'hours-coats-out-of-order-lift' } }];
  }
  const reasons: Reason[] = [];
  const [opens] = [...pointsOf(lower.product, 'recoat from')].sort((a, b) => a.value.value - b.value.value);
  if (opens && gap < opens.value.value * 1000) {
    reasons.push({
      verdict: 'stop',
      code: 'hours-recoat-too-early',
      figures: said(trace, 'recoat-from', lower.product, opens),
      names,
      lift: { code: 'hours-recoat-too-early-lift' },
    });
  }
  const [closes] = [...pointsOf(lower.product, 'recoat until')].sort((a, b) => b.value.value - a.value.value);
  if (closes && gap > closes.value.value * 1000) {
    reasons.push({
      verdict: 'caution',
      code: 'hours-recoat-too-late',
      figures: said(trace, 'recoat-until', lower.product, closes),
      names,
      lift: { code: 'hours-recoat-too-late-lift' },
    });
  }
  return reasons;
}
