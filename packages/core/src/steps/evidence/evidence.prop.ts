import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ConditionKey, Property } from '../../evidence.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { convert, parseAny, parseQuantity } from '../../units/index.ts';
import { catalogueOf } from '../testing/small-job.ts';
import { type Claim, claimsOf, FAMILIES, judge, pairOf } from './index.ts';

/** Values a condition may take, a few of each so that equal and unequal ones both come up. */
const SETTINGS: Partial<Record<ConditionKey, readonly (string | number)[]>> = {
  specimen: ['type I', 'type IV', 'cube'],
  thickness: ['3.2 mm', '1 mm', '6 mm'],
  speed: ['50 mm/min', '5 mm/min', '2 in/min'],
  stressRate: ['0.2 MPa/s', '1 MPa/s'],
  temperature: ['23 °C', '73 °F', '40 °C'],
  age: ['7 d', '1 week', '28 d'],
  filled: ['filled', 'neat'],
  scale: ['A', 'D'],
  dwell: ['1 s', '15 s'],
  wheel: ['CS-17', 'cs 17', 'CS-10'],
  load: ['1000 g', '1 kg', '500 g'],
  cycles: [500, 1000],
  density: ['1.1 kg/L', '1.3 kg/L'],
  substrate: ['steel', 'concrete'],
  substrateStrength: ['35 MPa', '5000 psi', '20 MPa'],
  dolly: ['50 mm', '20 mm'],
  scored: ['scored', 'not scored'],
  span: ['50 mm', '100 mm'],
  ball: ['16 mm', '20 mm'],
  face: ['direct', 'reverse'],
  state: ['wet', 'dry'],
  device: ['sled', 'arm'],
  slider: ['96', '55'],
};
const KEYS = Object.keys(SETTINGS) as readonly ConditionKey[];

const VALUES: Readonly<Record<string, readonly string[]>> = {
  'tensile-strength': ['40 MPa', '2600 psi', '30 to 35 MPa', 'at least 20 MPa'],
  wear: ['40 mg', '60 mg', '36 mm³'],
  adhesion: ['3.0 MPa', '490 psi', '> 2 MPa'],
  hardness: ['70', '65 to 75'],
  impact: ['160 in lbf', '20 N m'],
  slip: ['0.5', '0.55', '1'],
};

type Typed = {
  readonly what: string;
  readonly method?: string;
  readonly value: string;
  readonly conditions: Readonly<Record<string, string | number>>;
  readonly failureMode?: NonNullable<Property['failureMode']>;
};

const typedClaim = (family: string): fc.Arbitrary<Typed> =>
  fc
    .record({
      method: fc.option(fc.constantFrom(...methodsOf(family)), { nil: undefined }),
      value: fc.constantFrom(...(VALUES[family] ?? [])),
      mode: fc.option(fc.constantFrom('A', 'A/B', 'B', 'Y'), { nil: undefined }),
      settings: fc.tuple(
        ...KEYS.map((key) => fc.option(fc.constantFrom(...(SETTINGS[key] ?? [])), { nil: undefined, freq: 6 })),
      ),
    })
    .map(({ method, value, mode, settings }) => ({
      what: family,
      ...(method ? { method } : {}),
      value,
      conditions: Object.fromEntries(
        KEYS.flatMap((key, i) => {
          const setting = settings[i];
          return setting === undefined ? [] : [[key, setting]];
        }),
      ),
      ...(mode ? { failureMode: mode as 'A' } : {}),
    }));

/** Methods that give numbers, so that every value above can be read. */
const methodsOf = (family: string): readonly string[] =>
  (FAMILIES.find(({ id }) => id === family)?.methods ?? [])
    .filter(({ id, units }) => units && id !== 'EN 13892-4')
    .map(({ id }) => id);

const claimPair = fc
  .constantFrom(...Object.keys(VALUES))
  .chain((family) => fc.tuple(typedClaim(family), typedClaim(family)));

function claimOfTyped(typed: Typed, id = 'resin', trace = new Trace(new Ledger())): Claim {
  const catalogue = catalogueOf((draft) => {
    const [product] = draft.products;
    if (!product) throw new Error('no product');
    product.id = id;
    product.name = id;
    product.properties = [typed as never];
    for (const system of draft.systems) for (const layer of system.layers) layer.product = id;
  });
  const [claim] = claimsOf(catalogue.products[0] as never, trace);
  if (!claim) throw new Error(`cannot be read: ${JSON.stringify(typed)}`);
  return claim;
}

