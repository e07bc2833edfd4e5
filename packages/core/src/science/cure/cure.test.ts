import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { activationEnergy, equivalentAge, rateFactor, rateFactorAt } from './arrhenius.ts';
import { solventDiffusionTime } from './film.ts';
import { cureLaw, logTimeAt, speaksAt, timeAt } from './law.ts';
import { materialTemperature } from './material.ts';
import { milestonesOf, potLife, productCure } from './milestones.ts';
import { humidityPower, humidityRatioToSheet, inMoistAir, LABORATORY_AIR } from './moisture.ts';
import { milestoneAt } from './progress.ts';

const HOUR = 3600;
const MINUTE = 60;
const near = (ours: number, want: number, tolerance: number): void =>
  expect(Math.abs(ours - want)).toBeLessThanOrEqual(tolerance);

// Rows CU and SF of reference/physics: computed apart from this code.
describe('equivalent age', () => {
  test('CU-1 the factor between 10 and 20 °C at 50 kJ/mol', () => {
    near(evaluate(rateFactor, { activationEnergy: 50_000, temperature: 10, reference: 20 }).value, 0.4846, 0.001);
  });

  test('CU-2 energies that double the rate over 10 K', () => {
    for (const [from, want] of [
      [10, 47.84],
      [15, 49.51],
      [20, 51.22],
    ] as const) {
      const { value } = evaluate(activationEnergy, {
        firstTemperature: from,
        firstTime: 2 * HOUR,
        secondTemperature: from + 10,
        secondTime: HOUR,
      });
      near(value / 1000, want, 0.05);
    }
  });

  test('CU-5 four stretches of temperature', () => {
    const hours = [...Array(4).fill(10), ...Array(4).fill(15), ...Array(8).fill(20), ...Array(8).fill(12)] as number[];
    near(equivalentAge(55_000, 20, hours, HOUR) / HOUR, 16.755, 0.02);
  });

  test('CU-6 a day of 18 ± 5 °C', () => {
    const minutes = Array.from(
      { length: 1440 },
      (_, i) => 18 + 5 * Math.sin((2 * Math.PI * ((i + 0.5) / 60 - 11)) / 24),
    );
    near(equivalentAge(55_000, 20, minutes, MINUTE) / HOUR, 21.271, 0.02);
    near(rateFactorAt(55_000, 18, 20) * 24, 20.554, 0.02);
  });

  test('CU-7 the hour of the start decides when 12 h at 20 °C are done', () => {
    const law = { ...cureLaw([{ temperature: 20, time: 12 * HOUR }], 'film'), energy: 55_000, range: [0, 40] as const };
    const temperature = Array.from(
      { length: 4 * 288 },
      (_, i) => 14 + 6 * Math.sin((2 * Math.PI * (i / 12 - 11)) / 24),
    );
    const history = { from: 0, spacing: 300, temperature, deviation: temperature.map(() => 0) };
    for (const [start, want] of [
      [15, 18.94],
      [8, 15.33],
    ] as const) {
      const reached = milestoneAt(law, history, start * HOUR * 1000);
      near(((reached?.at as number) / 1000 - start * HOUR) / HOUR, want, 0.05);
    }
  });

  test('CU-8 the maturity formula of concrete: Q 5000 K, 273 for 0 °C', () => {
    // The source takes 273, not 273.15: the temperatures are moved by 0.15 K so that the kelvins are its own.
    for (const [celsius, want] of [
      [0, 0.2865],
      [10, 0.5472],
      [30, 1.7563],
      [40, 2.9755],
    ] as const) {
      near(rateFactorAt(5000 * 8.31446261815324, celsius - 0.15, 20 - 0.15), want, 0.001);
    }
  });

  test('SF-4 diffusion time', () => {
    near(evaluate(solventDiffusionTime, { film: 100e-6, diffusivity: 1e-13 }).value / HOUR, 27.8, 0.1);
    near(evaluate(solventDiffusionTime, { film: 250e-6, diffusivity: 1e-13 }).value / HOUR, 173.6, 0.1);
  });
});

