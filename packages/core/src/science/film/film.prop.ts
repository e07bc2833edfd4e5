import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import {
  dryFilmFromWet,
  meanTextureDepth,
  practicalSpreadRate,
  profileFill,
  solidsAfterThinning,
  spreadRate,
  volumeForArea,
  wetFilmFromDry,
  wetFilmFromSpreadRate,
} from './index.ts';

const film = fc.double({ min: 1e-5, max: 5e-3, noNaN: true });
const solids = fc.double({ min: 0.05, max: 1, noNaN: true });
const thinner = fc.double({ min: 0, max: 0.5, noNaN: true });
const loss = fc.double({ min: 0, max: 0.5, noNaN: true });
const area = fc.double({ min: 0.1, max: 1e4, noNaN: true });

test('wet and dry film are each other’s inverse, and wet is never the thinner', () => {
  fc.assert(
    fc.property(film, solids, (dryFilm, volumeSolids) => {
      const wetFilm = evaluate(wetFilmFromDry, { dryFilm, volumeSolids }).value;
      expect(wetFilm).toBeGreaterThanOrEqual(dryFilm);
      expect(evaluate(dryFilmFromWet, { wetFilm, volumeSolids }).value / dryFilm).toBeCloseTo(1, 12);
    }),
  );
});

test('thinning keeps the solids that are spread and never raises their share', () => {
  fc.assert(
    fc.property(film, solids, thinner, (dryFilm, volumeSolids, thinnerRatio) => {
      const thinned = evaluate(solidsAfterThinning, { volumeSolids, thinnerRatio }).value;
      expect(thinned).toBeLessThanOrEqual(volumeSolids);
      const wet = evaluate(wetFilmFromDry, { dryFilm, volumeSolids }).value;
      const wetThinned = evaluate(wetFilmFromDry, { dryFilm, volumeSolids: thinned }).value;
      expect(wetThinned / (wet * (1 + thinnerRatio))).toBeCloseTo(1, 12);
    }),
  );
});

test('spread rate, area and loss conserve the coating', () => {
  fc.assert(
    fc.property(film, solids, loss, area, (dryFilm, volumeSolids, lossFraction, a) => {
      const rate = evaluate(spreadRate, { dryFilm, volumeSolids }).value;
      const volume = evaluate(volumeForArea, { area: a, spreadRate: rate, lossFraction }).value;
      const practical = evaluate(practicalSpreadRate, { spreadRate: rate, lossFraction }).value;
      expect((volume * (1 - lossFraction) * volumeSolids) / (a * dryFilm)).toBeCloseTo(1, 12);
      expect((volume * practical) / a).toBeCloseTo(1, 12);
      const wet = evaluate(wetFilmFromSpreadRate, { spreadRate: rate }).value;
      expect(wet / evaluate(wetFilmFromDry, { dryFilm, volumeSolids }).value).toBeCloseTo(1, 12);
    }),
  );
});

test('twice the size: fill grows as the volume, depth as the length', () => {
  fc.assert(
    fc.property(
      area,
      fc.double({ min: 0, max: 1e-3, noNaN: true }),
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      (a, meanVoidDepth, k) => {
        const fill = evaluate(profileFill, { area: a, meanVoidDepth }).value;
        const scaled = evaluate(profileFill, { area: a * k * k, meanVoidDepth: meanVoidDepth * k }).value;
        expect(scaled).toBeCloseTo(fill * k ** 3, 9);
        const depth = evaluate(meanTextureDepth, { volume: 5e-5, diameter: 0.25 }).value;
        const deeper = evaluate(meanTextureDepth, { volume: 5e-5 * k ** 3, diameter: 0.25 * k }).value;
        expect(deeper / depth).toBeCloseTo(k, 9);
      },
    ),
  );
});
