import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cureLaw, timeAt } from './law.ts';
import { milestoneClock } from './progress.ts';

const sheet = fc
  .record({
    low: fc.integer({ min: 5, max: 15 }),
    gap: fc.integer({ min: 5, max: 15 }),
    time: fc.integer({ min: 600, max: 200_000 }),
    ratio: fc.double({ min: 1.2, max: 3, noNaN: true }),
  })
  .map(({ low, gap, time, ratio }) => [
    { temperature: low, time: time * ratio },
    { temperature: low + gap, time },
  ]);
const historyOf = (mean: number, swing: number) => {
  const temperature = Array.from({ length: 5 * 288 }, (_, m) => mean + swing * Math.sin((2 * Math.PI * m) / 288));
  return { from: 0, spacing: 300, temperature, deviation: temperature.map(() => 0.8) };
};

test('a law gives its sheet’s own times back, within the band it states', () => {
  fc.assert(
    fc.property(sheet, (points) => {
      const law = cureLaw(points, 'film');
      for (const { temperature, time } of points) {
        const found = timeAt(law, temperature, 0);
        expect(Math.abs((found?.time as number) / time - 1)).toBeLessThanOrEqual(1e-9);
        expect(found?.low as number).toBeLessThan(time);
        expect(found?.high as number).toBeGreaterThan(time);
      }
    }),
  );
});

test('a colder slab never shortens a cure, and a later start never ends before an earlier one', () => {
  fc.assert(
    fc.property(
      sheet,
      fc.double({ min: 8, max: 22, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      fc.nat(200),
      (points, mean, swing, mark) => {
        const law = cureLaw(points, 'film');
        const warm = milestoneClock(law, historyOf(mean, swing));
        const cold = milestoneClock(law, historyOf(mean - 2, swing));
        const start = mark * 300_000;
        const [here, colder, later] = [warm(start), cold(start), warm(start + 300_000)];
        if (here === undefined || colder === undefined || later === undefined) return;
        expect(colder.at).toBeGreaterThanOrEqual(here.at - 1e-3);
        expect(later.at).toBeGreaterThanOrEqual(here.at - 1e-3);
        expect(here.low).toBeLessThanOrEqual(here.at);
        expect(here.high ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(here.at);
        expect(here.low).toBeGreaterThanOrEqual(start);
      },
    ),
    { numRuns: 60 },
  );
});
