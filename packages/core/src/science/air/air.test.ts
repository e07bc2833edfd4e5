import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import {
  dewMargin,
  dewPoint,
  dewPointFromWetBulb,
  frostPoint,
  humidityFromWetBulb,
  humidityRatio,
  humidityRatioFromWetBulb,
  leastSurfaceTemperature,
  pressureAtAltitude,
  saturationPressure,
  surfaceHumidity,
  wetBulb,
} from './index.ts';

const sea = 101325;
const saturation = (temperature: number) => evaluate(saturationPressure, { temperature }).value;
const dew = (airTemperature: number, relativeHumidity: number) =>
  evaluate(dewPoint, { airTemperature, relativeHumidity }).value;
const margin = (airTemperature: number, relativeHumidity: number, surfaceTemperature: number) =>
  evaluate(dewMargin, {
    airTemperature,
    relativeHumidity,
    surfaceTemperature,
    airTemperatureError: 0.5,
    relativeHumidityError: 0.03,
    surfaceTemperatureError: 0.5,
  }).value;

describe('saturation pressure', () => {
  // READ: ASHRAE Fundamentals 2017 chapter 1 table 3, as quoted by the tests of a general psychrometrics package.
  // Tolerance: the handbook's own claim of 300 ppm.
  test.each([
    [-20, 103.24],
    [-5, 401.74],
    [5, 872.6],
    [25, 3169.7],
    [50, 12351.3],
    [100, 101418],
    [150, 476101.4],
  ])('%d °C: %d Pa', (temperature, pascal) => {
    expect(Math.abs(saturation(temperature) / pascal - 1)).toBeLessThan(300e-6);
  });

  test('both sides of the triple point meet, and 0 °C is on the ice side', () => {
    // READ: 611.657 Pa at the triple point (ITS-90); a thousandth of a pascal is its last digit.
    expect(saturation(0.01)).toBeCloseTo(611.657, 3);
    expect(saturation(0.01 - 1e-9)).toBeCloseTo(611.657, 3);
    expect(saturation(0)).toBeCloseTo(611.1536, 3);
  });

  test('beyond the range of the law there is no number', () => {
    expect(saturation(-100)).toBeGreaterThan(0);
    expect(saturation(200)).toBeGreaterThan(1.5e6);
    expect(() => saturation(-100.1)).toThrow(FormulaRefused);
    expect(() => saturation(200.1)).toThrow(FormulaRefused);
    expect(() => saturation(Number.NaN)).toThrow(/formula-input-not-a-number/);
  });
});

describe('dew point', () => {
  // Own arithmetic by an independent script (PS-1 to 3 and 12), tolerance 0.03 K as stated there.
  test.each([
    [20, 0.5, 9.27],
    [30, 0.7, 23.93],
    [10, 0.85, 7.6],
    [30, 0.55, 19.98],
  ])('%d °C, %d: %d °C', (air, humidity, expected) => {
    expect(Math.abs(dew(air, humidity) - expected)).toBeLessThan(0.03);
  });

  // READ: a Celsius dew-point table on a public document site; printed to 0.1 °C.
  test.each([
    [20, 0.5, 9.3],
    [20, 0.55, 10.7],
    [20, 0.6, 12.0],
  ])('table: %d °C, %d: %d °C', (air, humidity, expected) => {
    expect(Math.abs(dew(air, humidity) - expected)).toBeLessThan(0.1);
  });

  test('humidity above 100 % and of 0 are refused, below 1 % flagged', () => {
    expect(() => dew(20, 1.001)).toThrow(FormulaRefused);
    expect(() => dew(20, 0)).toThrow(FormulaRefused);
    expect(evaluate(dewPoint, { airTemperature: 20, relativeHumidity: 0.005 }).outside).toEqual(['relativeHumidity']);
    expect(() => dew(-90, 0.01)).toThrow(/air-too-dry/);
  });
});

