import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import {
  dewPoint,
  frostPoint,
  humidityFromWetBulb,
  humidityRatio,
  pressureAtAltitude,
  saturationPressure,
  surfaceHumidity,
  wetBulb,
} from './index.ts';

const temperature = fc.double({ min: -40, max: 60, noNaN: true });
const humidity = fc.double({ min: 0.01, max: 1, noNaN: true });
const pressure = fc.double({ min: 70000, max: 105000, noNaN: true });
const saturation = (celsius: number) => evaluate(saturationPressure, { temperature: celsius }).value;
const dew = (airTemperature: number, relativeHumidity: number) =>
  evaluate(dewPoint, { airTemperature, relativeHumidity }).value;

test('saturation pressure rises with temperature, across the triple point too', () => {
  fc.assert(
    fc.property(temperature, fc.double({ min: 1e-3, max: 5, noNaN: true }), (t, rise) => {
      expect(saturation(t + rise)).toBeGreaterThan(saturation(t));
    }),
  );
});

test('dew point and humidity are each other’s inverse above freezing', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 60, noNaN: true }), humidity, (air, relativeHumidity) => {
      const point = dew(air, relativeHumidity);
      if (point < 0.01) return;
      expect(saturation(point) / saturation(air)).toBeCloseTo(relativeHumidity, 9);
    }),
  );
});

test('frost point and humidity are each other’s inverse below freezing', () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 0, noNaN: true }), humidity, (airTemperature, relativeHumidity) => {
      const point = evaluate(frostPoint, { airTemperature, relativeHumidity }).value;
      expect(saturation(point) / saturation(airTemperature)).toBeCloseTo(relativeHumidity, 8);
      expect(point).toBeLessThanOrEqual(airTemperature + 1e-9);
      expect(point).toBeGreaterThanOrEqual(dew(airTemperature, relativeHumidity) - 1e-9);
    }),
  );
});

test('the dew point never lies above the air, and touches it at 100 % above freezing', () => {
  fc.assert(
    fc.property(temperature, humidity, (air, relativeHumidity) => {
      expect(dew(air, relativeHumidity)).toBeLessThanOrEqual(air + 1e-6);
    }),
  );
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 60, noNaN: true }), (air) => {
      expect(dew(air, 1)).toBeCloseTo(air, 6);
    }),
  );
});

test('dew point ≤ wet bulb ≤ air above freezing', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 50, noNaN: true }),
      humidity,
      pressure,
      (airTemperature, relativeHumidity, p) => {
        const wet = evaluate(wetBulb, { airTemperature, relativeHumidity, pressure: p }).value;
        expect(wet).toBeLessThanOrEqual(airTemperature + 1e-6);
        expect(wet).toBeGreaterThanOrEqual(dew(airTemperature, relativeHumidity) - 1e-6);
      },
    ),
  );
});

test('wet bulb and humidity are each other’s inverse, on both sides of freezing', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -20, max: 50, noNaN: true }),
      humidity,
      pressure,
      (airTemperature, relativeHumidity, p) => {
        const wetBulbTemperature = evaluate(wetBulb, { airTemperature, relativeHumidity, pressure: p }).value;
        const back = evaluate(humidityFromWetBulb, {
          airTemperature,
          wetBulbTemperature: Math.min(wetBulbTemperature, airTemperature),
          pressure: p,
        }).value;
        expect(back).toBeCloseTo(relativeHumidity, 6);
      },
    ),
  );
});

test('more humidity: higher dew point, higher ratio, more at the surface', () => {
  fc.assert(
    fc.property(
      temperature,
      fc.double({ min: 0.01, max: 0.98, noNaN: true }),
      temperature,
      (air, h, surfaceTemperature) => {
        const more = h + 0.02;
        expect(dew(air, more)).toBeGreaterThan(dew(air, h));
        const ratio = (relativeHumidity: number) =>
          evaluate(humidityRatio, { airTemperature: air, relativeHumidity, pressure: 101325 }).value;
        expect(ratio(more)).toBeGreaterThan(ratio(h));
        const at = (relativeHumidity: number) =>
          evaluate(surfaceHumidity, { airTemperature: air, relativeHumidity, surfaceTemperature }).value;
        expect(at(more)).toBeGreaterThan(at(h));
      },
    ),
  );
});

test('a surface at the temperature of the air has the humidity of the air', () => {
  fc.assert(
    fc.property(temperature, humidity, (t, relativeHumidity) => {
      const at = evaluate(surfaceHumidity, { airTemperature: t, relativeHumidity, surfaceTemperature: t });
      expect(at.value).toBeCloseTo(relativeHumidity, 12);
    }),
  );
});

test('pressure falls with altitude', () => {
  fc.assert(
    fc.property(fc.integer({ min: -500, max: 9000 }), (altitude) => {
      const here = evaluate(pressureAtAltitude, { altitude }).value;
      expect(evaluate(pressureAtAltitude, { altitude: altitude + 10 }).value).toBeLessThan(here);
    }),
  );
});
