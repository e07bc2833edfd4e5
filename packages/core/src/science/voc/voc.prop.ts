import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { coatingVoc, materialVoc, mostThinner } from './index.ts';

const positive = (most: number) => fc.double({ min: 1e-3, max: most, noNaN: true });
const mixture = fc.record({
  organic: positive(5),
  water: positive(5),
  exempt: positive(5),
  solidVolume: positive(0.02),
});
type Mixture = { organic: number; water: number; exempt: number; solidVolume: number };

const inputs = ({ organic, water, exempt, solidVolume }: Mixture) => {
  const [waterVolume, exemptVolume] = [water / 1000, exempt / 791];
  return {
    volatileMass: organic + water + exempt,
    waterMass: water,
    exemptMass: exempt,
    coatingVolume: solidVolume + organic / 864 + waterVolume + exemptVolume,
    waterVolume,
    exemptVolume,
  };
};

test('the coating figure is never below the material figure, and water or exempt thinner leave it alone', () => {
  fc.assert(
    fc.property(mixture, positive(5), (m, more) => {
      const coating = evaluate(coatingVoc, inputs(m)).value;
      const { waterVolume: _w, exemptVolume: _e, ...masses } = inputs(m);
      expect(coating).toBeGreaterThanOrEqual(evaluate(materialVoc, masses).value - 1e-9);
      expect(evaluate(coatingVoc, inputs({ ...m, exempt: m.exempt + more })).value / coating).toBeCloseTo(1, 9);
      expect(evaluate(coatingVoc, inputs({ ...m, water: m.water + more })).value / coating).toBeCloseTo(1, 9);
    }),
  );
});

test('the most thinner brings the coating to its limit and a larger limit never allows less', () => {
  fc.assert(
    fc.property(
      positive(2),
      fc.double({ min: 0.005, max: 0.05, noNaN: true }),
      positive(600),
      (vocMass, netVolume, limit) => {
        const thinnerDensity = 864;
        const most = evaluate(mostThinner, { vocMass, netVolume, thinnerDensity, limit }).value;
        if (most > 0) expect((vocMass + most * thinnerDensity) / (netVolume + most) / limit).toBeCloseTo(1, 9);
        else expect(vocMass / netVolume).toBeGreaterThanOrEqual(limit * (1 - 1e-12));
        const more = evaluate(mostThinner, { vocMass, netVolume, thinnerDensity, limit: limit + 10 }).value;
        expect(more).toBeGreaterThanOrEqual(most);
      },
    ),
  );
});
