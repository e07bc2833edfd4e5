import { describe, expect, test } from 'vitest';
import { deviationOf } from '../../kernel/band.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { outlineArea } from './outline-formulas.ts';
import { areaOf, type Ring } from './polygon.ts';
import { type RoomFromTape, roomFromTape, type TapedRoom, type TapeTrouble } from './room-from-tape.ts';
import { squareCorner, type TapeMeasure } from './tape-measures.ts';

const side = (from: number, to: number, length: number, deviation = 0.01): TapeMeasure => ({
  kind: 'distance',
  from,
  to,
  length,
  deviation,
});
function fitted(taped: TapedRoom): RoomFromTape {
  const result = roomFromTape(taped);
  if (!result.ok) throw new Error(result.trouble.code);
  return result.room;
}
function refused(taped: TapedRoom): TapeTrouble {
  const result = roomFromTape(taped);
  if (result.ok) throw new Error('accepted');
  return result.trouble;
}

const hall = [
  side(0, 1, 24.02),
  side(1, 2, 20.01),
  side(2, 3, 23.98),
  side(3, 0, 19.99),
  side(0, 2, 31.25),
  side(1, 3, 31.22),
];

// Own arithmetic throughout: the adjusted numbers of the hall were worked out apart from this code.
describe('a room from a tape', () => {
  test('four sides and both diagonals: one measure is redundant', () => {
    const room = fitted({ cornerCount: 4, measures: hall });
    expect(room.redundancy).toBe(1);
    const expected = [-0.0023, -0.0019, -0.0023, -0.0019, 0.003, 0.003];
    for (const [i, { residual }] of room.residuals.entries()) {
      expect(Math.abs(residual - (expected[i] as number))).toBeLessThan(1e-4);
    }
    expect(Math.abs(room.area - 479.9075)).toBeLessThan(1e-3);
    expect(Math.abs(room.weighedSquares * 1e-4 - 3.5845e-5)).toBeLessThan(1e-8);
    // With one redundant measure every residual is as suspicious as the next.
    expect(room.suspects).toEqual([]);
    expect(room.beyondChance).toBe(false);
  });

  test('four sides and one diagonal fix the room and check nothing', () => {
    const room = fitted({ cornerCount: 4, measures: hall.slice(0, 5) });
    expect(room.redundancy).toBe(0);
    expect(room.residuals.every(({ standardised }) => standardised === undefined)).toBe(true);
    expect(room.weighedSquares).toBeLessThan(1e-12);
  });

  test('sides alone are loose: n - 3 diagonals are asked for by name', () => {
    expect(refused({ cornerCount: 4, measures: hall.slice(0, 4) })).toEqual({
      code: 'tape-room-is-loose',
      missing: 1,
      diagonals: [[0, 2]],
    });
    const six = [4, 5, 4, 5, 4, 5].map((length, i) => side(i, (i + 1) % 6, length));
    expect(refused({ cornerCount: 6, measures: six })).toMatchObject({ code: 'tape-room-is-loose', missing: 3 });
  });

  test('a triangle needs no diagonal', () => {
    const room = fitted({ cornerCount: 3, measures: [side(0, 1, 13), side(1, 2, 14), side(2, 0, 15)] });
    expect(room.area).toBeCloseTo(84, 9);
  });

  test('square corners stand in for diagonals and are stated', () => {
    const measures = [side(0, 1, 6), side(1, 2, 4), side(2, 3, 6), side(3, 0, 4), squareCorner(0)];
    const room = fitted({ cornerCount: 4, measures });
    expect(room.assumed).toEqual([4]);
    expect(room.area).toBeCloseTo(24, 9);
  });

  test('an L-shaped room by its square corners, one of them re-entrant', () => {
    const lengths = [8, 3, 3, 3, 5, 6];
    const corners = [0, 1, 2, 4, 5].map((corner) => squareCorner(corner));
    const measures = [
      ...lengths.map((length, i) => side(i, (i + 1) % 6, length)),
      ...corners,
      squareCorner(3, 'three quarters'),
    ];
    const room = fitted({ cornerCount: 6, measures });
    expect(room.area).toBeCloseTo(39, 6);
    expect(room.redundancy).toBe(3);
  });

  test('a slip of the tape is named', () => {
    const plan: Ring = [
      [0, 0],
      [7, 0],
      [9, 4],
      [5, 7],
      [0, 6],
    ];
    const between = (from: number, to: number): TapeMeasure => {
      const [a, b] = [plan[from] as readonly [number, number], plan[to] as readonly [number, number]];
      return side(from, to, Math.hypot(a[0] - b[0], a[1] - b[1]), 0.005);
    };
    const pairs = [
      [0, 1],
      [1, 2],
      [2, 3],
      [3, 4],
      [4, 0],
      [0, 2],
      [0, 3],
      [1, 3],
      [1, 4],
      [2, 4],
    ] as const;
    const measures = pairs.map(([from, to]) => between(from, to));
    const honest = fitted({ cornerCount: 5, measures });
    expect(honest.area).toBeCloseTo(areaOf(plan), 9);
    for (const slip of [0, 3, 6, 8]) {
      const wrong = measures.map((m, i) =>
        i === slip && m.kind === 'distance' ? { ...m, length: m.length + 0.1 } : m,
      );
      const room = fitted({ cornerCount: 5, measures: wrong });
      expect(room.suspects).toEqual([slip]);
      expect(room.beyondChance).toBe(true);
    }
  });

  test('an offset fixes a corner from a base line; a sketch says which way it turns', () => {
    const measures: TapeMeasure[] = [
      side(0, 1, 8),
      side(1, 2, 5),
      side(0, 2, Math.hypot(8, 5)),
      side(2, 3, Math.hypot(3.7, 2)),
      { kind: 'offset', corner: 3, from: 0, to: 1, length: 3, deviation: 0.02 },
      side(3, 4, Math.hypot(4.3, 3)),
      side(4, 0, 6),
      side(2, 4, Math.hypot(8, 1)),
    ];
    const sketch: Ring = [
      [0, 0],
      [8, 0],
      [8, 5],
      [4.3, 3],
      [0, 6],
    ];
    const room = fitted({ cornerCount: 5, measures, sketch });
    expect(room.corners[3]?.[1]).toBeCloseTo(3, 6);
    expect(room.corners[3]?.[0]).toBeCloseTo(4.3, 6);
  });

  test('the causes of the corners carry the same deviation to the area', () => {
    const room = fitted({ cornerCount: 4, measures: hall, scaleError: 5e-4 });
    const trace = new Trace(new Ledger());
    const given = (axis: 0 | 1) =>
      room.corners.map((corner, i) =>
        trace.given(`${'xy'[axis]}${i}`, {
          value: corner[axis],
          unit: 'm',
          origin: 'reading',
          causes: axis === 0 ? (room.causes[i]?.x ?? {}) : (room.causes[i]?.y ?? {}),
        }),
      );
    const figure = trace.figure('area', outlineArea, { cornersX: given(0), cornersY: given(1) });
    const { 'tape scale': scale, ...readings } = figure.causes ?? {};
    expect(deviationOf(readings)).toBeCloseTo(room.areaDeviation, 6);
    expect(scale).toBeCloseTo(room.areaScaleDeviation, 6);
    expect(room.areaScaleDeviation).toBeCloseTo(0.48, 2);
  });

  test('bad input is named', () => {
    expect(refused({ cornerCount: 2, measures: [] }).code).toBe('tape-room-needs-three-corners');
    expect(refused({ cornerCount: 4, measures: [side(0, 4, 3)] })).toMatchObject({ measure: 0, corner: 4 });
    expect(refused({ cornerCount: 4, measures: [side(0, 0, 3)] }).code).toBe('tape-measure-names-no-corner');
    expect(refused({ cornerCount: 4, measures: [side(0, 1, -3)] }).code).toBe('tape-measure-not-positive');
    expect(
      refused({
        cornerCount: 4,
        measures: hall,
        sketch: [
          [0, 0],
          [1, 0],
          [1, 1],
        ],
      }).code,
    ).toBe('tape-sketch-has-other-corners');
    const torn = [side(0, 1, 2), side(1, 2, 2), side(2, 0, 90)];
    expect(refused({ cornerCount: 3, measures: torn }).code).toBe('tape-room-does-not-close');
  });
});
