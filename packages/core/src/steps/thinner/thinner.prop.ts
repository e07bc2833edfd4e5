import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { solidsAfterThinning, wetFilmFromDry } from '../../science/film/index.ts';
import { coatingVoc, mostThinner } from '../../science/voc/index.ts';
import { thinnedVolume, volatileOfThinned } from '../formulas/system-voc.ts';
import { dryAtOldGauge, thinnerShare, vocMass } from '../formulas/thinner.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('the most thinner brings the coating to the limit and no further', () => {
  fc.assert(
    fc.property(number(0, 400), number(1, 380), number(600, 1400), (voc, above, thinnerDensity) => {
      const limit = voc + above;
      if (limit >= thinnerDensity - 1) return;
      const coating = 0.001;
      const most = evaluate(mostThinner, {
        vocMass: evaluate(vocMass, { coating, voc }).value,
        netVolume: coating,
        thinnerDensity,
        limit,
      }).value;
      const thinnerRatio = evaluate(thinnerShare, { thinner: most, coating }).value;
      if (thinnerRatio > 100) return;
      const thinned = evaluate(coatingVoc, {
        volatileMass: evaluate(volatileOfThinned, { coating, voc, thinnerRatio, thinnerDensity }).value,
        waterMass: 0,
        exemptMass: 0,
        coatingVolume: evaluate(thinnedVolume, { coating, thinnerRatio }).value,
        waterVolume: 0,
        exemptVolume: 0,
      }).value;
      expect(thinned / limit).toBeCloseTo(1, 6);
    }),
  );
});

test('thinner raises the gauge by its share, and the old gauge leaves exactly that much too little', () => {
  fc.assert(
    fc.property(number(1e-5, 5e-3), number(0.1, 1), number(0, 0.5), (dryFilm, volumeSolids, thinnerRatio) => {
      const solids = evaluate(solidsAfterThinning, { volumeSolids, thinnerRatio }).value;
      const wet = evaluate(wetFilmFromDry, { dryFilm, volumeSolids: solids }).value;
      const old = evaluate(wetFilmFromDry, { dryFilm, volumeSolids }).value;
      expect(wet / old).toBeCloseTo(1 + thinnerRatio, 9);
      expect(evaluate(dryAtOldGauge, { dry: dryFilm, thinnerRatio }).value / (old * solids)).toBeCloseTo(1, 9);
    }),
  );
});
