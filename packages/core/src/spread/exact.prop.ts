import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactLargestAge, largestAge, possibleWithin } from './exact.ts';
import { type SpreadProblem, spreadProblem } from './problem.ts';
import type { Point, SpreadCase } from './types.ts';

/** A floor of a few squares of 1 m: a rectangle with corners cut out, one door side, perhaps a joint. */
const floors = fc
  .record({
    wide: fc.integer({ min: 2, max: 5 }),
    high: fc.integer({ min: 2, max: 5 }),
    bite: fc.integer({ min: 0, max: 2 }),
    door: fc.integer({ min: 0, max: 4 }),
    joint: fc.integer({ min: 0, max: 4 }),
    people: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ wide, high, bite, door, joint, people }): SpreadCase => {
    const cut = Math.min(bite, wide - 1, high - 1);
    const outline: Point[] =
      cut > 0
        ? [
            [0, 0],
            [wide, 0],
            [wide, high - cut],
            [wide - cut, high - cut],
            [wide - cut, high],
            [0, high],
          ]
        : [
            [0, 0],
            [wide, 0],
            [wide, high],
            [0, high],
          ];
    const at = Math.min(door, wide - 1);
    return {
      name: 'floor',
      outline,
      holes: [],
      walls: [],
      exits: [{ a: [at + 0.1, 0], b: [at + 0.9, 0], outside: true }],
      stopLines: joint > 0 && joint < wide ? [{ a: [joint, 0], b: [joint, high], kind: 'joint' }] : [],
      mixAt: { exit: 0 },
      crew: { people, dedicatedMixer: false, rateM2PerMinPerPerson: 1, laneM: 1, walkMPerMin: 50 },
      batch: { litres: 2, litresPerM2: 0.3, mixMin: 1, handoverMin: 1 },
      clock: { startMin: 480, workingMin: [[480, 30]], openMin: [[480, 20]] },
      cellM: 1,
    };
  });

/** Moments when a square takes `each` minutes and every seventh waits `stop` more. */
const clockOf = (count: number, each: number, stop: number) =>
  Float64Array.from({ length: count }, (_, k) => k * each + stop * Math.floor(k / 7));

function optimum({ squares, doorSquares }: SpreadProblem, each: number, stop: number): number {
  const clock = clockOf(squares.count, each, stop);
  const result = exactLargestAge({ squares, doorSquares, clock, nodes: 300_000 });
  expect(result.proved).toBe(true);
  return result.age;
}

/** Smallest largest age over every order that paints nobody in, each one tried. */
function leastOfAll({ squares, doorSquares }: SpreadProblem, clock: Float64Array): number {
  const { count } = squares;
  const order = new Int32Array(count);
  const later = new Uint8Array(count);
  let least = Infinity;
  const grow = (place: number): void => {
    if (place < 0) {
      least = Math.min(least, largestAge(squares, order, clock));
      return;
    }
    for (let s = 0; s < count; s++) {
      if (later[s]) continue;
      const touches = [0, 1, 2, 3].some((side) => later[squares.link[4 * s + side] as number] === 1);
      if (!touches && !doorSquares.includes(s)) continue;
      later[s] = 1;
      order[place] = s;
      grow(place - 1);
      later[s] = 0;
    }
  };
  grow(count - 1);
  return least;
}

const turned = ([x, y]: Point): Point => [-y, x];
const runs = { numRuns: 25 };

describe('laws of the best possible order', () => {
  it('freeing a link never makes it worse', () => {
    fc.assert(
      fc.property(floors, fc.integer({ min: 1, max: 4 }), fc.nat(3), (floor, row, stop) => {
        const freed: SpreadCase = {
          ...floor,
          stopLines: [...floor.stopLines, { a: [-1, row], b: [9, row], kind: 'tape' }],
        };
        const before = optimum(spreadProblem(floor, 'whole'), 1, stop);
        expect(optimum(spreadProblem(freed, 'whole'), 1, stop)).toBeLessThanOrEqual(before);
      }),
      runs,
    );
  });

  it('another person, who may stand idle, never makes it worse', () => {
    fc.assert(
      fc.property(floors, fc.nat(3), (floor, stop) => {
        const problem = spreadProblem(floor, 'whole');
        const { people } = floor.crew;
        const before = optimum(problem, 1 / people, stop);
        expect(optimum(problem, 1 / (people + 1), stop)).toBeLessThanOrEqual(before + 1e-9);
      }),
      runs,
    );
  });

  it('what is possible within an open time is possible within a longer one, from the best possible on', () => {
    const minutes = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(floors, minutes, minutes, (floor, one, other) => {
        const problem = spreadProblem(floor, 'whole');
        const { squares, doorSquares } = problem;
        const question = { squares, doorSquares, clock: clockOf(squares.count, 1, 2), nodes: 300_000 };
        const [open, longer] = [Math.min(one, other), Math.max(one, other)];
        const short = possibleWithin(question, open);
        const long = possibleWithin(question, longer);
        expect([short, long]).not.toContain('limit');
        if (short === 'yes') expect(long).toBe('yes');
        const best = optimum(problem, 1, 2);
        expect(short).toBe(open >= best - 1e-7 ? 'yes' : 'no');
        expect(long).toBe(longer >= best - 1e-7 ? 'yes' : 'no');
      }),
      runs,
    );
  });

  it('is what trying every order gives', () => {
    fc.assert(
      fc.property(floors, fc.nat(3), (floor, stop) => {
        const problem = spreadProblem(floor, 'whole');
        const { count } = problem.squares;
        fc.pre(count <= 8);
        const clock = clockOf(count, 1, stop);
        expect(optimum(problem, 1, stop)).toBe(leastOfAll(problem, clock));
      }),
      { numRuns: 12 },
    );
  });

  it('another door never makes it worse', () => {
    fc.assert(
      fc.property(floors, fc.nat(3), (floor, stop) => {
        const [, , , high] = [0, 0, 0, Math.max(...floor.outline.map(([, y]) => y))];
        const two: SpreadCase = {
          ...floor,
          exits: [...floor.exits, { a: [0, high - 0.9], b: [0, high - 0.1], outside: true }],
        };
        const before = optimum(spreadProblem(floor, 'whole'), 1, stop);
        expect(optimum(spreadProblem(two, 'whole'), 1, stop)).toBeLessThanOrEqual(before);
      }),
      runs,
    );
  });

  it('a quarter turn of a floor that fits the grid changes nothing', () => {
    fc.assert(
      fc.property(floors, fc.nat(3), (floor, stop) => {
        const quarter: SpreadCase = {
          ...floor,
          outline: floor.outline.map(turned),
          exits: floor.exits.map(({ a, b, outside }) => ({ a: turned(a), b: turned(b), outside })),
          stopLines: floor.stopLines.map(({ a, b, kind }) => ({ a: turned(a), b: turned(b), kind })),
        };
        const straight = optimum(spreadProblem(floor, 'whole'), 1, stop);
        expect(optimum(spreadProblem(quarter, 'whole'), 1, stop)).toBe(straight);
      }),
      runs,
    );
  });
});