describe('frost point', () => {
  const frost = (airTemperature: number, relativeHumidity: number) =>
    evaluate(frostPoint, { airTemperature, relativeHumidity }).value;

  test('gives ice its due: the air at 100 % below freezing is at its frost point', () => {
    expect(frost(-10, 1)).toBeCloseTo(-10, 9);
    // Sonntag's set over water (from memory) puts the pressure over ice at −10 °C, 259.9 Pa, at −11.25 °C.
    expect(Math.abs(dew(-10, 1) + 11.25)).toBeLessThan(0.05);
  });

  test('is what the public dew-point table prints below freezing, where its copy lost the minus sign', () => {
    // READ: the table shows 4.1 for 5 °C at 50 %; −4.1 fits the frost point, not the dew point of −4.6 °C.
    expect(Math.abs(frost(5, 0.5) + 4.1)).toBeLessThan(0.1);
    expect(Math.abs(dew(5, 0.5) + 4.1)).toBeGreaterThan(0.4);
  });

  test('is refused above 0.01 °C and given just below', () => {
    expect(() => frost(20, 0.5)).toThrow(/no-frost-above-freezing/);
    const least = saturation(0.01 - 1e-9) / saturation(20);
    expect(frost(20, least * 0.9999)).toBeLessThan(0.01);
    expect(() => frost(20, least * 1.0001)).toThrow(/no-frost-above-freezing/);
    expect(() => frost(20, 0.5)).toThrow(
      expect.objectContaining({
        refusal: expect.objectContaining({ input: 'relativeHumidity', limits: [0, expect.closeTo(least, 6)] }),
      }),
    );
  });
});

describe('wet bulb and humidity ratio', () => {
  test.each([
    [20, 0.5, sea, 13.78, 0.03], // own arithmetic PS-1
    [30, 0.7, sea, 25.5, 0.03], // PS-2
    [10, 0.85, sea, 8.73, 0.03], // PS-3
    [7, 0.61, 100000, 3.92667, 0.004], // READ: issue threads of a general psychrometrics package, 0.1 %
  ])('%d °C, %d, %d Pa: %d °C', (airTemperature, relativeHumidity, pressure, expected, tolerance) => {
    const ours = evaluate(wetBulb, { airTemperature, relativeHumidity, pressure }).value;
    expect(Math.abs(ours - expected)).toBeLessThan(tolerance);
  });

  test('the published example 40 °C dry, 20 °C wet', () => {
    // READ: ASHRAE Fundamentals 2017 chapter 1 example 1, read off a chart: W 0.0065, dew point 7, humidity 14 %.
    const pair = { airTemperature: 40, wetBulbTemperature: 20, pressure: sea };
    expect(Math.abs(evaluate(humidityRatioFromWetBulb, pair).value - 0.0065)).toBeLessThanOrEqual(1e-4);
    expect(Math.abs(evaluate(dewPointFromWetBulb, pair).value - 7)).toBeLessThan(0.5);
    expect(Math.abs(evaluate(humidityFromWetBulb, pair).value - 0.14)).toBeLessThan(0.01);
  });

  test('above and below freezing at 500 m', () => {
    // READ: the same tests, values computed there with a spreadsheet, 0.03 %.
    const above = { airTemperature: 30, wetBulbTemperature: 25, pressure: 95461 };
    const below = { airTemperature: -1, wetBulbTemperature: -5, pressure: 95461 };
    expect(evaluate(humidityRatioFromWetBulb, above).value / 0.0192281274 - 1).toBeCloseTo(0, 3);
    expect(evaluate(humidityRatioFromWetBulb, below).value / 0.00120399819933844 - 1).toBeCloseTo(0, 3);
  });

  test('a wet wick never reads above the air nor below dry air', () => {
    const read = (airTemperature: number, wetBulbTemperature: number) => () =>
      evaluate(humidityFromWetBulb, { airTemperature, wetBulbTemperature, pressure: sea });
    expect(read(20, 20.1)).toThrow(/wet-bulb-above-air/);
    expect(read(40, 5)).toThrow(/wet-bulb-too-low/);
    expect(read(20, 20)().value).toBeCloseTo(1, 3);
  });

  test('the saturated humidity ratio lies below the handbook by the enhancement factor it leaves out', () => {
    // READ: ASHRAE Fundamentals 2017 chapter 1 table 2; the reader found 0.5 % near room temperature.
    const ours = evaluate(humidityRatio, { airTemperature: 25, relativeHumidity: 1, pressure: sea }).value;
    expect(ours / 0.020173 - 1).toBeLessThan(0);
    expect(Math.abs(ours / 0.020173 - 1)).toBeLessThan(0.005);
    expect(() => evaluate(humidityRatio, { airTemperature: 110, relativeHumidity: 1, pressure: sea })).toThrow(
      /vapour-pressure-above-air-pressure/,
    );
  });
});

