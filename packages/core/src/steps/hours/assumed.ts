import { tabled } from '../../data/tabled.ts';
import table from '../../data/work-rates.json' with { type: 'json' };
import { causeFromBand } from '../../kernel/band.ts';
import type { Given } from '../../kernel/entry.ts';
import type { Shows } from '../../kernel/shows.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';

type Name = keyof typeof table.assumed;

/** A value assumed where nobody gave one, with its band, its place in the table and the sentence that owns up to it. */
export function assumed<U extends Unit>(
  trace: Trace,
  id: string,
  name: Name,
  unit: U,
  says: string,
  shows: Shows,
): Given<U> {
  const row: { typical: string; low?: string; high?: string; source: string; locator: string } = table.assumed[name];
  const band =
    row.low !== undefined && row.high !== undefined
      ? ([tabled(row.low, unit), tabled(row.high, unit)] as const)
      : undefined;
  return trace.given<U>(id, {
    value: tabled(row.typical, unit),
    unit,
    origin: 'assumed',
    typed: row.typical,
    where: row.locator,
    source: row.source,
    says,
    shows,
    ...(band ? { band, causes: causeFromBand(trace.idOf(id), band) } : {}),
  });
}
