import type { Figure } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { pricePerArea, priceShare, priceTotal } from '../../science/price/index.ts';
import { givenFact, type OptionContext } from '../context.ts';
import type { HoursPlan, PriceLine, PricePlan, QuantitiesPlan, SurveyPlan } from '../results.ts';
import { budgetNote } from './budget.ts';
import { changesOf } from './changes.ts';
import { bookLines, labourLine } from './direct-lines.ts';
import { leftOut } from './left-out.ts';
import { materialLines } from './material.ts';
import { Measures } from './measures.ts';
import { placeRules } from './place-rules.ts';
import { priceOf } from './shares.ts';

/** The crew's phone has no price book: every other step is there, this one says so. */
const withoutBook = (): PricePlan => ({
  verdict: verdictOf([
    { verdict: 'not known', code: 'price-no-price-book', lift: { code: 'price-no-price-book-lift' } },
  ]),
  missing: [],
  notes: [],
  lines: [],
  changes: [],
});

/** A wage or a pack at nought may be meant (the customer brings it), or it is a price nobody entered. */
const atNought = (lines: readonly PriceLine[]): readonly Reason[] =>
  lines
    .filter(({ kind, rate, quantity }) => kind !== 'contingency' && rate.value === 0 && quantity.value > 0)
    .map(({ name }) => ({
      verdict: 'caution',
      code: 'price-line-at-nought',
      names: { line: name },
      lift: { code: 'price-line-at-nought-lift', names: { line: name } },
    }));

/** Contingency as a line of its own: a share of the direct cost. */
function contingencyLine(trace: Trace, ctx: OptionContext, direct: Figure<'money'>): PriceLine | undefined {
  const stated = ctx.option.contingency;
  if (!stated || stated.value === 0) return undefined;
  const share = givenFact(trace, 'contingency-share', stated, { where: ctx.option.name });
  const amount = trace.figure('contingency', priceShare, { amount: direct, share });
  return { id: 'contingency', kind: 'contingency', name: '@price-contingency', quantity: share, rate: direct, amount };
}

/**
 * Price of one option. `direct` is the sum of the printed cost lines before contingency; direct, contingency,
 * overhead, profit and the residue of their rounding make up the price. Without a price book, or with one bought pack
 * that has no price, there is no number at all: a sum that leaves something out would be believed.
 */
export function price(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  quantified: QuantitiesPlan,
  timed: HoursPlan,
  trace: Trace,
): PricePlan {
  const book = ctx.priceBook;
  if (!book) return withoutBook();
  const measures = new Measures(ctx, surveyed, quantified, timed, trace);
  const material = materialLines(trace, book, quantified.buying, measures);
  const others = bookLines(trace, book, measures);
  const lines = [...material.lines, labourLine(trace, book, measures), ...others.lines];
  const reasons: Reason[] = [...leftOut(ctx, surveyed, quantified, timed), ...material.reasons, ...others.reasons];
  const base = { missing: [], currency: book.currency };
  if (reasons.length > 0) {
    const { changes, reasons: about, notes } = changesOf(trace, ctx, book, measures, undefined);
    return { ...base, verdict: verdictOf([...reasons, ...about]), notes, lines, changes };
  }

  const direct = trace.figure('direct', priceTotal, { lines: lines.map(({ amount }) => amount) });
  const contingency = contingencyLine(trace, ctx, direct);
  const cost = contingency ? trace.figure('cost', priceTotal, { lines: [direct, contingency.amount] }) : direct;
  const all = contingency ? [...lines, contingency] : lines;
  const answer = priceOf(trace, book, cost);
  if ('verdict' in answer) {
    const { changes, reasons: about, notes } = changesOf(trace, ctx, book, measures, undefined);
    return { ...base, verdict: verdictOf([answer, ...about]), notes, lines: all, direct, changes };
  }

  const {
    changes,
    reasons: about,
    notes: ofChanges,
  } = changesOf(trace, ctx, book, measures, {
    price: answer.price,
    cost,
  });
  const rules = placeRules(trace, ctx, book, all, answer.price);
  const floor = measures.floor();
  const notes: Said[] = [
    ...answer.notes,
    ...rules.notes,
    ...ofChanges,
    ...budgetNote(trace, ctx, book, rules.total ?? answer.price),
    ...(book.validFor ? [{ code: 'price-valid-for', names: { time: book.validFor.typed } }] : []),
  ];
  return {
    ...base,
    verdict: verdictOf([...atNought(all), ...about]),
    missing: rules.missing,
    notes,
    lines: all,
    direct,
    price: answer.price,
    ...(floor ? { perArea: trace.figure('per-area', pricePerArea, { price: answer.price, area: floor }) } : {}),
    overhead: answer.overhead,
    profit: answer.profit,
    ...(rules.tax ? { tax: rules.tax } : {}),
    ...(rules.total ? { total: rules.total } : {}),
    ...(rules.deposit ? { deposit: rules.deposit } : {}),
    changes,
  };
}
