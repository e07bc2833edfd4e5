import { describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import {
  areaLessHoles,
  areaOf,
  edgeLength,
  flightFace,
  floorArea,
  holdsPoint,
  holeOutside,
  holesOverlap,
  isCounterClockwise,
  misclosure,
  outlineArea,
  outlinePerimeter,
  outlineWalls,
  quadrilateralArea,
  type Ring,
  selfCrossing,
  signedArea,
  triangleArea,
  turned,
} from './index.ts';

const lRoom: Ring = [
  [0, 0],
  [8, 0],
  [8, 3],
  [5, 3],
  [5, 6],
  [0, 6],
];
const column: Ring = [
  [1, 1],
  [1.4, 1],
  [1.4, 1.4],
  [1, 1.4],
];
const lists = (ring: Ring) => ({ cornersX: ring.map(([x]) => x), cornersY: ring.map(([, y]) => y) });
const codeOf = (act: () => unknown): string => {
  try {
    act();
  } catch (trouble) {
    if (trouble instanceof FormulaRefused) return trouble.refusal.code;
    throw trouble;
  }
  return 'no refusal';
};

// Own arithmetic unless said otherwise; published values stand in the reference rows.
describe('outlines', () => {
  test('an L-shaped room: the direction changes the sign only', () => {
    expect(signedArea(lRoom)).toBe(39);
    expect(signedArea([...lRoom].reverse())).toBe(-39);
    expect(isCounterClockwise(turned([...lRoom].reverse()))).toBe(true);
    expect(turned(lRoom, false)[0]).toEqual([0, 0]);
    expect(floorArea(lRoom, [column])).toBeCloseTo(38.84, 12);
    expect(edgeLength(lRoom, [column])).toBeCloseTo(28 + 1.6, 12);
  });

  test('area, perimeter and walls as formulas', () => {
    expect(evaluate(outlineArea, lists(lRoom)).value).toBe(39);
    expect(evaluate(outlinePerimeter, lists(lRoom)).value).toBe(28);
    expect(evaluate(outlineWalls, lists(lRoom)).value).toEqual([8, 3, 3, 3, 5, 6]);
    expect(evaluate(areaLessHoles, { grossArea: 39, holeAreas: [0.16] }).value).toBeCloseTo(38.84, 12);
  });

  test('the invented garage: 435 square feet, 88 ft around', () => {
    const feet = [
      [0, 0],
      [20, 0],
      [20, 21],
      [8, 21],
      [8, 24],
      [3, 24],
      [3, 21],
      [0, 21],
    ] as const;
    const garage: Ring = feet.map(([x, y]) => [x * 0.3048, y * 0.3048]);
    expect(areaOf(garage) / 0.3048 ** 2).toBeCloseTo(435, 9);
    expect(edgeLength(garage) / 0.3048).toBeCloseTo(88, 9);
    expect(selfCrossing(garage)).toBeUndefined();
  });

  test('what is no outline is refused with its reason', () => {
    const bow = lists([
      [0, 0],
      [4, 3],
      [4, 0],
      [0, 3],
    ]);
    expect(codeOf(() => evaluate(outlineArea, bow))).toBe('outline-crosses-itself');
    expect(codeOf(() => evaluate(outlineArea, { cornersX: [0, 1], cornersY: [0, 1] }))).toBe(
      'outline-needs-three-corners',
    );
    expect(codeOf(() => evaluate(outlineArea, { cornersX: [0, 1, 2], cornersY: [0, 1] }))).toBe(
      'formula-lists-differ-in-length',
    );
    expect(codeOf(() => evaluate(areaLessHoles, { grossArea: 1, holeAreas: [2] }))).toBe('holes-larger-than-the-floor');
  });
});

describe('crossing', () => {
  test('names the walls that cross, touch, fold back or have no length', () => {
    expect(selfCrossing(lRoom)).toBeUndefined();
    expect(
      selfCrossing([
        [0, 0],
        [4, 3],
        [4, 0],
        [0, 3],
      ]),
    ).toEqual({ first: 0, second: 2 });
    expect(
      selfCrossing([
        [0, 0],
        [4, 0],
        [4, 0],
        [0, 3],
      ]),
    ).toEqual({ first: 1, second: 1 });
    expect(
      selfCrossing([
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 3],
      ]),
    ).toEqual({ first: 0, second: 1 });
    // A corner that touches a far wall.
    expect(
      selfCrossing([
        [0, 0],
        [6, 0],
        [6, 4],
        [3, 0],
        [0, 4],
      ]),
    ).toEqual({ first: 0, second: 2 });
  });

  test('holes lie inside the outline and apart', () => {
    const shifted = (ring: Ring, dx: number, dy: number): Ring => ring.map(([x, y]) => [x + dx, y + dy]);
    expect(holeOutside(lRoom, [column])).toBeUndefined();
    expect(holeOutside(lRoom, [column, shifted(column, 5, 3)])).toBe(1);
    expect(holeOutside(lRoom, [shifted(column, -1, 0)])).toBe(0);
    expect(holesOverlap([column, shifted(column, 1, 0)])).toBeUndefined();
    expect(holesOverlap([column, shifted(column, 0.2, 0.1)])).toEqual([0, 1]);
    expect(holdsPoint(lRoom, [6, 5])).toBe(false);
    expect(holdsPoint(lRoom, [8, 2])).toBe(true);
  });
});

describe('sides', () => {
  test('triangle 13-14-15 and a quadrilateral on its diagonal', () => {
    expect(evaluate(triangleArea, { sideA: 13, sideB: 14, sideC: 15 }).value).toBe(84);
    const q = { sideAB: 4, sideBC: 5, sideCD: 6, sideDA: 7, diagonalAC: 7.5 };
    expect(evaluate(quadrilateralArea, q).value).toBeCloseTo(28.9764, 4);
    expect(codeOf(() => evaluate(triangleArea, { sideA: 1, sideB: 2, sideC: 4 }))).toBe('sides-do-not-close');
    expect(codeOf(() => evaluate(quadrilateralArea, { ...q, diagonalAC: 14 }))).toBe('sides-do-not-close');
  });

  test('part of a riser is refused', () => {
    const flight = { riserCount: 5, riser: 0.18, tread: 0.28, width: 0.9 };
    expect(evaluate(flightFace, flight).value).toBeCloseTo(1.818, 12);
    expect(codeOf(() => evaluate(flightFace, { ...flight, riserCount: 4.5 }))).toBe('count-must-be-whole');
  });

  test('a closed round has no gap', () => {
    expect(evaluate(misclosure, { departures: [3, 0, -3], latitudes: [0, 4, -4] }).value).toBe(0);
  });
});
