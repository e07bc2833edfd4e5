import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cureLaw } from '../cure/law.ts';
import type { CoatToPlace } from './coat.ts';
import type { Conditions } from './conditions.ts';
import { findWindows } from './search.ts';

const HOUR = 3_600_000;
const COUNT = 36 * 12 + 1;
const wave = (mean: number, half: number, phase: number): Float64Array =>
  Float64Array.from({ length: COUNT }, (_, m) => mean + half * Math.sin((2 * Math.PI * (m / 12 - phase)) / 24));
const conditions = fc
  .record({
    surface: fc.double({ min: 2, max: 30, noNaN: true }),
    swing: fc.double({ min: 0, max: 8, noNaN: true }),
    margin: fc.double({ min: -2, max: 12, noNaN: true }),
    phase: fc.integer({ min: 0, max: 23 }),
    deviation: fc.double({ min: 0, max: 3, noNaN: true }),
  })
  .map(
    ({ surface, swing, margin, phase, deviation }): Conditions => ({
      from: 0,
      count: COUNT,
      surface: wave(surface, swing, phase),
      surfaceDeviation: new Float64Array(COUNT).fill(deviation),
      air: wave(surface + 2, swing, phase + 2),
      humidity: wave(0.6, 0.2, phase),
      margin: wave(margin, swing / 2, phase),
      marginDeviation: new Float64Array(COUNT).fill(deviation),
      breathing: wave(surface, swing, phase - 1),
      wind: new Float64Array(COUNT),
      rain: new Float64Array(COUNT),
      known: new Uint8Array(COUNT).fill(1),
      rainKnown: new Uint8Array(COUNT).fill(1),
      assumed: [],
    }),
  );
const COAT: CoatToPlace = {
  laying: 3600,
  touch: cureLaw(
    [
      { temperature: 10, time: 6 * 3600 },
      { temperature: 25, time: 2 * 3600 },
    ],
    'film',
  ),
  sensitive: 4 * 3600,
  marginRule: 3,
  slab: [8, 30],
  air: [undefined, undefined],
  humidity: [undefined, 0.85],
  porous: true,
  risingStops: false,
  outdoors: false,
  prepared: 0,
};
const usable = (found: Conditions, coat: CoatToPlace): readonly number[] =>
  findWindows(found, coat, [], 0, 24 * HOUR).ranked.map((each) => each.start);

test('a stricter rule never opens an hour', () => {
  fc.assert(
    fc.property(conditions, fc.double({ min: 0, max: 3, noNaN: true }), (found, more) => {
      const wide = new Set(usable(found, COAT));
      for (const start of usable(found, { ...COAT, marginRule: COAT.marginRule + more }))
        expect(wide.has(start)).toBe(true);
      for (const start of usable(found, { ...COAT, slab: [8 + more, 30 - more] })) expect(wide.has(start)).toBe(true);
    }),
    { numRuns: 40 },
  );
});

test('no start is let through whose margin breaks the rule anywhere in its sensitive time, nor one out of its bounds', () => {
  const bounds = fc.record({
    rule: fc.double({ min: 0, max: 5, noNaN: true }),
    laying: fc.integer({ min: 60, max: 6 * 3600 }),
    prepared: fc.integer({ min: 0, max: 20 * HOUR }),
    opens: fc.integer({ min: 0, max: 20 * HOUR }),
    open: fc.integer({ min: HOUR, max: 30 * HOUR }),
    from: fc.integer({ min: 0, max: 12 }),
    hours: fc.integer({ min: 1, max: 12 }),
  });
  fc.assert(
    fc.property(conditions, bounds, (found, { rule, laying, prepared, opens, open, from, hours }) => {
      const coat = { ...COAT, marginRule: rule, laying, prepared, recoatOpens: opens, recoatCloses: opens + open };
      const work = { from: from * HOUR, to: (from + hours) * HOUR };
      for (const { start, word, laid, sensitiveUntil } of findWindows(found, coat, [work], 0, 36 * HOUR).starts) {
        if (word !== 'go' && word !== 'caution') continue;
        expect(start).toBeGreaterThanOrEqual(Math.max(prepared, opens, work.from));
        expect(laid).toBeLessThanOrEqual(Math.min(opens + open, work.to));
        expect(sensitiveUntil).toBeLessThanOrEqual((COUNT - 1) * 300_000);
        for (let m = Math.ceil(start / 300_000); m * 300_000 <= sensitiveUntil; m++) {
          expect(found.margin[m] as number).toBeGreaterThanOrEqual(rule);
          const low = (found.margin[m] as number) - 1.2815515655446 * (found.marginDeviation[m] as number);
          if (word === 'go') expect(low).toBeGreaterThanOrEqual(1 - 1e-9);
          if (m * 300_000 > laid) continue;
          expect(found.surface[m] as number).toBeGreaterThanOrEqual(8);
          expect(found.surface[m] as number).toBeLessThanOrEqual(30);
          expect(found.humidity[m] as number).toBeLessThanOrEqual(0.85);
        }
      }
    }),
    { numRuns: 60 },
  );
});

test('every refused hour has its one reason with a finite number and a change of at least zero; a go has none', () => {
  fc.assert(
    fc.property(conditions, (found) => {
      for (const each of findWindows(found, COAT, [{ from: 7 * HOUR, to: 17 * HOUR }], 0, 24 * HOUR).starts) {
        expect(each.limiting === undefined).toBe(each.word === 'go');
        for (const reason of each.limiting === undefined ? [] : [each.limiting, ...each.others]) {
          expect(Number.isFinite(reason.value) && Number.isFinite(reason.bound)).toBe(true);
          expect(reason.lift.by).toBeGreaterThanOrEqual(0);
        }
      }
    }),
    { numRuns: 40 },
  );
});

test('the smallest change of the margin opens the hour as far as the margin goes', () => {
  fc.assert(
    fc.property(conditions, (found) => {
      const refused = findWindows(found, COAT, [], 0, 24 * HOUR).starts.find(
        (each) => each.limiting?.code === 'window-dew-margin',
      );
      if (refused?.limiting === undefined) return;
      const by = refused.limiting.lift.by + 1e-9;
      const warmer = { ...found, margin: found.margin.map((each) => each + by) };
      const again = findWindows(warmer, COAT, [], refused.start, refused.start).starts[0];
      expect([again?.limiting, ...(again?.others ?? [])].some((each) => each?.code === 'window-dew-margin')).toBe(
        false,
      );
    }),
    { numRuns: 40 },
  );
});
