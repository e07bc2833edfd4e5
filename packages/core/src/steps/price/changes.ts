import type { Figure } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { Per, PriceBook } from '../../price-book.ts';
import type { OptionContext } from '../context.ts';
import { amountLeftOver } from '../formulas/price-parts.ts';
import type { PricePlan } from '../results.ts';
import { givenAmount, type Measure, priced } from './amounts.ts';
import type { Measures } from './measures.ts';

type Change = NonNullable<PriceBook['changes']>[number];

export interface Changes {
  readonly changes: PricePlan['changes'];
  readonly reasons: readonly Reason[];
  readonly notes: readonly Said[];
}

/** A change over the whole floor is priced for the floor; of the rest nobody knows how much: one unit is priced. */
const OVER_THE_FLOOR: ReadonlySet<Per> = new Set(['m²', 'ft²']);

const measureOf = (measures: Measures, per: Per): Measure | undefined =>
  OVER_THE_FLOOR.has(per) ? measures.of(per) : { quantity: measures.one(per), per: measures.one(per) };

/** Changes priced beforehand, so that a signature before the work is a matter of minutes. */
export function changesOf(
  trace: Trace,
  ctx: OptionContext,
  book: PriceBook,
  measures: Measures,
  now: { readonly price: Figure<'money'>; readonly cost: Figure<'money'> } | undefined,
): Changes {
  const changes: PricePlan['changes'][number][] = [];
  const reasons: Reason[] = [];
  const notes: Said[] = [];
  for (const id of new Set(ctx.option.changes ?? [])) {
    const change: Change | undefined = book.changes?.find((c) => c.id === id);
    const measure = change && measureOf(measures, change.per);
    if (!change || !measure) {
      reasons.push({
        verdict: 'caution',
        code: change ? 'price-change-without-measure' : 'price-change-missing',
        names: { change: change?.name ?? id },
        lift: { code: change ? 'price-line-without-measure-lift' : 'price-change-missing-lift' },
      });
      continue;
    }
    const t = trace.within('change');
    const rate = givenAmount(t, `${id}.each`, change.amount, book);
    const amount = priced(t, id, measure, rate);
    const deducts = change.deducts ?? false;
    changes.push({ id, name: change.name, amount, deducts, ...(change.trigger ? { trigger: change.trigger } : {}) });
    if (change.per !== 'job' && !OVER_THE_FLOOR.has(change.per)) {
      notes.push({
        code: 'price-change-per-unit',
        figures: { amount: amount.id },
        names: { change: change.name, per: change.per },
      });
    }
    if (!deducts || !now) continue;
    const after = t.figure(`${id}.after`, amountLeftOver, { amount: now.price, parts: [amount] });
    if (after.value < now.cost.value) {
      reasons.push({
        verdict: 'caution',
        code: 'price-change-below-cost',
        figures: { after: after.id, cost: now.cost.id },
        names: { change: change.name },
        lift: { code: 'price-change-below-cost-lift' },
      });
    }
  }
  return { changes, reasons: [...reasons, ...together(trace, changes, now)], notes };
}

/** Each deduction may be small enough and all of them together too much. */
function together(
  trace: Trace,
  changes: PricePlan['changes'],
  now: { readonly price: Figure<'money'>; readonly cost: Figure<'money'> } | undefined,
): readonly Reason[] {
  const parts = changes.filter(({ deducts }) => deducts).map(({ amount }) => amount);
  if (!now || parts.length < 2) return [];
  const after = trace.figure('after-all-deductions', amountLeftOver, { amount: now.price, parts });
  if (after.value >= now.cost.value) return [];
  return [
    {
      verdict: 'caution',
      code: 'price-deductions-below-cost',
      figures: { after: after.id, cost: now.cost.id },
      lift: { code: 'price-change-below-cost-lift' },
    },
  ];
}
