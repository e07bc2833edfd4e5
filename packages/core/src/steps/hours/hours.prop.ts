import fc from 'fast-check';
import { expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import { type Costed, costing, type Files } from '../testing/costed.ts';

const costed = costing({
  garage: { job: garageJob, catalogue: garageCatalogue, priceBook: garagePrices },
});

const RUNS = { numRuns: 25 };

interface Room {
  readonly width: number;
  readonly depth: number;
}

const room = fc.record<Room>({
  width: fc.integer({ min: 20, max: 300 }),
  depth: fc.integer({ min: 20, max: 300 }),
});

/** The garage as a number of rooms, in tenths of a metre; the areas stand in the order given. */
const rooms =
  (of: readonly (Room & { readonly id: string })[]) =>
  (files: Files): void => {
    const [option] = files.job.options;
    if (!option) throw new Error('the golden job has an option');
    const metres = (tenths: number): string => `${tenths / 10} m`;
    files.job.areas = of.map(({ id, width, depth }) => ({
      id,
      name: id,
      outline: [
        ['0 m', '0 m'],
        [metres(width), '0 m'],
        [metres(width), metres(depth)],
        ['0 m', metres(depth)],
      ],
      profileDepth: '0.05 mm',
    }));
    option.areas = of.map(({ id }) => id);
    delete option.paidHours;
  };

const named = (of: readonly Room[]) => of.map((one, i) => ({ ...one, id: `room-${i}` }));

test('the order of the rooms changes no hour', () => {
  fc.assert(
    fc.property(fc.array(room, { minLength: 2, maxLength: 4 }), fc.nat(), (drawn, turn) => {
      const of = named(drawn);
      const at = turn % of.length;
      const turned = [...of.slice(at), ...of.slice(0, at)].reverse();
      const one = costed('garage', rooms(of)).hours;
      const other = costed('garage', rooms(turned)).hours;
      expect(other.personTime?.value).toBeCloseTo(one.personTime?.value ?? Number.NaN, 6);
      expect(other.personTime?.band?.[1]).toBeCloseTo(one.personTime?.band?.[1] ?? Number.NaN, 3);
      const times = (hours: typeof one) => hours.tasks.map(({ id, time }) => `${id} ${time.value.toFixed(6)}`).sort();
      expect(times(other)).toEqual(times(one));
    }),
    RUNS,
  );
});

test('rooms add up: work on areas and along edges is that of each room alone', () => {
  fc.assert(
    fc.property(room, room, (a, b) => {
      const [one, other] = named([a, b]);
      if (!one || !other) throw new Error('two rooms were drawn');
      // Mixing is per batch and vacuuming may be once more where the work runs into a second day; the rest is additive.
      const spread = (hours: Costed['hours']) =>
        hours.tasks
          .filter(({ area, work }) => area !== undefined && work !== 'vacuum')
          .reduce((sum, { time }) => sum + time.value, 0);
      const apart = spread(costed('garage', rooms([one])).hours) + spread(costed('garage', rooms([other])).hours);
      expect(spread(costed('garage', rooms([one, other])).hours)).toBeCloseTo(apart, 6);
    }),
    RUNS,
  );
});

test('times are positive with an ordered band, and a larger room never takes less', () => {
  fc.assert(
    fc.property(room, fc.integer({ min: 1, max: 50 }), (small, more) => {
      const [before] = named([small]);
      if (!before) throw new Error('a room was drawn');
      const hours = costed('garage', rooms([before])).hours;
      for (const { time } of hours.tasks) {
        expect(time.value).toBeGreaterThan(0);
        const [low, high] = time.band ?? [time.value, time.value];
        expect(low).toBeLessThanOrEqual(time.value);
        expect(high).toBeGreaterThanOrEqual(time.value);
      }
      const larger = costed('garage', rooms([{ ...before, width: before.width + more }])).hours;
      expect(larger.personTime?.value).toBeGreaterThan(hours.personTime?.value ?? Number.NaN);
    }),
    RUNS,
  );
});
