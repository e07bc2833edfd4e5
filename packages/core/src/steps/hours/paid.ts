import type { Figure, Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext } from '../context.ts';
import { paidTime } from '../formulas/hours-tasks.ts';
import { assumed } from './assumed.ts';

export interface Paid {
  readonly time: Known<'s'>;
  readonly missing: readonly Missing[];
}

/** Hours paid: the firm's own figure, else the work and an assumed share for travel, waiting and survey. */
export function paidFor(ctx: OptionContext, worked: Figure<'s'>, trace: Trace): Paid {
  const own = ctx.option.paidHours;
  if (own) return { time: givenFact(trace, 'paid', { ...own, shows: 'work-time' }), missing: [] };
  const beside = assumed(trace, 'beside', 'beside', '1', 'hours-beside-assumed', 'share');
  const at = ctx.job.options.findIndex(({ id }) => id === ctx.option.id);
  return {
    time: trace.figure('paid', paidTime, { worked, beside }),
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
