import type { Product } from '../../catalogue.ts';
import type { ConditionKey, Conditions, Property } from '../../evidence.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { wornVolume } from '../../science/surface/index.ts';
import { sheetOf } from '../context.ts';
import { type Family, familyOf, type Method, methodOf, plain } from './methods.ts';
import { type ClaimValue, readValue } from './value.ts';

/** One claim of one sheet, read against the table of methods. */
export interface Claim {
  readonly product: string;
  readonly name: string;
  readonly sheet: string;
  /** Place among the properties of its product. */
  readonly index: number;
  readonly family: Family;
  readonly property: Property;
  /** Method as typed. */
  readonly typedMethod?: string;
  /** Its row of the table; none where it is not named or has no row. */
  readonly method?: Method;
  readonly edition?: string;
  readonly conditions: Conditions;
  readonly value: ClaimValue;
  /** Both ends, or one of a bound; the same number twice for a single value. */
  readonly low?: Known;
  readonly high?: Known;
}

/** Claims of a product that can be read; what cannot is an issue of `checkCatalogue`, or a flag. */
export function claimsOf(product: Product, trace: Trace): readonly Claim[] {
  return (product.properties ?? []).flatMap((property, index): readonly Claim[] => {
    const claim = claimOf(product, property, index);
    return claim ? [withNumbers(claim, trace.within(`${product.id}.property-${index + 1}`))] : [];
  });
}

/** A claim without its entries; nothing for a property the table does not know or a value that cannot be read. */
export function claimOf(product: Product, property: Property, index: number): Claim | undefined {
  const family = familyOf(property.what);
  if (!family) return undefined;
  const named = property.method === undefined ? {} : methodOf(family, property.method);
  const read = readValue(property.value, named.method ? [named.method] : family.methods);
  if (!read.ok) return undefined;
  return {
    product: product.id,
    name: product.name,
    sheet: sheetOf(product),
    index,
    family,
    property,
    ...(property.method === undefined ? {} : { typedMethod: property.method }),
    ...named,
    conditions: property.conditions ?? {},
    value: read.value,
  };
}

/** Records the ends of the value. A worn mass becomes a volume where the density of the film stands beside it. */
function withNumbers(claim: Claim, trace: Trace): Claim {
  const { value, property, family } = claim;
  if (value.kind !== 'number') return claim;
  const end = (name: string, at: number | undefined): Known | undefined =>
    at === undefined
      ? undefined
      : trace.given(name, {
          value: at,
          unit: value.unit,
          origin: 'data sheet',
          typed: property.value,
          where: claim.sheet,
          shows: family.shows,
        });
  const single = value.low !== undefined && value.low === value.high;
  const low = end(single ? 'value' : 'low', value.low);
  const high = single ? low : end('high', value.high);
  const numbers = { ...(low ? { low } : {}), ...(high ? { high } : {}) };
  const density = claim.conditions.density;
  if (value.unit !== 'kg' || family.shows !== 'wear' || !density) return { ...claim, ...numbers };
  const known = trace.given('density', {
    value: density.value,
    unit: 'kg/m³',
    origin: 'data sheet',
    typed: density.typed,
    where: claim.sheet,
    shows: 'density',
  });
  const volume = (name: string, mass: Known | undefined): Known | undefined =>
    mass && trace.figure(name, wornVolume, { massLoss: { ...mass, unit: 'kg' }, density: known });
  const volumeLow = volume(single ? 'volume' : 'volume-low', low);
  const volumeHigh = single ? volumeLow : volume('volume-high', high);
  const litres = (at: number | undefined): number | undefined => (at === undefined ? undefined : at / density.value);
  const [from, to] = [litres(value.low), litres(value.high)];
  return {
    ...claim,
    value: {
      kind: 'number',
      unit: 'm³',
      step: value.step / density.value,
      ...(from === undefined ? {} : { low: from }),
      ...(to === undefined ? {} : { high: to }),
    },
    ...(volumeLow ? { low: volumeLow } : {}),
    ...(volumeHigh ? { high: volumeHigh } : {}),
  };
}

/** What a claim is about besides its property: the reagent of a chemical test. */
export const settingOf = ({ family, conditions }: Claim): string => {
  const setting = family.setting && conditions[family.setting];
  return setting === undefined ? '' : plain(typeof setting === 'object' ? setting.typed : `${setting}`);
};

/** A condition as the sheet writes it. */
export function conditionText(conditions: Conditions, key: ConditionKey): string | undefined {
  const found = conditions[key];
  return found === undefined ? undefined : typeof found === 'object' ? found.typed : `${found}`;
}

/** Metric and inch spellings of one setting lie up to 1.6 % apart (2 in is 50.8 mm, where the metric text has 50). */
const SHARE = 0.02;
const KELVIN = 0.5;

/** Whether two settings are equal; words without case, blanks and dashes. */
export function sameCondition(a: Conditions, b: Conditions, key: ConditionKey): boolean {
  const [first, second] = [a[key], b[key]];
  if (first === undefined || second === undefined) return false;
  if (typeof first === 'object' && typeof second === 'object') {
    const apart = Math.abs(first.value - second.value);
    if (first.unit === '°C') return apart <= KELVIN;
    return apart <= SHARE * Math.max(Math.abs(first.value), Math.abs(second.value)) + 1e-12;
  }
  return plain(`${first}`) === plain(`${second}`);
}
