import { describe, expect, it } from 'vitest';
import { planSpread, type SpreadCase, spreadProblem } from './index.ts';
import type { Point } from './types.ts';

const effort = { candidates: 60, nodes: 0 };

/**
 * Regression: a column of 0.4 m and the end of a wall 0.445 m beside it, with people of 0.45 m. The checker once took the
 * gap for wide enough, since it felt its way in whole centimetres, and walked 3 m less than the planner.
 */
const columnBesideWall: SpreadCase = {
  name: 'column beside a wall',
  outline: [
    [0, 0],
    [3.5755635413753, 0],
    [3.5755635413753, 4.821636900558254],
    [0, 4.821636900558254],
  ],
  holes: [
    [
      [1.3, 1.2],
      [1.7, 1.2],
      [1.7, 1.6],
      [1.3, 1.6],
    ],
  ],
  walls: [
    [
      [2.1453381248251797, 1.5],
      [2.1453381248251797, 4.821636900558254],
    ],
  ],
  exits: [
    { a: [1, 0], b: [2, 0], outside: true },
    { a: [0, 1], b: [0, 2], outside: true },
  ],
  stopLines: [{ a: [1.78778177068765, -1], b: [1.78778177068765, 5.821636900558254], kind: 'joint' }],
  mixAt: { exit: 0 },
  crew: {
    people: 3,
    dedicatedMixer: true,
    rateM2PerMinPerPerson: 1.5,
    laneM: 0.5,
    walkMPerMin: 50,
    spikedShoes: true,
  },
  batch: {
    litres: 2.5,
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
        factor: 0.8,
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

/** Two rooms of one size with a wall between, `at` metres from the left, and a gap in it. */
const parted = (at: number, gap: number): SpreadCase => ({
  ...columnBesideWall,
  name: 'parted',
  outline: [
    [0, 0],
    [6, 0],
    [6, 4],
    [0, 4],
  ],
  holes: [],
  walls: [
    [
      [at, 0],
      [at, 2.25 - gap / 2],
    ],
    [
      [at, 2.25 + gap / 2],
      [at, 4],
    ],
  ],
  exits: [{ a: [0.5, 0], b: [1.5, 0], outside: true }],
  stopLines: [],
  crew: { ...columnBesideWall.crew, spikedShoes: false },
});

const planOf = (question: SpreadCase) => planSpread(question, { areas: 'clipped', seed: 900, effort });

describe('planner and checker take the same ways', () => {
  it('past a column that stands too near a wall', () => {
    const result = planOf(columnBesideWall);
    if (result.kind !== 'plan') throw new Error('no plan');
    expect(result.check.minutes).toBeCloseTo(result.best.score.minutes, 9);
    expect(result.check.walkM).toBeCloseTo(result.best.score.walkM, 9);
  });

  it('and past one that stands just far enough', () => {
    const moved: SpreadCase = {
      ...columnBesideWall,
      // 0.46 m
      holes: columnBesideWall.holes.map((ring) => ring.map(([x, y]): Point => [x - 0.015, y])),
    };
    const result = planOf(moved);
    if (result.kind !== 'plan') throw new Error('no plan');
    expect(result.check.walkM).toBeCloseTo(result.best.score.walkM, 9);
    const narrow = (question: SpreadCase) =>
      spreadProblem(question, 'clipped').squares.narrow.reduce((sum, one) => sum + one, 0);
    expect(narrow(moved)).toBeLessThan(narrow(columnBesideWall));
  });
});

describe('a wall through the middles of squares', () => {
  it('leaves them to the room on one side', () => {
    const result = planOf(parted(3.25, 1));
    if (result.kind !== 'plan') throw new Error(`no plan: ${JSON.stringify(result)}`);
    expect(result.check.breaks).toEqual([]);
    expect(result.check.walkM).toBeCloseTo(result.best.score.walkM, 9);
  });

  it('has a gap that is measured all the same, to the width asked for', () => {
    for (const at of [3.25, 3.3]) {
      const narrow = planOf(parted(at, 0.44));
      expect(narrow.kind === 'issues' && narrow.issues[0]?.code).toBe('spread/passage-too-narrow');
      expect(planOf(parted(at, 0.45)).kind).toBe('plan');
    }
  });

  it('and a joint there frees one row of edges, not two', () => {
    const jointed: SpreadCase = {
      ...parted(3, 3),
      walls: [],
      stopLines: [{ a: [3.25, 0], b: [3.25, 4], kind: 'joint' }],
    };
    const { squares } = spreadProblem(jointed, 'clipped');
    expect(squares.free.reduce((sum, one) => sum + one, 0)).toBe(2 * squares.rows);
  });
});
