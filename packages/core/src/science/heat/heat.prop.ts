import fc from 'fast-check';
import { expect, test } from 'vitest';
import { conduction, meanOfTop, temperatureAt } from './conduction.ts';
import { heatGrid } from './grid.ts';
import type { Layer } from './materials.ts';
import { filmOnly } from './surface-balance.ts';

const layer = fc.record({
  thickness: fc.double({ min: 0.03, max: 2, noNaN: true }),
  conductivity: fc.double({ min: 0.2, max: 3, noNaN: true }),
  density: fc.double({ min: 500, max: 3000, noNaN: true }),
  heatCapacity: fc.double({ min: 600, max: 2000, noNaN: true }),
});
const layers = fc.array(layer, { minLength: 1, maxLength: 4 });
const celsius = fc.double({ min: -20, max: 45, noNaN: true });
const steps = fc.array(fc.record({ seconds: fc.integer({ min: 10, max: 3600 }), air: celsius }), {
  minLength: 1,
  maxLength: 30,
});

test('no cell ever leaves the range of what it started from and what touches it', () => {
  fc.assert(
    fc.property(layers, celsius, celsius, steps, (ground, start, bottom, weather) => {
      const slab = conduction(heatGrid(ground), 'fixed', start);
      let [least, most] = [Math.min(start, bottom), Math.max(start, bottom)];
      for (const { seconds, air } of weather) {
        [least, most] = [Math.min(least, air), Math.max(most, air)];
        slab.step(seconds, filmOnly(air, 8), bottom);
        for (const each of [...slab.temperature, slab.surface, temperatureAt(slab, 0.05), meanOfTop(slab, 0.05)]) {
          expect(each).toBeGreaterThanOrEqual(least - 1e-9);
          expect(each).toBeLessThanOrEqual(most + 1e-9);
        }
      }
    }),
  );
});

test('with an insulated back, what the film lets in is what the layers hold', () => {
  fc.assert(
    fc.property(layers, celsius, steps, (ground: readonly Layer[], start, weather) => {
      const grid = heatGrid(ground);
      const slab = conduction(grid, 'insulated', start);
      let entered = 0;
      for (const { seconds, air } of weather) {
        slab.step(seconds, filmOnly(air, 8), 0);
        entered += 8 * (air - slab.surface) * seconds;
      }
      const held = grid.capacity.reduce((sum, each, i) => sum + each * ((slab.temperature[i] as number) - start), 0);
      const scale = grid.capacity.reduce((sum, each) => sum + each, 0);
      expect(Math.abs(held - entered) / scale).toBeLessThanOrEqual(1e-8);
    }),
  );
});
