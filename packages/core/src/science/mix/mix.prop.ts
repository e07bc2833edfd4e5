import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { batchSplit, massRatioFromVolume, mixVolumeSolids, volumeRatioFromMass } from './index.ts';

const volume = fc.double({ min: 1e-3, max: 5, noNaN: true });
const density = fc.double({ min: 700, max: 2500, noNaN: true });

test('batches sum exactly to the total and none is too large or too small', () => {
  fc.assert(
    fc.property(
      volume,
      fc.double({ min: 1e-3, max: 0.05, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (totalVolume, largestBatch, share) => {
        const smallestBatch = largestBatch * share;
        let batches: readonly number[];
        try {
          batches = evaluate(batchSplit, { totalVolume, largestBatch, smallestBatch }).value;
        } catch (trouble) {
          if (!(trouble instanceof FormulaRefused)) throw trouble;
          // Refused only where the fewest batches that hold the total are each too small.
          expect(totalVolume / Math.ceil(totalVolume / largestBatch - 1e-9)).toBeLessThan(smallestBatch * (1 + 1e-9));
          return;
        }
        expect(batches.reduce((sum, batch) => sum + batch, 0)).toBe(totalVolume);
        const slack = 1e-9 * largestBatch;
        for (const batch of batches) {
          expect(batch).toBeLessThanOrEqual(largestBatch + slack);
          expect(batch).toBeGreaterThanOrEqual(smallestBatch - slack);
        }
        expect(batches.length).toBe(Math.ceil(totalVolume / largestBatch - 1e-9));
      },
    ),
    { numRuns: 500 },
  );
});

test('ratios by volume and by mass are each other’s inverse', () => {
  fc.assert(
    fc.property(volume, volume, density, density, (volumeA, volumeB, densityA, densityB) => {
      const massB = evaluate(massRatioFromVolume, { volumeA, volumeB, densityA, densityB }).value;
      const back = evaluate(volumeRatioFromMass, { massA: 1, massB, densityA, densityB }).value;
      expect(back / (volumeB / volumeA)).toBeCloseTo(1, 12);
    }),
  );
});

test('the solids of a mixture lie between those of its parts, whatever the size of the mix', () => {
  const part = fc.record({ volume, solids: fc.double({ min: 0, max: 1, noNaN: true }) });
  fc.assert(
    fc.property(
      fc.array(part, { minLength: 1, maxLength: 6 }),
      fc.double({ min: 0.1, max: 10, noNaN: true }),
      (parts, factor) => {
        const volumes = parts.map((p) => p.volume);
        const volumeSolids = parts.map((p) => p.solids);
        const mixed = evaluate(mixVolumeSolids, { volumes, volumeSolids }).value;
        expect(mixed).toBeGreaterThanOrEqual(Math.min(...volumeSolids) - 1e-12);
        expect(mixed).toBeLessThanOrEqual(Math.max(...volumeSolids) + 1e-12);
        const larger = evaluate(mixVolumeSolids, { volumes: volumes.map((v) => v * factor), volumeSolids }).value;
        expect(larger).toBeCloseTo(mixed, 12);
      },
    ),
  );
});
