import fc from 'fast-check';
import { expect, test } from 'vitest';
import catalogueJson from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import jobJson from '../../../../../jobs/garage/job.json' with { type: 'json' };
import type { CatalogueFile } from '../../catalogue.ts';
import type { JobFile } from '../../job.ts';
import { type Scenario, scenario } from '../testing/scenario.ts';

/** Rooms of any size side by side, each with its own profile, under the two coats of the invented garage. */
const rooms = fc.array(
  fc.record({
    width: fc.integer({ min: 1, max: 40 }),
    length: fc.integer({ min: 1, max: 40 }),
    profile: fc.integer({ min: 0, max: 30 }),
    wall: fc.integer({ min: 0, max: 30 }),
  }),
  { minLength: 1, maxLength: 3 },
);
const allowance = fc.integer({ min: 0, max: 30 });

type Room = { readonly width: number; readonly length: number; readonly profile: number; readonly wall: number };

function run(list: readonly Room[], surplus = 8, order: readonly number[] = list.map((_, i) => i)): Scenario {
  const job = structuredClone(jobJson) as unknown as JobFile;
  const catalogue = structuredClone(catalogueJson) as unknown as CatalogueFile;
  const areas: JobFile['areas'] = list.map(({ width, length, profile, wall }, i) => ({
    id: `room-${i}`,
    name: `room ${i}`,
    outline: [
      ['0 m', '0 m'],
      [`${width} m`, '0 m'],
      [`${width} m`, `${length} m`],
      ['0 m', `${length} m`],
    ],
    profileDepth: `${profile / 100} mm`,
    ...(wall > 0 ? { stemWalls: [{ id: `wall-${i}`, length: `${wall} m`, height: '150 mm' }] } : {}),
  }));
  job.areas = order.map((i) => areas[i] as JobFile['areas'][number]);
  job.options = [
    { id: 'flake', name: 'flake', system: 'flake-one-day', areas: job.areas.map((area) => area.id), people: 2 },
  ];
  for (const layer of catalogue.systems.flatMap((one) => one.layers)) layer.surplus = `${surplus} %`;
  return scenario({ job, catalogue, now: '2026-05-12T12:00:00-06:00' });
}

const half = 0.5e-6;

test('what kits make covers what is mixed, which covers the net; one kit fewer would not do', () => {
  fc.assert(
    fc.property(rooms, allowance, (list, surplus) => {
      const { quantities } = run(list, surplus);
      for (const layer of quantities.layers) expect(layer.needed.value).toBeGreaterThanOrEqual(layer.net.value - 1e-12);
      for (const line of quantities.buying) {
        const [pack] = line.packs;
        const count = pack?.count.value ?? 0;
        expect(Number.isInteger(count)).toBe(true);
        expect(line.bought.value).toBeGreaterThanOrEqual(line.needed.value - (line.kind === 'media' ? 0.5e-3 : half));
        expect((line.bought.value * (count - 1)) / count).toBeLessThan(line.needed.value);
        expect(line.left.value).toBeCloseTo(line.bought.value - line.needed.value, 12);
      }
    }),
    { numRuns: 30 },
  );
});

test('the order of the areas changes no total', () => {
  fc.assert(
    fc.property(rooms, (list) => {
      const back = list.map((_, i) => list.length - 1 - i);
      const [there, reversed] = [run(list).quantities, run(list, 8, back).quantities];
      there.buying.forEach((line, i) => {
        const other = reversed.buying[i];
        expect(other?.needed.value).toBeCloseTo(line.needed.value, 9);
        expect(other?.packs.map((pack) => pack.count.value)).toEqual(line.packs.map((pack) => pack.count.value));
      });
    }),
    { numRuns: 20 },
  );
});

test('batches add up to the coat, components to what is mixed, parts to the net', () => {
  fc.assert(
    fc.property(rooms, (list) => {
      for (const layer of run(list).quantities.layers) {
        const { batches, components, needed, net, areas } = layer;
        if (batches) expect(batches.values.reduce((sum, one) => sum + one, 0)).toBe(needed.value);
        expect(components.reduce((sum, one) => sum + one.volume.value, 0)).toBeCloseTo(needed.value, 12);
        const parts = areas.flatMap((area) => [area.film, area.verticals, area.profile, area.texture, area.porosity]);
        expect(parts.reduce((sum, part) => sum + (part?.value ?? 0), 0)).toBeCloseTo(net.value, 12);
      }
    }),
    { numRuns: 20 },
  );
});

test('a rougher floor, a longer wall or a larger surplus never needs less', () => {
  fc.assert(
    fc.property(rooms, allowance, (list, surplus) => {
      const needed = (scenario: Scenario): number => scenario.quantities.layers[0]?.needed.value ?? 0;
      const before = needed(run(list, surplus));
      expect(
        needed(
          run(
            list.map((room) => ({ ...room, profile: room.profile + 1 })),
            surplus,
          ),
        ),
      ).toBeGreaterThan(before);
      expect(
        needed(
          run(
            list.map((room) => ({ ...room, wall: room.wall + 1 })),
            surplus,
          ),
        ),
      ).toBeGreaterThan(before);
      expect(needed(run(list, surplus + 1))).toBeGreaterThan(before);
    }),
    { numRuns: 15 },
  );
});