/** The same number in another unit of its kind, with all its digits; ranges and bounds end by end. */
function otherUnit(text: string): string {
  const units: Readonly<Record<string, readonly [string, string]>> = {
    Pa: ['psi', 'kPa'],
    kg: ['g', 'lb'],
    'm³': ['mL', 'in³'],
    m: ['in', 'µm'],
    'm/s': ['in/min', 'm/s'],
    s: ['h', 'min'],
    '°C': ['°F', '°C'],
    'Pa/s': ['psi/s', 'kPa/s'],
    'kg/m³': ['lb/gal', 'g/L'],
    'N m': ['ft lbf', 'N m'],
  };
  const parsed = parseAny(text);
  if (!parsed.ok || parsed.quantity.unit === '1') return text;
  const { value, unit, typedUnit } = parsed.quantity;
  const to = units[unit]?.find((name) => name !== typedUnit);
  return to === undefined ? text : `${convert(value, unit, to)} ${to}`;
}

const inOtherUnits = (typed: Typed): Typed => ({
  ...typed,
  conditions: Object.fromEntries(
    Object.entries(typed.conditions).map(([key, value]) => [key, typeof value === 'string' ? otherUnit(value) : value]),
  ),
  value: /^[\d.]+ \D+$/.test(typed.value) && !typed.value.includes(' to ') ? otherUnit(typed.value) : typed.value,
});

test('the unit a condition or a value is written in changes no verdict', () => {
  fc.assert(
    fc.property(claimPair, ([a, b]) => {
      const plain = judge(claimOfTyped(a), claimOfTyped(b));
      const other = judge(claimOfTyped(inOtherUnits(a)), claimOfTyped(b));
      expect(other.verdict).toBe(plain.verdict);
      expect(other.reasons.map(({ code }) => code)).toEqual(plain.reasons.map(({ code }) => code));
    }),
  );
});

test('the order of the two changes no verdict and no reason, and turns the outcome round', () => {
  const TURNED: Readonly<Record<string, string>> = { higher: 'lower', lower: 'higher' };
  fc.assert(
    fc.property(claimPair, ([a, b]) => {
      const [x, y] = [claimOfTyped(a, 'one'), claimOfTyped(b, 'two')];
      const there = pairOf(x, y, new Trace(new Ledger()));
      const back = pairOf(y, x, new Trace(new Ledger()));
      expect(back.verdict).toBe(there.verdict);
      const codes = (reasons: typeof there.reasons) => reasons.map(({ code }) => code).sort();
      expect(codes(back.reasons)).toEqual(codes(there.reasons));
      expect(back.outcome).toBe(TURNED[there.outcome ?? ''] ?? there.outcome);
      expect(back.difference?.value).toBe(there.difference?.value);
    }),
  );
});

test('stating one more condition never makes two claims comparable that were not', () => {
  fc.assert(
    fc.property(claimPair, fc.constantFrom(...KEYS), fc.nat(), ([a, b], key, pick) => {
      const settings = SETTINGS[key] ?? [];
      const before = judge(claimOfTyped(a), claimOfTyped(b));
      if (a.conditions[key] !== undefined) return;
      const stated = { ...a, conditions: { ...a.conditions, [key]: settings[pick % settings.length] as string } };
      const after = judge(claimOfTyped(stated), claimOfTyped(b));
      if (before.verdict === 'not comparable') expect(after.verdict).toBe('not comparable');
      // A gap closes only when both sheets state it; density alone turns one sheet's mass into the other's volume.
      if (before.verdict === 'unknown' && after.verdict === 'comparable' && key !== 'density')
        expect(b.conditions[key]).toBeDefined();
    }),
  );
});

test('leaving out a condition the method asks for is never equal, not even to the same sheet', () => {
  fc.assert(
    fc.property(claimPair, ([a]) => {
      const claim = claimOfTyped(a);
      const missing = (claim.method?.must ?? []).some((key) => claim.conditions[key] === undefined);
      if (missing) expect(judge(claim, claim).verdict).not.toBe('comparable');
    }),
  );
});

test('a comparable difference is the plain difference of the values, and never below zero', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 1, max: 9000 }), (first, second) => {
      const conditions = { span: '50 mm', thickness: '3 mm', age: '7 d' };
      const of = (psi: number): Typed => ({
        what: 'flexural strength',
        method: 'ASTM D790',
        value: `${psi} psi`,
        conditions,
      });
      const pair = pairOf(claimOfTyped(of(first), 'one'), claimOfTyped(of(second), 'two'), new Trace(new Ledger()));
      expect(pair.verdict).toBe('comparable');
      if (Math.abs(first - second) <= 1) return;
      const apart = parseQuantity(`${Math.abs(first - second)} psi`, 'Pa');
      if (!apart.ok) throw new Error('psi is a stress');
      expect(pair.difference?.value).toBeCloseTo(apart.quantity.value, 3);
      expect(pair.outcome).toBe(second > first ? 'higher' : 'lower');
    }),
  );
});
