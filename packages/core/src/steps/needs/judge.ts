import type { Product } from '../../catalogue.ts';
import type { ConditionKey, Conditions } from '../../evidence.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Claim, claimOf, type Family, readValue, sameCondition } from '../evidence/index.ts';
import type { Need } from '../results.ts';
import { below } from '../system/limits.ts';
import type { NeededTest } from './rows.ts';

export interface Judged {
  readonly met: Need['met'];
  readonly said: readonly Said[];
  /** Value and limit of one test, where both are numbers that may be held against each other. */
  readonly closest?: NonNullable<Need['closest']>;
}

export interface Limit extends NeededTest {
  readonly leastKnown?: Known;
  readonly mostKnown?: Known;
}

const kebab = (key: string): string => key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** Records the limits of the tests as Givens: from the table of needs, or chosen in the job. */
export function limitsOf(
  family: Family,
  tests: readonly NeededTest[],
  trace: Trace,
  entered: boolean,
): readonly Limit[] {
  return tests.map((test, i): Limit => {
    const method = family.methods.find(({ id }) => id === test.method);
    const known = (name: string, typed: string | undefined): Known | undefined => {
      const read = typed === undefined ? undefined : readValue(typed, method ? [method] : family.methods);
      if (typed === undefined || !read?.ok || read.value.kind !== 'number') return undefined;
      const at = read.value.low ?? read.value.high;
      if (at === undefined) return undefined;
      return trace.given(`test-${i + 1}.${name}`, {
        value: at,
        unit: read.value.unit,
        origin: entered ? 'chosen' : 'table',
        where: test.method,
        typed,
        shows: family.shows,
        ...(test.source ? { source: test.source } : {}),
      });
    };
    const [leastKnown, mostKnown] = [known('least', test.least), known('most', test.most)];
    return { ...test, ...(leastKnown ? { leastKnown } : {}), ...(mostKnown ? { mostKnown } : {}) };
  });
}

/** Best answer of one product's claims: one test that shows it is enough; one that fails counts where none shows it. */
export function judgeProduct(family: Family, product: Product, limits: readonly Limit[], trace: Trace): Judged {
  const claims = (product.properties ?? []).flatMap((property, i): readonly Claim[] => {
    const claim = claimOf(product, property, i);
    return claim?.family.id === family.id ? [claim] : [];
  });
  const names = { product: product.name, property: `@evidence-property-${family.id}` };
  if (claims.length === 0) return { met: 'not known', said: [{ code: 'needs-not-on-sheet', names }] };
  const judged = claims.flatMap((claim) =>
    limits.flatMap((limit): readonly Judged[] => {
      if (claim.method?.id !== limit.method) return [];
      return [judgeClaim(claim, limit, trace.within(`${product.id}.property-${claim.index + 1}`))];
    }),
  );
  const of = (met: Need['met']): readonly Judged[] =>
    judged.filter((one) => one.met === met).sort((a, b) => shareOf(b) - shareOf(a));
  const found = of('met')[0] ?? of('not met')[0] ?? of('not known')[0];
  return found ?? { met: 'not known', said: [{ code: 'needs-other-test', names }] };
}

/** How far a claim lies on the right side of its limit; without a number behind all that have one. */
export function shareOf({ closest }: Pick<Judged, 'closest'>): number {
  if (!closest || closest.limit.value === 0) return Number.NEGATIVE_INFINITY;
  const { claimed, limit, end } = closest;
  return (end === 'least' ? claimed.value - limit.value : limit.value - claimed.value) / limit.value;
}

function judgeClaim(claim: Claim, limit: Limit, trace: Trace): Judged {
  const names = { product: claim.name, property: `@evidence-property-${claim.family.id}`, value: claim.property.value };
  const keys = [
    ...new Set([
      ...(Object.keys(limit.conditions) as ConditionKey[]),
      ...(bare(limit) ? (claim.method?.must ?? []) : []),
    ]),
  ];
  for (const key of keys) {
    const condition = `@evidence-condition-${kebab(key)}`;
    if (claim.conditions[key] === undefined)
      return { met: 'not known', said: [{ code: 'needs-condition-missing', names: { ...names, condition } }] };
    if (differs(limit.conditions, claim.conditions, key))
      return { met: 'not known', said: [{ code: 'needs-condition-differs', names: { ...names, condition } }] };
  }
  if (bare(limit)) return { met: 'met', said: [{ code: 'needs-stated', names: { ...names, method: limit.method } }] };
  return againstLimit(claim, limit, names, trace);
}

const bare = (limit: Limit): boolean => limit.least === undefined && limit.most === undefined;

const differs = (wanted: Conditions, got: Conditions, key: ConditionKey): boolean =>
  wanted[key] !== undefined && !sameCondition(wanted, got, key);

/** A pull-off that broke the glue or the test concrete is a lower bound: it can show a need met, never unmet. */
const onlyBound = ({ method, property }: Claim): boolean =>
  method?.mode === true && property.failureMode !== undefined && /^(?:A|-\/Y|Y|Y\/Z)$/.test(property.failureMode);

function againstLimit(
  claim: Claim,
  { leastKnown, mostKnown }: Limit,
  names: Readonly<Record<string, string>>,
  trace: Trace,
): Judged {
  const { value } = claim;
  const limit = leastKnown ?? mostKnown;
  if (value.kind !== 'number' || !limit || value.unit !== limit.unit)
    return { met: 'not known', said: [{ code: 'needs-other-form', names }] };
  const unmoded = claim.method?.mode === true && claim.property.failureMode === undefined;
  if (unmoded) return { met: 'not known', said: [{ code: 'needs-mode-missing', names }] };
  const low = value.low;
  const high = onlyBound(claim) ? undefined : value.high;
  // The end of a range that lies nearer to the limit is the one that counts.
  const end = leastKnown ? 'least' : 'most';
  const worst = end === 'least' ? (low ?? high) : (high ?? low);
  const shown = trace.given('claimed', {
    value: worst ?? limit.value,
    unit: limit.unit,
    origin: 'data sheet',
    typed: claim.property.value,
    where: claim.sheet,
    shows: claim.family.shows,
  });
  const figures = { claimed: shown.id, limit: limit.id };
  const closest = { claimed: shown, limit, end, product: claim.name } as const;
  const answer = (met: Need['met'], code: string): Judged => ({
    met,
    said: [{ code, figures, names }],
    ...(met === 'not known' ? {} : { closest }),
  });
  if (leastKnown) {
    if (low !== undefined && !below(low, leastKnown.value)) return answer('met', 'needs-met-least');
    if (high !== undefined && below(high, leastKnown.value)) return answer('not met', 'needs-below-least');
    return answer('not known', 'needs-straddles');
  }
  if (high !== undefined && !below(limit.value, high)) return answer('met', 'needs-met-most');
  if (low !== undefined && below(limit.value, low)) return answer('not met', 'needs-above-most');
  return answer('not known', 'needs-straddles');
}