test('pressure at altitude follows the standard atmosphere', () => {
  // READ: ASHRAE Fundamentals 2017 chapter 1 table 1, ±1 Pa.
  const at = (altitude: number) => evaluate(pressureAtAltitude, { altitude }).value;
  for (const [altitude, pascal] of [
    [-500, 107478],
    [0, 101325],
    [500, 95461],
    [1000, 89875],
    [4000, 61640],
    [10000, 26436],
  ] as const)
    expect(Math.abs(at(altitude) - pascal)).toBeLessThanOrEqual(1);
  expect(() => at(12000)).toThrow(FormulaRefused);
});

describe('dew margin', () => {
  test('two slabs that are too cold', () => {
    // Own arithmetic PS-10 and PS-11.
    const at = (airTemperature: number, relativeHumidity: number, surfaceTemperature: number) =>
      evaluate(surfaceHumidity, { airTemperature, relativeHumidity, surfaceTemperature }).value;
    expect(margin(24, 0.6, 18)).toBeCloseTo(2.24, 2);
    expect(at(24, 0.6, 18)).toBeCloseTo(0.868, 3);
    expect(margin(28, 0.7, 22)).toBeCloseTo(-0.02, 2);
    expect(at(28, 0.7, 22)).toBeCloseTo(1.001, 3);
  });

  test('the dew-point charts of the trade', () => {
    // READ, charts rounded to whole degrees: 16 °C 71 % → 11 °C; a surface of 13 °C is 2.3 K above: too little.
    expect(Math.abs(margin(16, 0.71, 13) - 2.3)).toBeLessThan(0.1);
    const least = evaluate(leastSurfaceTemperature, {
      airTemperature: 190 / 9,
      relativeHumidity: 0.65,
      margin: 25 / 9,
    });
    expect(least.value * 1.8 + 32).toBeCloseTo(62.7, 1);
  });

  test('a slab below 0 °C is held against the frost point, one above against the dew point', () => {
    const air = { airTemperature: 2, relativeHumidity: 0.6 };
    expect(margin(2, 0.6, -1)).toBeCloseTo(-1 - evaluate(frostPoint, air).value, 9);
    expect(margin(2, 0.6, 0)).toBeCloseTo(0 - evaluate(dewPoint, air).value, 9);
    expect(evaluate(frostPoint, air).value).toBeGreaterThan(evaluate(dewPoint, air).value);
  });

  test('a frozen slab in air that would condense is held against the dew point', () => {
    expect(margin(15, 0.9, -2)).toBeCloseTo(-2 - dew(15, 0.9), 9);
  });

  test('its band names the three instruments, assumed when not given', () => {
    const ledger = new Ledger();
    const trace = new Trace(ledger);
    const figure = trace.figure('margin', dewMargin, {
      airTemperature: trace.given('air', { value: 24, unit: '°C', origin: 'reading' }),
      relativeHumidity: trace.given('humidity', { value: 0.6, unit: '1', origin: 'reading' }),
      surfaceTemperature: trace.given('slab', { value: 18, unit: '°C', origin: 'reading' }),
    });
    expect(Object.keys(figure.causes ?? {})).toEqual(['air thermometer', 'hygrometer', 'slab thermometer']);
    // Own arithmetic: +0.5 K of air moves the dew point 0.47 to 0.49 K, +3 % humidity 0.5 to 0.8 K; the margin falls.
    const causes = figure.causes as Record<string, number>;
    expect(causes['air thermometer']).toBeLessThan(-0.46);
    expect(causes['air thermometer']).toBeGreaterThan(-0.5);
    expect(causes.hygrometer).toBeLessThan(-0.5);
    expect(causes.hygrometer).toBeGreaterThan(-0.85);
    expect(causes['slab thermometer']).toBe(0.5);
    const [low, high] = figure.band ?? [0, 0];
    expect(high - low).toBeGreaterThan(2);
    expect(high - low).toBeLessThan(3.2);
    expect(ledger.entries.get('margin~hygrometer')).toBeUndefined();
    expect(ledger.entries.get('margin~relativeHumidityError')).toMatchObject({ origin: 'assumed', value: 0.03 });
  });

  test('at 100 % humidity the band stands on one side of the hygrometer only', () => {
    const own = dewMargin.band?.(
      {
        airTemperature: 20,
        relativeHumidity: 1,
        surfaceTemperature: 20,
        airTemperatureError: 0,
        relativeHumidityError: 0.03,
        surfaceTemperatureError: 0,
      },
      0,
    );
    expect(own?.causes?.hygrometer).toBeCloseTo(-0.49, 1);
  });
});
