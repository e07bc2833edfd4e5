import type { Figure, Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact, type OptionContext } from '../context.ts';
import { paidTime } from '../formulas/hours-tasks.ts';
import { assumed } from './assumed.ts';

export interface Paid {
  readonly time: Known<'s'>;
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
}

/** Fewer hours than even a quick crew needs for the work alone: labour in the price would not cover itself. */
function tooFew(paid: Known<'s'>, worked: Figure<'s'>): readonly Reason[] {
  const least = worked.band?.[0] ?? worked.value;
  if (paid.value >= least) return [];
  const figures = { paid: paid.id, worked: worked.id };
  const code = 'hours-paid-below-the-work';
  return [{ verdict: 'caution', code, figures, lift: { code: `${code}-lift` } }];
}

/** Hours paid: the firm's own figure, else what the schedule has hands on site for, else the work and an assumed share for travel, waiting and survey. */
export function paidFor(
  ctx: OptionContext,
  worked: Figure<'s'>,
  trace: Trace,
  scheduled: Figure<'s'> | undefined,
): Paid {
  const own = ctx.option.paidHours;
  if (own) {
    const time = givenFact(trace, 'paid', { ...own, shows: 'work-time' });
    return { time, reasons: tooFew(time, worked), missing: [] };
  }
  if (scheduled) return { time: scheduled, reasons: [], missing: [] };
  const beside = assumed(trace, 'beside', 'beside', '1', 'hours-beside-assumed', 'share');
  const at = ctx.job.options.findIndex(({ id }) => id === ctx.option.id);
  return {
    time: trace.figure('paid', paidTime, { worked, beside }),
    reasons: [],
    missing: [
      {
        path: `options.${at}.paidHours`,
        fact: { code: 'hours-paid-missing' },
        changes: { code: 'hours-paid-changes', figures: { beside: beside.id } },
        meanwhile: 'assumed',
      },
    ],
  };
}
