import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { coverFromShare, haurwitz, ineichen, simplifiedSolis, throughClouds } from './clear-sky.ts';
import { sunReach } from './door-sun.ts';
import { sunDay, sunPosition } from './position.ts';

const DEGREE = Math.PI / 180;
const at = (text: string): number => Date.parse(text);

describe('sun position', () => {
  test('SO-1 the published point of the solar position algorithm (pvlib tests): 0.01°', () => {
    const sun = sunPosition(at('2003-10-17T12:30:30-07:00'), 39.742476, -105.1786);
    expect(Math.abs(90 - sun.elevation / DEGREE - 50.111622)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(sun.azimuth / DEGREE - 194.340241)).toBeLessThanOrEqual(0.01);
  });

  test('SO-2 rise, transit and set at Golden, 2015-01-02 (pvlib tests): 10 s', () => {
    const day = sunDay(at('2015-01-02T12:00:00-07:00'), 39.742476, -105.1786);
    if (day.kind !== 'rises') throw new Error('the sun rises there');
    expect(Math.abs(day.rise - at('2015-01-02T07:21:55-07:00'))).toBeLessThanOrEqual(10_000);
    expect(Math.abs(day.noon - at('2015-01-02T12:04:45-07:00'))).toBeLessThanOrEqual(10_000);
    expect(Math.abs(day.set - at('2015-01-02T16:47:43-07:00'))).toBeLessThanOrEqual(10_000);
  });

  test('a year beside an ephemeris, at three latitudes: 0.02° in elevation', () => {
    for (const [latitude, longitude] of [
      [40, -105],
      [-33, 151],
      [64, -22],
    ] as const) {
      const observer = new Observer(latitude, longitude, 0);
      for (let i = 0; i < 365; i += 9) {
        const date = new Date(at('2026-01-01T00:00:00Z') + i * 86_400_000 + (i % 24) * 3_600_000);
        const equator = Equator(Body.Sun, date, observer, true, true);
        const want = Horizon(date, observer, equator.ra, equator.dec, 'normal');
        const ours = sunPosition(date.getTime(), latitude, longitude);
        if (want.altitude < 3) continue;
        expect(Math.abs(ours.elevation / DEGREE - want.altitude)).toBeLessThanOrEqual(0.02);
      }
    }
  });

  test('a site at the pole: up in June, down in December, and no NaN', () => {
    expect(sunDay(at('2026-06-21T12:00:00Z'), 90, 0).kind).toBe('always up');
    expect(sunDay(at('2026-12-21T12:00:00Z'), 90, 0).kind).toBe('always down');
    const sun = sunPosition(at('2026-06-21T12:00:00Z'), 90, 0);
    expect(Number.isFinite(sun.elevation) && Number.isFinite(sun.azimuth)).toBe(true);
    expect(() => sunDay(0, 91, 0)).toThrow(RangeError);
  });
});

describe('clear sky', () => {
  test('SO-3 Haurwitz (pvlib tests)', () => {
    for (const [elevation, want] of [
      [5, 48.63],
      [10, 135.74],
      [30, 487.89],
      [50, 778.77],
      [90, 1035.09],
    ] as const) {
      expect(Math.abs(evaluate(haurwitz, { elevation: elevation * DEGREE }).value - want)).toBeLessThanOrEqual(0.05);
    }
    expect(evaluate(haurwitz, { elevation: -0.1 }).value).toBe(0);
  });

  test('SO-4 Ineichen, zenith 10°, air mass 1, turbidity 3 (pvlib tests)', () => {
    const sky = ineichen({ zenith: 10 * DEGREE, airMass: 1, turbidity: 3, altitude: 0, extraterrestrial: 1364 });
    expect(Math.abs(sky.global - 1038.159)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(sky.direct - 942.208)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(sky.diffuse - 110.265)).toBeLessThanOrEqual(0.01);
    expect(ineichen({ zenith: 2, airMass: 1, turbidity: 3, altitude: 0, extraterrestrial: 1364 }).global).toBe(0);
  });

  test('SO-5 simplified Solis, elevation 80° (pvlib tests)', () => {
    const sky = simplifiedSolis({
      elevation: 80 * DEGREE,
      aerosol: 0.1,
      water: 1,
      pressure: 101325,
      extraterrestrial: 1364,
    });
    expect(Math.abs(sky.global - 1064.653)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(sky.direct - 959.335)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(sky.diffuse - 129.126)).toBeLessThanOrEqual(0.01);
  });

  test('clouds and their inverse', () => {
    for (const cover of [0, 0.3, 0.7, 1]) expect(coverFromShare(throughClouds(cover))).toBeCloseTo(cover, 9);
  });
});

test('sun through a door reaches as far in as it is high at 45°, and not from behind', () => {
  const opening = { facing: Math.PI, height: 2.1 };
  expect(sunReach({ elevation: Math.PI / 4, azimuth: Math.PI }, opening)).toBeCloseTo(2.1, 9);
  expect(sunReach({ elevation: Math.PI / 4, azimuth: 0 }, opening)).toBe(0);
  expect(sunReach({ elevation: -0.1, azimuth: Math.PI }, opening)).toBe(0);
});
