import type { Job } from '../../job.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import { type Family, familyOf, methodOf } from '../evidence/index.ts';
import type { Need, NeedsPlan } from '../results.ts';
import { type Judged, judgeProduct, type Limit, limitsOf, shareOf } from './judge.ts';
import { chemicalNeeds, lightNeeds, otherNeeds } from './other.ts';
import { type NeededTest, type NeedRow, type On, productsOn, rowsFor } from './rows.ts';

type Use = NonNullable<Job['use']>;
type Entered = NonNullable<Use['needs']>[number];

/**
 * The use of the floor as must-haves, each with reason, test and source, held against the sheets of this option. What
 * the job states itself replaces what follows from the use.
 */
export function needs(ctx: OptionContext, trace: Trace): NeedsPlan {
  const use: Use = ctx.job.use ?? {};
  const entered = use.needs ?? [];
  const replaced = new Set(entered.map(({ what }) => familyOf(what)?.id ?? what));
  const derived = [
    ...rowsFor(use).map((row) => fromRow(ctx, row, trace.within(row.id))),
    ...chemicalNeeds(ctx),
    ...lightNeeds(ctx),
    ...otherNeeds(ctx, trace),
  ].filter(({ what }) => !replaced.has(what));
  const own = entered.flatMap((need, i) => fromEntered(ctx, need, `entered-${i + 1}`, trace));
  const all = [...derived, ...own];
  return {
    needs: all,
    verdict: verdictOf(all.flatMap(reasonOf), ctx.job.overrides),
    missing: useMissing(use),
    notes: [
      ...all.flatMap(notShown),
      ...entered
        .filter(({ waived }) => waived)
        .map(({ what, why }): Said => ({ code: 'needs-waived', names: { property: nameOf(what), why } })),
    ],
  };
}

const nameOf = (what: string): string => {
  const family = familyOf(what);
  return family ? `@evidence-property-${family.id}` : `@needs-what-${what}`;
};

const ON: Readonly<Record<string, On>> = { adhesion: 'concrete', voc: 'all', solids: 'all' };

function fromRow(ctx: OptionContext, row: NeedRow, trace: Trace): Need {
  const family = familyOf(row.what);
  if (!family) throw new Error(`the table of needs names no property: ${row.what}`);
  return built(ctx, family, row.tests, row.on, trace, {
    id: row.id,
    from: 'use',
    why: { code: row.why },
    ...(row.tests[0]?.source ? { source: row.tests[0].source } : {}),
  });
}

/** `checkJob` has refused a property that does not exist and a value that is none of it. */
function fromEntered(ctx: OptionContext, entered: Entered, id: string, trace: Trace): readonly Need[] {
  const family = familyOf(entered.what);
  if (!family || entered.waived) return [];
  const named = entered.method === undefined ? undefined : methodOf(family, entered.method).method;
  const methods = entered.method === undefined ? family.methods.map(({ id: m }) => m) : [named?.id ?? entered.method];
  const end = family.better === 'lower' ? 'most' : 'least';
  const tests = methods.map(
    (method): NeededTest => ({ method, conditions: {}, ...(entered.least ? { [end]: entered.least } : {}) }),
  );
  const why: Said = { code: 'needs-why-entered', names: { why: entered.why } };
  return [built(ctx, family, tests, ON[family.id] ?? 'top', trace.within(id), { id, from: 'entered', why })];
}

function built(
  ctx: OptionContext,
  family: Family,
  tests: readonly NeededTest[],
  on: On,
  trace: Trace,
  head: Pick<Need, 'id' | 'from' | 'why' | 'source'>,
): Need {
  const limits = limitsOf(family, tests, trace, head.from === 'entered');
  const judged = productsOn(ctx, on).map((product) => judgeProduct(family, product, limits, trace));
  return {
    ...head,
    what: family.id,
    tests: limits.map(testOf),
    met: worstOf(judged),
    judged: judged.flatMap(({ said }) => said),
    ...closestOf(judged),
  };
}

/** The product nearest to its limit; nothing while one of those asked shows no number that may be held against it. */
function closestOf(judged: readonly Judged[]): Pick<Need, 'closest'> {
  const [first, ...rest] = judged;
  if (!first?.closest || rest.some(({ closest }) => !closest)) return {};
  const nearest = rest.reduce((near, one) => (shareOf(one) < shareOf(near) ? one : near), first);
  return nearest.closest ? { closest: nearest.closest } : {};
}

/** All products asked must show it. */
function worstOf(judged: readonly Judged[]): Need['met'] {
  if (judged.some(({ met }) => met === 'not met')) return 'not met';
  return judged.length > 0 && judged.every(({ met }) => met === 'met') ? 'met' : 'not known';
}

const testOf = (limit: Limit): Need['tests'][number] => ({
  method: limit.method,
  ...(limit.leastKnown ? { least: limit.leastKnown } : {}),
  ...(limit.mostKnown ? { most: limit.mostKnown } : {}),
  conditions: Object.entries(limit.conditions).map(
    ([key, value]): Said => ({
      code: 'needs-condition',
      names: {
        condition: `@evidence-condition-${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
        value: typeof value === 'object' ? value.typed : `${value}`,
      },
    }),
  ),
});

/**
 * A must-have that a sheet fails: a stop where the job itself states it, with care where it only follows from the use.
 * Light is judged with the system, layer by layer, and is not said twice.
 */
function reasonOf({ what, met, from, judged }: Need): readonly Reason[] {
  if (met !== 'not met' || what === 'light') return [];
  const lift: Said = { code: 'needs-lift-not-met', names: { property: nameOf(what) } };
  return judged.map((said) => ({ ...said, verdict: from === 'entered' ? 'stop' : 'caution', lift }));
}

/** What no sheet shows keeps nothing from being laid, but it is said: with it the choice would be better founded. */
function notShown({ what, met, judged }: Need): readonly Said[] {
  if (met !== 'not known') return [];
  return [...judged, { code: 'needs-ask', names: { property: nameOf(what) } }];
}

/** Parts of the use that nobody stated, each with what it would decide; hot tyres only where cars may stand. */
function useMissing(use: Use): readonly Missing[] {
  const driven = use.traffic === undefined || use.traffic === 'vehicle';
  const asked = ['traffic', ...(driven ? (['hotTyres'] as const) : []), 'water', 'sun', 'slip'] as const;
  return asked
    .filter((key) => use[key] === undefined || use[key] === 'not known')
    .map((key) => ({
      path: `use.${key}`,
      fact: { code: `needs-use-${key.toLowerCase()}-missing` },
      changes: { code: `needs-use-${key.toLowerCase()}-changes` },
      meanwhile: 'assumed',
    }));
}
