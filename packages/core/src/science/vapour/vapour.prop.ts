import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { blendLimit, dilutionForExposure, roomConcentration, timeToConcentration, vapourFromLiquid } from './index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('vapour grows with liquid and warmth and shrinks with pressure', () => {
  fc.assert(
    fc.property(
      between(1e-6, 1e-2),
      between(-10, 40),
      between(70000, 100000),
      (liquidVolume, airTemperature, pressure) => {
        const at = (l: number, t: number, p: number) =>
          evaluate(vapourFromLiquid, {
            liquidVolume: l,
            liquidDensity: 864,
            molarMass: 0.10617,
            airTemperature: t,
            pressure: p,
          }).value;
        const here = at(liquidVolume, airTemperature, pressure);
        expect(at(2 * liquidVolume, airTemperature, pressure) / here).toBeCloseTo(2, 12);
        expect(at(liquidVolume, airTemperature + 5, pressure)).toBeGreaterThan(here);
        expect(at(liquidVolume, airTemperature, pressure + 5000)).toBeLessThan(here);
      },
    ),
  );
});

test('the limit of a blend lies between those of its parts, and the order does not matter', () => {
  fc.assert(
    fc.property(between(0, 1), between(0.008, 0.05), between(0.008, 0.05), (share, a, b) => {
      const blend = evaluate(blendLimit, { vapourFractions: [share, 1 - share], lowerExplosiveLimits: [a, b] }).value;
      expect(blend).toBeGreaterThanOrEqual(Math.min(a, b) - 1e-12);
      expect(blend).toBeLessThanOrEqual(Math.max(a, b) + 1e-12);
      const turned = evaluate(blendLimit, { vapourFractions: [1 - share, share], lowerExplosiveLimits: [b, a] }).value;
      expect(turned).toBeCloseTo(blend, 12);
    }),
  );
});

test('two halves of an hour are the hour, and build-up is the inverse of the time to reach it', () => {
  fc.assert(
    fc.property(
      between(1e-6, 1e-3),
      between(0.01, 2),
      between(1, 10),
      between(20, 2000),
      between(60, 7200),
      (vapourRate, airflow, mixingFactor, roomVolume, time) => {
        const step = (startConcentration: number, seconds: number) =>
          evaluate(roomConcentration, {
            vapourRate,
            airflow,
            mixingFactor,
            roomVolume,
            time: seconds,
            startConcentration,
          }).value;
        const whole = step(0, time);
        expect(step(step(0, time / 2), time / 2) / whole).toBeCloseTo(1, 9);
        const steady = (vapourRate * mixingFactor) / airflow;
        expect(whole).toBeLessThanOrEqual(steady * (1 + 1e-12));
        if (whole > 0.999 * steady) return;
        const input = { vapourRate, airflow, mixingFactor, roomVolume, concentration: whole };
        expect(evaluate(timeToConcentration, input).value / time).toBeCloseTo(1, 6);
      },
    ),
  );
});

test('the dilution airflow holds the room at its limit in the end', () => {
  fc.assert(
    fc.property(
      between(1e-8, 1e-6),
      between(1e-5, 1e-3),
      between(1, 10),
      (evaporationRate, exposureLimit, mixingFactor) => {
        const liquid = { liquidDensity: 864, molarMass: 0.10617, airTemperature: 20, pressure: 101325 };
        const airflow = evaluate(dilutionForExposure, {
          evaporationRate,
          exposureLimit,
          mixingFactor,
          ...liquid,
        }).value;
        const vapourRate = evaluate(vapourFromLiquid, { liquidVolume: evaporationRate, ...liquid }).value;
        expect((vapourRate * mixingFactor) / airflow / exposureLimit).toBeCloseTo(1, 12);
      },
    ),
  );
});