describe('law out of a sheet', () => {
  const three = cureLaw(
    [
      { temperature: 10, time: 36 * HOUR },
      { temperature: 20, time: 16 * HOUR },
      { temperature: 30, time: 8 * HOUR },
    ],
    'film',
  );

  test('CU-3 three points', () => {
    near(three.energy / 1000, 53.7, 0.27);
    near((timeAt(three, 15)?.time as number) / HOUR, 23.98, 0.12);
    near((timeAt(three, 25)?.time as number) / HOUR, 11.31, 0.06);
    expect(three.kind).toBe('fitted');
    expect(three.worstResidual).toBeLessThanOrEqual(0.022);
  });

  test('CU-4 exact doubling is not exactly Arrhenius', () => {
    const law = cureLaw(
      [10, 20, 30].map((temperature, i) => ({ temperature, time: 3600 / 2 ** i })),
      'pail',
    );
    near(law.energy / 1000, 49.45, 0.25);
    expect(law.worstResidual).toBeLessThanOrEqual(0.016);
  });

  test('speaks up to 5 K beyond its points and never below the least temperature of the sheet', () => {
    expect(speaksAt(three, 5)).toBe(true);
    expect(speaksAt(three, 4.9)).toBe(false);
    expect(speaksAt(three, 35)).toBe(true);
    expect(speaksAt(three, 35.1)).toBe(false);
    expect(timeAt(three, 40)).toBeUndefined();
    const held = cureLaw(three.points, 'film', { least: 10 });
    expect(speaksAt(held, 9.9)).toBe(false);
  });

  test('one point: an assumed energy, wide, by place', () => {
    const pail = cureLaw([{ temperature: 20, time: 30 * MINUTE }], 'pail', { least: 8, most: 30 });
    expect(pail.kind).toBe('assumed energy');
    expect(pail.cautions).toContain('cure-energy-assumed');
    // 60-40 kJ/mol between 20 and 10 °C: factor 0.419 to 0.560 (computed apart).
    near(Math.exp(logTimeAt(pail, 20) - logTimeAt(pail, 10, 1)), 0.419, 0.001);
    near(Math.exp(logTimeAt(pail, 20) - logTimeAt(pail, 10, -1)), 0.56, 0.001);
    expect(timeAt(pail, 7)).toBeUndefined();
    const film = cureLaw([{ temperature: 20, time: HOUR }], 'film');
    expect([film.energy, film.energyDeviation]).toEqual([35_000, 15_000]);
  });

  test('points of no plausible energy are only interpolated, with caution', () => {
    const flat = cureLaw(
      [
        { temperature: 10, time: 40 * MINUTE },
        { temperature: 30, time: 35 * MINUTE },
      ],
      'pail',
    );
    expect(flat.kind).toBe('interpolated');
    expect(flat.cautions).toContain('cure-energy-implausible');
    expect(timeAt(flat, 9)).toBeUndefined();
    const middle = timeAt(flat, 20)?.time as number;
    expect(middle).toBeGreaterThan(35 * MINUTE);
    expect(middle).toBeLessThan(40 * MINUTE);
    const crooked = cureLaw(
      [
        { temperature: 10, time: 24 * HOUR },
        { temperature: 20, time: 20 * HOUR },
        { temperature: 30, time: 6 * HOUR },
      ],
      'film',
    );
    expect(crooked.cautions).toContain('cure-sheet-not-one-law');
    near((timeAt(crooked, 20)?.time as number) / HOUR, 20, 1e-9);
  });

  test('bad sheets are refused', () => {
    expect(() => cureLaw([], 'pail')).toThrow(RangeError);
    expect(() => cureLaw([{ temperature: 20, time: 0 }], 'pail')).toThrow(RangeError);
    expect(() =>
      cureLaw(
        [
          { temperature: 20, time: 9 },
          { temperature: 20, time: 8 },
        ],
        'pail',
      ),
    ).toThrow(RangeError);
  });
});

