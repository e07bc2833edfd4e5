import { expect, test } from 'vitest';
import { evaporationOf, filmOnly, surfaceTemperatureOf } from './surface-balance.ts';

test('a wet surface that only air and vapour touch stands at the wet bulb', () => {
  // PS-1 and PS-3 of reference/physics: 20 °C, 50 % gives 13.78 °C; 10 °C, 85 % gives 8.73 °C. A constant psychrometric
  // factor is itself good to 1 %, which is 0.15 K here.
  for (const [air, vapour, wetBulb] of [
    [20, 1169.5, 13.78],
    [10, 1043.8, 8.73],
  ] as const) {
    const surface = surfaceTemperatureOf({ ...filmOnly(air, 10), wet: 1, vapour }, 0, 0, air);
    expect(Math.abs(surface - wetBulb)).toBeLessThanOrEqual(0.15);
  }
});

test('a dry surface loses no water, a wet one less the damper the air', () => {
  const balance = { ...filmOnly(20, 10), wet: 1, vapour: 1170 };
  expect(evaporationOf({ ...balance, wet: 0 }, 25)).toBe(0);
  expect(evaporationOf(balance, 20)).toBeGreaterThan(evaporationOf({ ...balance, vapour: 2000 }, 20));
  // 10 W/(m² K) over 1170 Pa of deficit: about 170 W/m², which is 0.25 mm an hour.
  expect(evaporationOf(balance, 20) * 3600 * 1000).toBeCloseTo(0.25, 1);
});

test('the balance closes: what comes in goes down', () => {
  const balance = { ...filmOnly(18, 12, 300), emissivity: 0.9, skyLongWave: 320, skyView: 0.8, wet: 0.4, vapour: 1200 };
  const [down, held] = [150, 150 * 16];
  const surface = surfaceTemperatureOf(balance, down, held, 18);
  const kelvin = surface + 273.15;
  const radiant = 0.9 * (0.8 * 320 + 0.2 * 5.670374419e-8 * 291.15 ** 4 - 5.670374419e-8 * kelvin ** 4);
  const evaporation = evaporationOf(balance, surface) * 2.45e9;
  const incoming = 300 + 12 * (18 - surface) + radiant - evaporation;
  expect(Math.abs(incoming - (down * surface - held))).toBeLessThanOrEqual(1e-6);
});
