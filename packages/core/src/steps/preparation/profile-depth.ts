import { tabled } from '../../data/tabled.ts';
import table from '../../data/void-depth-prior.json' with { type: 'json' };
import type { Area } from '../../drawing.ts';
import { causeFromBand } from '../../kernel/band.ts';
import type { Known } from '../../kernel/entry.ts';
import { pathText } from '../../kernel/issue.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext } from '../context.ts';
import type { PreparationPlan } from '../results.ts';

export interface Depths {
  readonly depths: Readonly<Record<string, Known<'m'>>>;
  readonly missing: readonly Missing[];
}

const rowOf = (profile: number) => table.rows.find((row) => row.class === profile);

/** The classes the floor has or will have: read by comparator, else the target. */
function classes(ctx: OptionContext, target: PreparationPlan['target']): readonly [number, number] {
  const read = (ctx.job.survey.afterPreparation?.profiles ?? []).map(({ profile }) => profile);
  return read.length > 0 ? [Math.min(...read), Math.max(...read)] : [target.least.value, target.most.value];
}

function assumed(trace: Trace, [least, most]: readonly [number, number]): Known<'m'> | undefined {
  const [low, high] = [rowOf(least), rowOf(most)];
  if (!low || !high) return undefined;
  const band = [tabled(low.low, 'm'), tabled(high.high, 'm')] as const;
  return trace.given('depth', {
    value: (band[0] + band[1]) / 2,
    unit: 'm',
    origin: 'assumed',
    source: table.source,
    where: least === most ? `CSP ${least}` : `CSP ${least}–${most}`,
    says: 'preparation-assumed-void-depth',
    band,
    // One guess for all floors of the job: where it is wrong, it is wrong the same way.
    causes: causeFromBand('profile', band),
    shows: 'film',
  });
}

/** Mean void depth by area for the profile fill: measured, else the assumed depth of its class with a wide band. */
export function profileDepths(
  ctx: OptionContext,
  trace: Trace,
  areas: readonly Area[],
  target: PreparationPlan['target'],
): Depths {
  const range = classes(ctx, target);
  const depths: Record<string, Known<'m'>> = {};
  const missing: Missing[] = [];
  for (const area of areas) {
    const t = trace.within(`profile.${area.id}`);
    const depth = area.profileDepth ? givenFact(t, 'depth', area.profileDepth) : assumed(t, range);
    if (depth) depths[area.id] = depth;
    if (!area.profileDepth) {
      missing.push({
        path: pathText(['areas', ctx.job.areas.indexOf(area), 'profileDepth']),
        fact: { code: 'preparation-missing-void-depth', names: { area: area.name } },
        changes: depth
          ? { code: 'preparation-missing-void-depth-changes', figures: { depth: depth.id } }
          : { code: 'preparation-void-depth-unknown-changes' },
        meanwhile: depth ? 'assumed' : 'held',
      });
    }
  }
  return { depths, missing };
}
