import type { Product } from '../../catalogue.ts';
import ranges from '../../data/usual-ranges.json' with { type: 'json' };
import type { Given } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { parseAny } from '../../units/index.ts';
import { nearestId } from '../check/near.ts';
import { above, below } from '../system/limits.ts';
import { type Claim, claimOf } from './claim.ts';
import { FAMILIES, familyOf } from './methods.ts';

interface Usual {
  readonly family: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly leastText: string;
  readonly mostText: string;
}

function end(typed: string): { readonly value: number; readonly unit: string } {
  const parsed = parseAny(typed);
  if (!parsed.ok) throw new Error(`a usual range does not parse: ${typed}`);
  return parsed.quantity;
}

const USUAL: readonly Usual[] = ranges.rows.map(({ family, least, most }) => {
  const [low, high] = [end(least), end(most)];
  return { family, unit: low.unit, least: low.value, most: high.value, leastText: least, mostText: most };
});

const LIFETIME = /life ?time|for ?ever|never (?:peels?|fails?)/i;
const TIMES = /\b\d+(?:\.\d+)?\s*(?:×|x|times)(?!\w)/i;

/**
 * What on a sheet deserves a second look: numbers far outside what such films show, and claims that leave out what
 * makes them mean anything. None of it refuses the product.
 */
export function doubtsOf(product: Product, claims: readonly Claim[], trace: Trace): readonly Said[] {
  const properties = product.properties ?? [];
  if (properties.length === 0) return [{ code: 'evidence-doubt-sheet-empty', names: { product: product.name } }];
  const undated: readonly Said[] = product.sheet.date
    ? []
    : [{ code: 'evidence-doubt-undated', names: { product: product.name, sheet: product.sheet.name } }];
  return [
    ...undated,
    ...properties.flatMap((property, index): readonly Said[] => {
      const names = { product: product.name, what: property.what, value: property.value };
      if (LIFETIME.test(property.what) || LIFETIME.test(property.value))
        return [{ code: 'evidence-doubt-lifetime', names }];
      if (TIMES.test(property.value)) return [{ code: 'evidence-doubt-times', names }];
      if (!familyOf(property.what)) {
        const known = FAMILIES.map(({ id }) => id.replaceAll('-', ' '));
        return [{ code: 'evidence-doubt-property', names: { ...names, nearest: nearestId(property.what, known) } }];
      }
      const claim = claims.find((one) => one.index === index);
      if (!claim) {
        // A value that cannot be read is an issue of its own; without its check it is at least named.
        return claimOf(product, property, index) ? [] : [{ code: 'evidence-doubt-unreadable', names }];
      }
      return claimDoubts(claim, trace.within(`${product.id}.property-${index + 1}`));
    }),
  ];
}

function claimDoubts(claim: Claim, trace: Trace): readonly Said[] {
  const { family, property, method, value, typedMethod } = claim;
  const names = { product: claim.name, property: `@evidence-property-${family.id}`, value: property.value };
  const said: Said[] = [];
  if (typedMethod === undefined && family.methods.length > 0) said.push({ code: 'evidence-doubt-no-method', names });
  if (typedMethod !== undefined && !method && family.methods.length > 0) {
    const nearest = nearestId(
      typedMethod,
      family.methods.map(({ id }) => id),
    );
    said.push({ code: 'evidence-doubt-method', names: { ...names, method: typedMethod, nearest } });
  }
  if (method?.mode && property.failureMode === undefined) said.push({ code: 'evidence-doubt-no-mode', names });
  if (method?.metal) said.push({ code: 'evidence-doubt-metal', names: { ...names, method: method.id } });
  if (value.kind === 'number' && value.unit === 'kg') said.push({ code: 'evidence-doubt-mass', names });
  const far = farOutside(claim, trace);
  return far ? [...said, far] : said;
}

/** Ten times outside the usual range, either end: a slip of the unit, another property, or salesmanship. */
function farOutside({ family, value, name, property }: Claim, trace: Trace): Said | undefined {
  if (value.kind !== 'number') return undefined;
  const usual = USUAL.find((row) => row.family === family.id && row.unit === value.unit);
  if (!usual) return undefined;
  const [low, high] = [value.low ?? value.high ?? 0, value.high ?? value.low ?? 0];
  if (!above(high, usual.most * ranges.far) && !below(low, usual.least / ranges.far)) return undefined;
  const given = (id: string, at: number, typed: string): Given =>
    trace.given(id, {
      value: at,
      unit: value.unit,
      origin: 'assumed',
      typed,
      source: ranges.source,
      shows: family.shows,
    });
  const least = given('usual-least', usual.least, usual.leastText);
  const most = given('usual-most', usual.most, usual.mostText);
  return {
    code: 'evidence-doubt-far-outside',
    figures: { least: least.id, most: most.id },
    names: { product: name, property: `@evidence-property-${family.id}`, value: property.value },
  };
}
