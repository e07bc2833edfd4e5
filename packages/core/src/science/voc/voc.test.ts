import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { coatingVoc, materialVoc, mostThinner, vocPerSolids } from './index.ts';

const pound = 0.45359237;
const gallon = 231 * 0.0254 ** 3;

/** Grams and litres in, g/L out. */
function both(parts: {
  volatile: number;
  water?: number;
  exempt?: number;
  litres: number;
  waterLitres?: number;
  exemptLitres?: number;
}) {
  const masses = {
    volatileMass: parts.volatile / 1000,
    waterMass: (parts.water ?? 0) / 1000,
    exemptMass: (parts.exempt ?? 0) / 1000,
    coatingVolume: parts.litres / 1000,
  };
  const volumes = { waterVolume: (parts.waterLitres ?? 0) / 1000, exemptVolume: (parts.exemptLitres ?? 0) / 1000 };
  return [evaluate(coatingVoc, { ...masses, ...volumes }).value, evaluate(materialVoc, masses).value] as const;
}

describe('coating and material figures (own arithmetic)', () => {
  test('a waterborne coating: 120 less water, 60 as it stands', () => {
    const [coating, material] = both({ volatile: 560, water: 500, litres: 1, waterLitres: 0.5 });
    expect(coating).toBeCloseTo(120, 9);
    expect(material).toBeCloseTo(60, 9);
  });

  test('exempt thinner moves only the material figure, any other thinner both', () => {
    const [coating, material] = both({ volatile: 2400 + 791, exempt: 791, litres: 11, exemptLitres: 1 });
    expect(coating).toBeCloseTo(240, 9);
    expect(material).toBeCloseTo(218.18, 2);
    const [thinned, thinnedMaterial] = both({ volatile: 2400 + 864, litres: 11 });
    expect(thinned).toBeCloseTo(296.73, 2);
    expect(thinnedMaterial).toBe(thinned);
  });

  test('two parts, then two thinners', () => {
    const [mixed] = both({ volatile: 8 * 250 + 4 * 40, litres: 12 });
    expect(mixed).toBeCloseTo(180, 9);
    const volatile = 2160 + 0.6 * 882 + 0.4 * 791;
    const [coating, material] = both({ volatile, exempt: 0.4 * 791, litres: 13, exemptLitres: 0.4 });
    expect(coating).toBeCloseTo(213.43, 2);
    expect(material).toBeCloseTo(206.86, 2);
  });

  test('water and exempt solvent may neither fill the coating nor outweigh what evaporates', () => {
    expect(() => both({ volatile: 500, water: 500, litres: 0.5, waterLitres: 0.5 })).toThrow(/fill-the-coating/);
    expect(() => both({ volatile: 400, water: 500, litres: 1, waterLitres: 0.5 })).toThrow(/above-volatile/);
    expect(both({ volatile: 500, water: 500, litres: 1, waterLitres: 0.5 })[0]).toBe(0);
  });
});

test('per solids by the Texas rule: 3.5 lb a gallon is 6.674 lb a gallon of solids', () => {
  // Formula READ; the number is own arithmetic.
  const perGallon = pound / gallon;
  const value = evaluate(vocPerSolids, { coatingVoc: 3.5 * perGallon, solventDensity: 7.36 * perGallon }).value;
  expect(value / perGallon).toBeCloseTo(6.674, 3);
  expect(7.36 * perGallon).toBeCloseTo(vocPerSolids.defaults?.solventDensity as number, 2);
  expect(() => evaluate(vocPerSolids, { coatingVoc: 900, solventDensity: 881.92 })).toThrow(/voc-not-below/);
});

describe('the most thinner', () => {
  test('5 gal holding 15.9 lb, thinner 6.4 lb a gallon, limit 3.5 lb a gallon: 0.55 gal', () => {
    // READ: organic finishing guidebook 2013, ±0.005 gal; and half a gallon gives 3.47 lb a gallon.
    const density = pound / gallon;
    const input = { vocMass: 15.9 * pound, netVolume: 5 * gallon, thinnerDensity: 6.4 * density, limit: 3.5 * density };
    expect(Math.abs(evaluate(mostThinner, input).value / gallon - 0.55)).toBeLessThan(0.005);
    const half = evaluate(coatingVoc, {
      volatileMass: (15.9 + 3.2) * pound,
      waterMass: 0,
      exemptMass: 0,
      coatingVolume: 5.5 * gallon,
      waterVolume: 0,
      exemptVolume: 0,
    });
    expect(Math.abs(half.value / density - 3.47)).toBeLessThan(0.005);
  });

  test('fed back it lands on the limit', () => {
    // Own arithmetic: 1.1401 L.
    const most = evaluate(mostThinner, { vocMass: 1.8, netVolume: 0.01, thinnerDensity: 864, limit: 250 }).value;
    expect(most * 1000).toBeCloseTo(1.1401, 4);
    expect(both({ volatile: 1800 + most * 1000 * 864, litres: 10 + most * 1000 })[0]).toBeCloseTo(250, 9);
  });

  test('over the limit already: none, and the VOC is flagged; at the limit none and no flag', () => {
    const input = { netVolume: 0.01, thinnerDensity: 864, limit: 250 };
    expect(evaluate(mostThinner, { ...input, vocMass: 2.51 })).toEqual({ value: 0, outside: ['vocMass'] });
    expect(evaluate(mostThinner, { ...input, vocMass: 2.5 })).toEqual({ value: 0, outside: [] });
  });

  test('a thinner no denser than the limit never reaches it: refused', () => {
    const input = { vocMass: 1, netVolume: 0.01, thinnerDensity: 700 };
    expect(() => evaluate(mostThinner, { ...input, limit: 700 })).toThrow(/limit-not-below-thinner-density/);
    expect(evaluate(mostThinner, { ...input, limit: 699 }).value).toBeGreaterThan(0);
    expect(() => evaluate(mostThinner, { ...input, limit: -1 })).toThrow(FormulaRefused);
  });
});
