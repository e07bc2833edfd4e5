import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AnyFormula, evaluateAny, type Range } from '../kernel/formula.ts';
import { FormulaRefused } from '../kernel/refusal.ts';
import { FORMULAS } from './formulas.ts';

const WIDE: Range = [-1e4, 1e4];
const wholeNames = /^(count|sides|phases|riserCount|dryingSides|firstTests|furtherTests)$/;

/** No instrument reads below this; numbers next to zero belong to the hostile test. */
const settled = (value: number): number => (Math.abs(value) < 1e-15 ? 0 : value);

/** One value of an input: within its valid range, at its ends, or where no range is stated anywhere sensible. */
const inside = (f: AnyFormula, name: string): fc.Arbitrary<number> => {
  const [least, most] = f.holds[name] ?? f.refuses?.[name] ?? WIDE;
  const [low, high] = [Math.max(least, -1e15), Math.min(most, 1e15)];
  if (wholeNames.test(name)) return fc.integer({ min: Math.ceil(low), max: Math.floor(Math.min(high, 300)) });
  return fc.oneof(
    { weight: 8, arbitrary: fc.double({ min: low, max: high, noNaN: true }).map(settled) },
    { weight: 1, arbitrary: fc.constantFrom(low, high) },
  );
};

const hostile = fc.oneof(
  fc.double(),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -0, 1e308, -1e308, Number.MIN_VALUE, -1),
);

const inputsOf = (f: AnyFormula, one: (name: string) => fc.Arbitrary<number>) =>
  fc
    .integer({ min: 1, max: 6 })
    .chain((length) =>
      fc.record(
        Object.fromEntries(
          Object.entries(f.takes).map(([name, unit]) => [
            name,
            unit.endsWith('[]') ? fc.array(one(name), { minLength: length, maxLength: length }) : one(name),
          ]),
        ) as Record<string, fc.Arbitrary<number | number[]>>,
      ),
    );

/** The answer, or the code of the refusal; anything else thrown is a mistake and goes up. */
function answer(f: AnyFormula, values: Record<string, number | number[]>): number | readonly number[] | string {
  try {
    return evaluateAny(f, values).value;
  } catch (trouble) {
    if (trouble instanceof FormulaRefused) return trouble.refusal.code;
    throw trouble;
  }
}

describe.each([...FORMULAS.values()].map((f) => [f.id, f] as const))('%s', (_, f) => {
  test('inside its ranges it gives finite numbers, or a refusal with a reason', () => {
    fc.assert(
      fc.property(
        inputsOf(f, (name) => inside(f, name)),
        (values) => {
          const found = answer(f, values);
          if (typeof found === 'string') expect(found).not.toBe('formula-gives-no-number');
          else expect([found].flat().every(Number.isFinite)).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('whatever it is given, it never gives anything but finite numbers', () => {
    fc.assert(
      fc.property(
        inputsOf(f, () => hostile),
        (values) => {
          const found = answer(f, values);
          if (typeof found !== 'string') expect([found].flat().every(Number.isFinite)).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });
});
