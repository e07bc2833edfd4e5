import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planSpread, type SpreadCase, type SpreadResult } from './index.ts';
import type { Point } from './types.ts';

/** Floors with slanted corners, a column, a joint, odd litres and different crews. */
const floors = fc
  .record({
    wide: fc.double({ min: 3, max: 9, noNaN: true }),
    high: fc.double({ min: 3, max: 9, noNaN: true }),
    slant: fc.double({ min: 0, max: 1.4, noNaN: true }),
    column: fc.boolean(),
    joint: fc.boolean(),
    litres: fc.double({ min: 2.5, max: 9, noNaN: true }),
    people: fc.integer({ min: 2, max: 5 }),
    mixer: fc.boolean(),
    cut: fc.boolean(),
    spiked: fc.boolean(),
    porous: fc.double({ min: 0.8, max: 1.6, noNaN: true }),
    wall: fc.boolean(),
    second: fc.constantFrom('none', 'outside', 'inside'),
    seed: fc.nat(1000),
  })
  .map((f) => {
    const outline: Point[] = [
      [0, 0],
      [f.wide, 0],
      [f.wide, f.high - f.slant],
      [f.wide - f.slant, f.high],
      [0, f.high],
    ];
    const question: SpreadCase = {
      name: 'floor',
      outline,
      holes: f.column
        ? [
            [
              [1.3, 1.2],
              [1.7, 1.2],
              [1.7, 1.6],
              [1.3, 1.6],
            ],
          ]
        : [],
      // a wall with an opening of 1.5 m at its lower end
      walls: f.wall
        ? [
            [
              [f.wide * 0.6, 1.5],
              [f.wide * 0.6, f.high],
            ],
          ]
        : [],
      exits: [
        { a: [1, 0], b: [2, 0], outside: true },
        ...(f.second === 'none' ? [] : [{ a: [0, 1] as const, b: [0, 2] as const, outside: f.second === 'outside' }]),
      ],
      stopLines: f.joint ? [{ a: [f.wide / 2, -1], b: [f.wide / 2, f.high + 1], kind: 'joint' }] : [],
      mixAt: { exit: 0 },
      crew: {
        people: f.people,
        dedicatedMixer: f.mixer,
        rateM2PerMinPerPerson: 1.5,
        laneM: 0.5,
        walkMPerMin: 50,
        ...(f.cut ? { cutMPerMinPerPerson: 4 } : {}),
        spikedShoes: f.spiked,
      },
      batch: {
        litres: f.litres,
        litresPerM2: 0.3,
        mixMin: 4,
        handoverMin: 1,
        zones: [
          {
            poly: [
              [0, 0],
              [2, 0],
              [2, 2],
              [0, 2],
            ],
            factor: f.porous,
          },
        ],
      },
      clock: {
        startMin: 480,
        workingMin: [
          [480, 40],
          [900, 25],
        ],
        openMin: [
          [480, 25],
          [900, 12],
        ],
      },
      cellM: 0.5,
    };
    return { question, seed: f.seed };
  });

const effort = { candidates: 60, nodes: 0 };
const score = (result: SpreadResult): number =>
  result.kind === 'plan' ? result.best.score.score : result.kind === 'none' ? result.leastBad.score.score : Number.NaN;

describe('laws of the planner', () => {
  it('planner and checker agree, every number is finite, litres add up to the drawn floor', () => {
    fc.assert(
      fc.property(floors, ({ question, seed }) => {
        const result = planSpread(question, { areas: 'clipped', seed, effort });
        if (result.kind === 'issues') throw new Error(JSON.stringify(result.issues));
        const best = result.kind === 'plan' ? result.best : result.leastBad;
        for (const value of Object.values(best.score)) expect(Number.isFinite(value)).toBe(true);
        expect(result.check.minutes).toBeCloseTo(best.score.minutes, 6);
        expect(result.check.maxAgeMin).toBeCloseTo(best.score.maxAgeMin, 6);
        expect(result.check.walkM).toBeCloseTo(best.score.walkM, 6);
        expect(result.check.seamM).toBeCloseTo(best.score.seamM, 6);
        expect(result.check.coldM).toBeCloseTo(best.score.coldM, 6);
        expect(result.check.lateMin).toBeCloseTo(best.score.lateMin, 6);
        // what the checker refuses is only what the score already counts as late or cold
        const late = ['check/open-edge', 'check/working-time'];
        expect(result.check.breaks.filter(({ code }) => !late.includes(code))).toEqual([]);
        if (result.kind === 'none') expect(best.score.coldM + best.score.lateMin).toBeGreaterThan(0);
        expect(result.check.leftoverL).toBeLessThan(question.batch.litres);
        expect(result.check.leftoverL).toBeGreaterThan(-1e-6);
      }),
      { numRuns: 40, endOnFailure: true },
    );
  });

  it('same input, same seed, same plan', () => {
    fc.assert(
      fc.property(floors, ({ question, seed }) => {
        const first = planSpread(question, { areas: 'clipped', seed, effort });
        const again = planSpread(question, { areas: 'clipped', seed, effort });
        expect(score(again)).toBe(score(first));
      }),
      { numRuns: 10, endOnFailure: true },
    );
  });

  it('the plan of a tighter case is among the candidates of the looser one', () => {
    fc.assert(
      fc.property(floors, fc.double({ min: 1, max: 3, noNaN: true }), ({ question, seed }, longer) => {
        const tight = planSpread(question, { areas: 'clipped', seed, effort });
        if (tight.kind !== 'plan') return;
        const loose: SpreadCase = {
          ...question,
          stopLines: [...question.stopLines, { a: [-1, 2.5], b: [99, 2.5], kind: 'tape' }],
          clock: {
            ...question.clock,
            openMin: question.clock.openMin.map(([at, value]) => [at, value * longer] as const),
          },
        };
        const result = planSpread(loose, { areas: 'clipped', seed, effort, also: [tight.solution] });
        expect(result.kind).toBe('plan');
        expect(score(result)).toBeLessThanOrEqual(score(tight) + 1 / 3840);
      }),
      { numRuns: 25, endOnFailure: true },
    );
  });
});
