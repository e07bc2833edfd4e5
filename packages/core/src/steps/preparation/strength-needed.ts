import table from '../../data/acceptance.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { singleFromMean } from '../formulas/preparation.ts';

export interface StrengthNeeded {
  readonly mean: Given<'Pa'>;
  readonly single: Known<'Pa'>;
  /** True where a sheet states both: then a single pull between the two is what it allows. */
  readonly bothStated: boolean;
}

/** Ids of the acceptance rows that a use of the floor calls for. An unstated use is taken as severe. */
export function rowsForUse(traffic: string | undefined): readonly string[] {
  const service = traffic === 'foot' || traffic === 'light' || traffic === 'vehicle' ? 'light' : 'severe';
  return table.rows.filter((row) => row.service === service || row.service === 'any').map(({ id }) => id);
}

/**
 * Tensile strength wanted of the prepared concrete: the most a sheet of the system asks, else the strictest row of
 * the acceptance table. What a single pull may show is two thirds of the mean, from memory of resin floor guides.
 */
export function strengthNeeded(ctx: OptionContext, trace: Trace): StrengthNeeded {
  const asked = ctx.system.layers
    .flatMap((layer) => {
      const product = productOf(ctx, layer);
      return product.bondNeed ? [{ need: product.bondNeed, least: product.bondLeast, where: sheetOf(product) }] : [];
    })
    .sort((a, b) => b.need.value - a.need.value)[0];
  const fromTable = (): Given<'Pa'> => {
    const wanted = rowsForUse(ctx.job.use?.traffic);
    const rows = table.rows
      .filter(({ id }) => wanted.includes(id))
      .sort((a, b) => tabled(b.mean, 'Pa') - tabled(a.mean, 'Pa'));
    const row = rows[0];
    if (!row) throw new Error('the acceptance table has no row for any use');
    return trace.given('strength.mean', {
      value: tabled(row.mean, 'Pa'),
      unit: 'Pa',
      origin: 'table',
      typed: row.mean,
      source: row.source,
      shows: 'stress',
    });
  };
  const mean = asked ? givenFact(trace, 'strength.mean', asked.need, { where: asked.where }) : fromTable();
  if (asked?.least) {
    const single = givenFact(trace, 'strength.single', asked.least, { where: asked.where });
    return { mean, single, bothStated: true };
  }
  const share = trace.given('strength.single-share', {
    value: table.singleShare.value,
    unit: '1',
    origin: 'table',
    source: table.singleShare.source,
    shows: 'share',
  });
  return { mean, single: trace.figure('strength.single', singleFromMean, { mean, share }), bothStated: false };
}
