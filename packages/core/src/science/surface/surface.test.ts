import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { flatnessNumber, levelnessNumber, wornVolume } from './index.ts';

describe('surface', () => {
  test('flatness, levelness and wear (own arithmetic)', () => {
    expect(evaluate(flatnessNumber, { deviation: 0.03 * 0.0254, mean: 0.001 * 0.0254 }).value).toBeCloseTo(50.2, 1);
    expect(evaluate(levelnessNumber, { deviation: 0.2 * 0.0254, mean: 0.05 * 0.0254 }).value).toBeCloseTo(19.2, 1);
    expect(evaluate(wornVolume, { massLoss: 95e-6, density: 1150 }).value * 1e9).toBeCloseTo(82.6, 1);
    expect(evaluate(wornVolume, { massLoss: 60e-6, density: 1050 }).value * 1e9).toBeCloseTo(57.1, 1);
  });
});
