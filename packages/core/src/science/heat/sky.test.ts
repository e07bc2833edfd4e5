import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { dewPointAt } from '../weather/moist.ts';
import { berdahlMartin, cloudedSkyEmissivity, skyLongWave, waltonSky } from './sky.ts';

test('SO-6 Walton sky at 293 K, dew point 283 K: 340.6 W/m² (published, ± 0.5)', () => {
  const emissivity = waltonSky(283 - 273.15, 0);
  expect(Math.abs(emissivity - 0.815)).toBeLessThanOrEqual(0.0012);
  expect(Math.abs(skyLongWave(emissivity, 293 - 273.15) - 340.6)).toBeLessThanOrEqual(0.5);
});

test('clouds bring the sky towards a black one', () => {
  const clear = berdahlMartin(12);
  expect(cloudedSkyEmissivity(clear, 0)).toBe(clear);
  expect(cloudedSkyEmissivity(clear, 1)).toBeCloseTo(clear + 0.784 * (1 - clear), 12);
});

test('both clear skies beside a measured winter day at 2317 m (SURFRAD Alamosa)', () => {
  const file = new URL('../../../../../reference/weather/surfrad_alamosa_co_2016-01-01_5min.csv', import.meta.url);
  const [heading, ...lines] = readFileSync(file, 'utf8').trim().split(/\r?\n/);
  const names = (heading as string).split(',');
  let [count, measured, berdahl, walton] = [0, 0, 0, 0];
  for (const line of lines) {
    const cells = line.split(',').map(Number);
    const of = (name: string): number => cells[names.indexOf(name)] as number;
    const dew = dewPointAt(of('temp'), of('rh') / 100);
    count++;
    measured += of('dw_ir');
    berdahl += skyLongWave(berdahlMartin(dew), of('temp'));
    walton += skyLongWave(waltonSky(dew, 0), of('temp'));
  }
  // Means found by an independent script on the same file: measured 179, Berdahl-Martin 162, Walton 188 W/m².
  expect(Math.abs(measured / count - 179)).toBeLessThanOrEqual(1);
  expect(Math.abs(berdahl / count - 162)).toBeLessThanOrEqual(2);
  expect(Math.abs(walton / count - 188)).toBeLessThanOrEqual(2);
});