describe('milestones on a slab', () => {
  const cure = productCure({
    pail: [
      { temperature: 20, time: 30 * MINUTE },
      { temperature: 30, time: 15 * MINUTE },
    ],
    film: {
      touch: [
        { temperature: 10, time: 12 * HOUR },
        { temperature: 20, time: 6 * HOUR },
      ],
      'recoat closes': [
        { temperature: 10, time: 72 * HOUR },
        { temperature: 20, time: 36 * HOUR },
      ],
      vehicle: [{ temperature: 20, time: 72 * HOUR }],
    },
    limits: { least: 8, most: 30 },
  });
  const steady = (celsius: number, deviation: number) => {
    const temperature = Array.from({ length: 3 * 288 }, () => celsius);
    return { from: 0, spacing: 300, temperature, deviation: temperature.map(() => deviation) };
  };

  test('a steady slab gives the sheet’s own times back', () => {
    const reached = milestonesOf(cure, steady(20, 0), 0);
    const touch = reached.find((each) => each.name === 'touch');
    near((touch?.at as number) / 1000 / HOUR, 6, 0.01);
    expect(reached.map((each) => each.name)).toEqual(['touch', 'recoat closes', 'vehicle']);
  });

  test('a recoat limit uses the short bound, return to service the long one', () => {
    const reached = milestonesOf(cure, steady(20, 1), 0);
    const closes = reached.find((each) => each.name === 'recoat closes');
    const vehicle = reached.find((each) => each.name === 'vehicle');
    expect(closes?.governing).toBe(closes?.low);
    expect(vehicle?.governing).toBe(vehicle?.high);
    expect(closes?.low as number).toBeLessThan(closes?.at as number);
    expect(vehicle?.high as number).toBeGreaterThan(vehicle?.at as number);
    expect(vehicle?.cautions).toContain('cure-energy-assumed');
  });

  test('below the least temperature the long side never arrives, and the caution is said', () => {
    const [touch] = milestonesOf(cure, steady(5, 0.5), 0);
    expect(touch?.high).toBeUndefined();
    expect(touch?.governing).toBeUndefined();
    expect(touch?.cautions).toContain('cure-outside-sheet-temperatures');
  });

  test('what lies beyond the weather says so', () => {
    const [, closes] = milestonesOf(cure, steady(10, 0), 86_400_000);
    expect(closes?.cautions).toContain('cure-beyond-weather');
  });

  test('pot life goes by the material’s temperature', () => {
    near((potLife(cure, 20, 0)?.time as number) / MINUTE, 30, 1e-9);
    expect(potLife(cure, 25, 1)?.low as number).toBeLessThan(potLife(cure, 25, 0)?.low as number);
    expect(potLife(cure, 40, 0)).toBeUndefined();
    expect(potLife(productCure({ pail: [], film: {}, limits: {} }), 20, 0)).toBeUndefined();
  });
});

describe('moisture', () => {
  const open = { time: 1800, low: 1500, high: 2200, cautions: [] };

  test('more water than the sheet’s shrinks the lower bound only', () => {
    // 50 % at 10 and 20 °C hold 0.0038 and 0.0073 (computed apart): nearly twice.
    const ratio = humidityRatioToSheet(
      { temperature: 20, relativeHumidity: 0.5 },
      { temperature: 10, relativeHumidity: 0.5 },
      101325,
    );
    near(ratio, 0.0073 / 0.0038, 0.05);
    const moist = inMoistAir(open, ratio, undefined);
    expect(moist.time).toBe(1800);
    expect(moist.high).toBe(2200);
    near(moist.low, 1500 / ratio, 1e-9);
    expect(moist.cautions).toContain('cure-humidity-above-sheet');
    expect(inMoistAir(open, 0.7, undefined).low).toBe(1500);
  });

  test('two humidity points on the sheet move all of it', () => {
    const dry = { ...LABORATORY_AIR, relativeHumidity: 0.3, time: 3600 };
    const power = humidityPower([dry, { ...LABORATORY_AIR, relativeHumidity: 0.6, time: 1800 }], 101325);
    near(power, 1, 0.02);
    near(inMoistAir(open, 2, power).time, 900, 15);
    expect(humidityPower([dry], 101325)).toBe(0);
    expect(() => humidityPower([dry, dry], 101325)).toThrow(RangeError);
  });
});

describe('material in its pail', () => {
  const pail = { volume: 0.02, density: 1100, heatCapacity: 1800, filmCoefficient: 8 };
  const at = (storedTemperature: number, airTemperature: number, time: number): number =>
    evaluate(materialTemperature, { ...pail, storedTemperature, airTemperature, time }).value;

  test('starts where it was stored, ends at the air, and comes half of the way in ln 2 of its time constant', () => {
    expect(at(5, 21, 0)).toBe(5);
    near(at(5, 21, 5e5), 21, 0.01);
    // Time constant by hand: 0.02 · 1100 · 1800 / (8 · 5.56 · 0.02^(2/3)) = 12,080 s.
    near(at(5, 21, Math.LN2 * 12_080), 13, 0.01);
  });
});
