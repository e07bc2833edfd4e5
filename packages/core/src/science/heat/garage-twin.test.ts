import { describe, expect, test } from 'vitest';
import { Z90 } from '../../kernel/band.ts';
import { buildWeather } from '../weather/build.ts';
import { HOUR_MS } from '../weather/series.ts';
import { roughAnnualWave } from './annual-wave.ts';
import { calibrate, READING_DEVIATION, surfaceAt } from './calibrate.ts';
import { GARAGE } from './exposure.ts';
import { forcingOf } from './forcing.ts';
import { forecastSlab, MEASURED_ERRORS, surfaceDeviation } from './forecast.ts';
import { slabOnGround } from './materials.ts';
import { PRIOR_DEVIATION, parametersOf, withParameters } from './parameters.ts';
import { runSlab } from './slab-day.ts';

/** Deterministic normal draws: a small generator and the sum of twelve. */
const generator = (seed: number): (() => number) => {
  let state = seed;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return () => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b, -6);
};

/**
 * Garages of our own making: parameters drawn from the priors, readings with the noise the fit assumes. This checks the
 * fit and its band against themselves; it validates no slab, for it takes the form of the model as right.
 */
describe('twelve garages drawn from the priors', () => {
  const start = Date.parse('2026-05-01T07:00:00Z');
  const day = 24 * HOUR_MS;
  const normal = generator(20260501);
  const rows = Array.from({ length: 12 * 24 + 1 }, (_, i) => ({
    time: start + i * HOUR_MS,
    airTemperature: 16 + 3 * Math.sin(i / 37) + 7 * Math.sin((2 * Math.PI * (i - 9)) / 24),
    relativeHumidity: 0.5,
  }));
  const { series } = buildWeather(rows, { kind: 'measured', name: 'own', place: { latitude: 40, longitude: -105 } });
  if (series === undefined) throw new Error('no series');
  const forcing = forcingOf(series, start, start + 12 * day);
  const doors = Array.from({ length: 12 }, (_, d) => ({
    from: start + d * day + 8 * HOUR_MS,
    to: start + d * day + 16 * HOUR_MS,
  }));
  const prior = { layers: slabOnGround(0.1, 0.1), ground: roughAnnualWave(40, 0), groundShift: 0, exposure: GARAGE };
  const names = parametersOf(prior);
  const squares = new Map<number, number>();
  let inside = 0;
  const garages = 12;
  for (let g = 0; g < garages; g++) {
    const truth = withParameters(
      prior,
      names,
      names.map((name) => PRIOR_DEVIATION[name] * normal()),
    );
    const real = runSlab(truth, forcing, doors, start + 10 * day);
    for (const hours of [[], [12], [8, 12, 16], [7, 9, 11, 13, 16, 20]]) {
      const readings = hours.map((hour) => {
        const time = start + 10 * day + hour * HOUR_MS;
        return { time, temperature: surfaceAt(real, time) + READING_DEVIATION * normal() };
      });
      const fitted = calibrate({ setup: prior, forcing, doors, readings });
      const next = runSlab(fitted.setup, forcing, doors, start + 11 * day);
      let sum = 0;
      for (let m = 0; m < 288; m++) sum += ((next.surface[m] as number) - (real.surface[288 + m] as number)) ** 2 / 288;
      squares.set(hours.length, (squares.get(hours.length) ?? 0) + sum / garages);
      if (hours.length !== 3) continue;
      const forecast = forecastSlab(fitted, forcing, doors, start + 11 * day, start + 12 * day, {
        ...MEASURED_ERRORS,
        model: 0,
      });
      for (let m = 0; m < 288; m += 12) {
        const off = Math.abs((forecast.history.surface[m] as number) - (real.surface[288 + m] as number));
        if (off <= Z90 * surfaceDeviation(forecast, m)) inside++;
      }
    }
  }
  const error = (readings: number): number => Math.sqrt(squares.get(readings) as number);

  test('three readings at least halve the error of none, six do not make it larger', () => {
    expect(error(1)).toBeLessThan(error(0));
    expect(error(3)).toBeLessThan(error(0) / 2);
    expect(error(6)).toBeLessThan(error(3) * 1.1);
  });

  test('the P10-P90 band of the fit holds about eight of ten', () => {
    const share = inside / (garages * 24);
    expect(share).toBeGreaterThan(0.65);
    expect(share).toBeLessThan(0.95);
  });
});
