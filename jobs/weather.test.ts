import { answered, climate, epochOf, plan, siteStateOf } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { type GoldenName, goldenJob } from '../bench/src/golden.ts';

const { sun } = climate;
const WITH_WEATHER: readonly GoldenName[] = ['garage', 'workshop', 'patio'];

function weatherOf(name: GoldenName) {
  const { weather, job, now } = goldenJob(name);
  if (!weather) throw new Error(`${name} has weather`);
  return { weather, job, now };
}

describe.each(WITH_WEATHER)('invented weather of %s', (name) => {
  test('the sun shines no more than a clear sky lets it, in the hour that ends at the stamp', () => {
    const { rows, place } = weatherOf(name).weather;
    for (const { at, sun: shines } of rows) {
      if (!shines) continue;
      const middles = [55, 45, 35, 25, 15, 5].map((minutes) => epochOf(at) - minutes * 60_000);
      const clear = middles.map((t) => sun.haurwitzAt(sun.sunPosition(t, place.latitude, place.longitude).elevation));
      const mean = clear.reduce((sum, each) => sum + each, 0) / clear.length;
      expect(shines.value, at).toBeLessThanOrEqual(mean + 1);
    }
  });

  test('a slab of the usual kind explains the readings under it', () => {
    const { weather, job, now } = weatherOf(name);
    const state = siteStateOf(job, weather, now);
    expect(state.cautions).not.toContain('slab-readings-unexplained');
    expect(state.hours?.calibration.readings).toBeGreaterThan(2);
  });
});

test('patio: the clear coat goes down in the evening or not at all that night, and the dew says so', () => {
  const [option] = plan(goldenJob('patio')).options;
  const day = option?.day;
  if (!day || !answered(day)) throw new Error('the patio has hours');
  const clear = day.coats.find(({ layer }) => layer === 'clear');
  if (!clear) throw new Error('the patio has a clear coat');
  expect(clear.best.length).toBeGreaterThan(1);
  expect(clear.start?.by).toBe('proposed');
  expect(clear.start?.at.slice(0, 13)).toBe('2026-06-12T20');
  // After the last open start of the evening the margin shuts the night before the working hours do.
  const evening = clear.starts.findIndex(({ word }) => word === 'go');
  const after = clear.starts[evening + 1];
  expect(after?.word).toBe('stop');
  expect(after?.limiting?.code).toBe('window-dew-margin');
  expect(after?.from.slice(0, 13)).toBe('2026-06-12T22');
});
