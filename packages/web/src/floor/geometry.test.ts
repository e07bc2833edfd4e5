import { describe, expect, test } from 'vitest';
import { barStep, extentOf, frameFor, pointsText, spreadLabels, wallRuns } from './geometry.ts';

const room = { left: 10, top: 20, right: 10, bottom: 20 };

describe('the floor in pixels', () => {
  test('keeps proportions, stands in the middle, and y goes up', () => {
    const extent = extentOf([
      [0, 0],
      [4, 2],
    ]);
    if (!extent) throw new Error('an extent was expected');
    const frame = frameFor(extent, 220, 220, room);
    expect(frame.scale).toBe(50);
    expect(frame.at([0, 0])).toEqual([10, 160]);
    expect(frame.at([4, 2])).toEqual([210, 60]);
    expect(pointsText(frame, [[2, 1]])).toBe('110,110');
  });

  test('nothing drawn has no extent; one point is no division by zero', () => {
    expect(extentOf([])).toBeNull();
    const frame = frameFor({ least: [1, 1], most: [1, 1] }, 100, 100, room);
    expect(frame.at([1, 1]).every(Number.isFinite)).toBe(true);
  });

  test('a drawing with less room than its margins is still finite', () => {
    expect(frameFor({ least: [0, 0], most: [5, 5] }, 10, 10, room).scale).toBeGreaterThan(0);
  });
});

test('the scale bar is round in the reader’s units', () => {
  expect(barStep(50, 120, false)).toBe(2);
  expect(barStep(50, 120, true)).toBeCloseTo(5 * 0.3048, 9);
});

describe('labels in one column', () => {
  test('stay where they are when there is room', () => {
    expect(spreadLabels([50, 200], 34, 10, 400)).toEqual([50, 200]);
  });
  test('move apart and keep their order', () => {
    const places = spreadLabels([120, 100, 110], 34, 10, 400);
    expect(places[1]).toBeLessThan(places[2] as number);
    expect((places[2] as number) - (places[1] as number)).toBeGreaterThanOrEqual(34);
    expect((places[0] as number) - (places[2] as number)).toBeGreaterThanOrEqual(34);
  });
  test('stay above the lower edge', () => {
    const places = spreadLabels([390, 395], 34, 10, 400);
    expect(Math.max(...places)).toBeLessThanOrEqual(400);
    expect(Math.abs((places[0] as number) - (places[1] as number))).toBeGreaterThanOrEqual(34);
  });
});

describe('walls less their openings', () => {
  const square = [
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
  ] as const;
  test('a door in a wall parts it in two', () => {
    const runs = wallRuns(square, [
      [
        [1, 0],
        [3, 0],
      ],
    ]);
    expect(runs).toHaveLength(5);
    expect(runs.slice(0, 2)).toEqual([
      [
        [0, 0],
        [1, 0],
      ],
      [
        [3, 0],
        [4, 0],
      ],
    ]);
  });
  test('a door as wide as the wall leaves none of it, whichever way it was drawn', () => {
    expect(
      wallRuns(square, [
        [
          [4, 4],
          [4, 0],
        ],
      ]),
    ).toHaveLength(3);
  });
  test('openings elsewhere change nothing', () => {
    expect(
      wallRuns(square, [
        [
          [1, 2],
          [2, 2],
        ],
      ]),
    ).toHaveLength(4);
  });
});
