import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import {
  chanceConcreteFirst,
  pullOffStress,
  TENSILE_RIVALS,
  tensileFromCompressive,
  weakestLink,
  weakestLinkIndex,
} from './index.ts';

const strength = fc.double({ min: 5e5, max: 1e7, noNaN: true });
const deviation = fc.double({ min: 1e4, max: 1e6, noNaN: true });
const link = fc.record({ mean: strength, deviation });
const chance = (links: readonly { mean: number; deviation: number }[]) =>
  evaluate(chanceConcreteFirst, {
    strengths: links.map((l) => l.mean),
    deviations: links.map((l) => l.deviation),
  }).value;

test('twice the dolly at four times the force is the same stress', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 2e4, noNaN: true }),
      fc.double({ min: 0.02, max: 0.05, noNaN: true }),
      (force, dollyDiameter) => {
        const one = evaluate(pullOffStress, { force, dollyDiameter }).value;
        expect(evaluate(pullOffStress, { force: 4 * force, dollyDiameter: 2 * dollyDiameter }).value / one).toBeCloseTo(
          1,
          12,
        );
      },
    ),
  );
});

test('stronger concrete never has less tension, by any rival but at the European break, and the median lies among them', () => {
  const compressive = fc.double({ min: 12e6, max: 85e6, noNaN: true });
  fc.assert(
    fc.property(compressive, fc.double({ min: 1e5, max: 5e6, noNaN: true }), (compressiveStrength, more) => {
      for (const rival of TENSILE_RIVALS) {
        const here = evaluate(rival, { compressiveStrength }).value;
        const there = evaluate(rival, { compressiveStrength: compressiveStrength + more }).value;
        // EN 1992 joins its branches with a step down of 0.008 MPa at C50.
        expect(there).toBeGreaterThan(here - 0.01e6);
      }
      const all = TENSILE_RIVALS.map((rival) => evaluate(rival, { compressiveStrength }).value);
      const median = evaluate(tensileFromCompressive, { compressiveStrength }).value;
      expect(median).toBeGreaterThanOrEqual(Math.min(...all));
      expect(median).toBeLessThanOrEqual(Math.max(...all));
    }),
  );
});

describe('weakest link', () => {
  test('is the lowest mean, under the index beside it', () => {
    fc.assert(
      fc.property(fc.array(link, { minLength: 1, maxLength: 6 }), (links) => {
        const input = { strengths: links.map((l) => l.mean), deviations: links.map((l) => l.deviation) };
        const value = evaluate(weakestLink, input).value;
        expect(value).toBe(Math.min(...input.strengths));
        expect(input.strengths[evaluate(weakestLinkIndex, input).value]).toBe(value);
      }),
    );
  });

  test('of equal means is the concrete', () => {
    const input = { strengths: [2e6, 2e6, 3e6], deviations: [1e5, 1e5, 1e5] };
    expect(evaluate(weakestLinkIndex, input).value).toBe(0);
    expect(() => evaluate(weakestLink, { strengths: [], deviations: [] })).toThrow(/no-links/);
  });
});

describe('chance that the concrete parts first', () => {
  test('two equal links: even; known points of the normal distribution', () => {
    expect(
      chance([
        { mean: 2e6, deviation: 3e5 },
        { mean: 2e6, deviation: 4e5 },
      ]),
    ).toBeCloseTo(0.5, 12);
    // Φ(1) and Φ(2) of every table of the normal distribution (from memory).
    expect(
      chance([
        { mean: 2e6, deviation: 3e5 },
        { mean: 2.5e6, deviation: 4e5 },
      ]),
    ).toBeCloseTo(0.8413447, 7);
    expect(
      chance([
        { mean: 2e6, deviation: 3e5 },
        { mean: 3e6, deviation: 4e5 },
      ]),
    ).toBeCloseTo(0.9772499, 7);
  });

  test('three equal links: a third each', () => {
    const equal = { mean: 2e6, deviation: 3e5 };
    expect(chance([equal, equal, equal])).toBeCloseTo(1 / 3, 9);
  });

  test('the integral agrees with the closed form when the third link cannot fail', () => {
    const never = { mean: 9e9, deviation: 1e3 };
    fc.assert(
      fc.property(link, link, (concrete, other) => {
        expect(chance([concrete, other, never])).toBeCloseTo(chance([concrete, other]), 8);
      }),
    );
  });

  test('the chances of all links to be first sum to one', () => {
    fc.assert(
      fc.property(link, link, link, fc.double({ min: 1e4, max: 5e5, noNaN: true }), (a, b, c, s) => {
        const [x, y, z] = [a, { ...b, deviation: s }, c];
        expect(chance([x, y, z]) + chance([y, z, x]) + chance([z, x, y])).toBeCloseTo(1, 7);
      }),
    );
  });

  test('links without spread: certain, split, or refused where nothing can tell', () => {
    const sure = (mean: number) => ({ mean, deviation: 0 });
    expect(chance([sure(1e6), sure(2e6)])).toBe(1);
    expect(chance([sure(2e6), sure(1e6)])).toBe(0);
    expect(chance([sure(2e6), { mean: 2e6, deviation: 1e5 }])).toBeCloseTo(0.5, 12);
    expect(chance([{ mean: 2e6, deviation: 1e5 }, sure(2e6), sure(3e6)])).toBeCloseTo(0.5, 9);
    expect(() => chance([sure(2e6), sure(2e6)])).toThrow(/equal-links-without-spread/);
    expect(() => chance([sure(2e6)])).toThrow(/fewer-than-two-links/);
  });

  test('a stronger coating never lowers it', () => {
    fc.assert(
      fc.property(link, link, link, fc.double({ min: 1e5, max: 2e6, noNaN: true }), (a, b, c, more) => {
        expect(chance([a, { ...b, mean: b.mean + more }, c])).toBeGreaterThanOrEqual(chance([a, b, c]) - 1e-8);
      }),
    );
  });
});
