import { describe, expect, it } from 'vitest';
import { candidateOf } from './candidate.ts';
import { sameSideAge, toAndFroAge, widestSameSide, widestToAndFro } from './lane-age.ts';
import { planBack } from './plan-back.ts';
import { spreadProblem } from './problem.ts';
import { keyOf, toUnit } from './sketch.ts';
import type { SpreadCase } from './types.ts';

const front = { widthM: 6.1, laneM: 1.22, rateM2PerMin: 2.5, walkMPerMin: 40 };

describe('ages of a plain front', () => {
  it('by own arithmetic', () => {
    expect(sameSideAge(front)).toBeCloseTo((6.1 * 1.22) / 2.5 + 6.1 / 40, 12);
    expect(toAndFroAge(front)).toBeCloseTo((2 * 6.1 * 1.22) / 2.5, 12);
  });

  it('widest fronts are the inverse', () => {
    const widthM = widestSameSide(front, 8, 1.5);
    expect(sameSideAge({ ...front, widthM })).toBeCloseTo(8 / 1.5, 12);
    const other = widestToAndFro(front, 8, 1.5);
    expect(toAndFroAge({ ...front, widthM: other })).toBeCloseTo(8 / 1.5, 12);
  });

  it('a planned rectangle poured from one batch shows them, to within a lane end', () => {
    const floor: SpreadCase = {
      name: 'rectangle',
      outline: [
        [0, 0],
        [8, 0],
        [8, 12],
        [0, 12],
      ],
      holes: [],
      walls: [],
      exits: [{ a: [0, 0], b: [8, 0], outside: true }],
      stopLines: [],
      mixAt: { exit: 0 },
      crew: { people: 3, dedicatedMixer: true, rateM2PerMinPerPerson: 1, laneM: 0.5, walkMPerMin: 40 },
      batch: { litres: 100, litresPerM2: 0.3, mixMin: 4, handoverMin: 1 },
      clock: { startMin: 480, workingMin: [[480, 90]], openMin: [[480, 90]] },
      cellM: 0.5,
    };
    const problem = spreadProblem(floor, 'whole');
    const { squares } = problem;
    const turn = new Int32Array(squares.count);
    const along = toUnit(squares.x);
    const age = (lanes: 'one way' | 'to and fro') =>
      candidateOf(
        problem,
        planBack(problem, keyOf(squares, { name: lanes, turn, field: squares.y, along, lanes })),
        lanes,
      ).score.maxAgeMin;
    const sides = { widthM: 8, laneM: 0.5, rateM2PerMin: 2, walkMPerMin: 40 };
    const square = 0.25 / 2;
    // the walk goes from middle to middle of the end squares and the first square of it is part of spreading
    const shorter = (2 * 0.5) / 40;
    expect(Math.abs(age('one way') - sameSideAge(sides))).toBeLessThanOrEqual(shorter);
    expect(Math.abs(age('to and fro') - toAndFroAge(sides))).toBeLessThanOrEqual(square + 1e-9);
  });
});
