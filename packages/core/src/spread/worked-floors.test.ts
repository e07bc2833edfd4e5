import { describe, expect, it } from 'vitest';
import { planSpread, type SpreadCase } from './index.ts';
import type { Ring } from './types.ts';

/**
 * Three floors worked before by hand and by another simulation (squares of 0.1 m, Manhattan walks at 40 m/min). Own
 * arithmetic, not validation: the two clocks differ in the turns at lane ends, so only "not older" is asked, with lanes
 * of the same width or close to it.
 */
function floor(
  outline: Ring,
  holes: readonly Ring[],
  door: readonly [number, number, number, number],
  laneM: number,
  openMin: number,
): SpreadCase {
  return {
    name: 'worked floor',
    outline,
    holes,
    walls: [],
    exits: [{ a: [door[0], door[1]], b: [door[2], door[3]], outside: true }],
    stopLines: [],
    mixAt: { exit: 0 },
    crew: { people: 2, dedicatedMixer: true, rateM2PerMinPerPerson: 2.5, laneM, walkMPerMin: 40 },
    batch: { litres: 5.7, litresPerM2: 0.3, mixMin: 5, handoverMin: 0 },
    clock: { startMin: 480, workingMin: [[480, 20]], openMin: [[480, openMin]] },
    cellM: laneM,
  };
}

describe('floors worked before', () => {
  it.each([
    [
      'garage 6.1 × 6.1 m, lanes of 1.22 m',
      floor(
        [
          [0, 0],
          [6.1, 0],
          [6.1, 6.1],
          [0, 6.1],
        ],
        [],
        [0.6, 0, 5.5, 0],
        1.22,
        8,
      ),
      3.35,
    ],
    [
      'L of 56 m², lanes of 1 m',
      floor(
        [
          [0, 0],
          [9, 0],
          [9, 4],
          [5, 4],
          [5, 8],
          [0, 8],
        ],
        [],
        [9, 1.5, 9, 2.4],
        1,
        6,
      ),
      4.39,
    ],
    [
      'ring round a plinth, lanes of 1 m',
      floor(
        [
          [0, 0],
          [10, 0],
          [10, 10],
          [0, 10],
        ],
        [
          [
            [3, 3],
            [7, 3],
            [7, 7],
            [3, 7],
          ],
        ],
        [4.5, 0, 5.5, 0],
        1,
        8,
      ),
      6.15,
    ],
  ] as const)('%s', (_, question, worked) => {
    const result = planSpread(question, { areas: 'whole', seed: 1 });
    expect(result.kind).toBe('plan');
    if (result.kind === 'plan') expect(result.check.maxAgeMin).toBeLessThanOrEqual(worked);
  });
});
