import DxfParser from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { bulgePoints, type DxfDrawing, dxfArea, inMetres, outlinesOf } from './dxf.ts';

const code = (...pairs: readonly (readonly [number, string | number])[]): string =>
  pairs.map(([group, value]) => `${group}\n${value}`).join('\n');

const drawing = (units: number | null, ...entities: readonly string[]): string =>
  [
    ...(units === null ? [] : [code([0, 'SECTION'], [2, 'HEADER'], [9, '$INSUNITS'], [70, units], [0, 'ENDSEC'])]),
    code([0, 'SECTION'], [2, 'ENTITIES']),
    ...entities,
    code([0, 'ENDSEC'], [0, 'EOF']),
  ].join('\n');

const polyline = (layer: string, points: readonly (readonly [number, number, number?])[]): string =>
  code(
    [0, 'LWPOLYLINE'],
    [8, layer],
    [90, points.length],
    [70, 1],
    ...points.flatMap(([x, y, bulge]): (readonly [number, number])[] => [
      [10, x],
      [20, y],
      ...(bulge === undefined ? [] : [[42, bulge] as const]),
    ]),
  );

const read = (text: string) => outlinesOf(new DxfParser().parseSync(text) as unknown as DxfDrawing);

describe('bulges (own arithmetic)', () => {
  test('bulge 1 over a chord of 2 is a half circle of radius 1: area π/2', () => {
    const ring = [[0, 0], ...bulgePoints([0, 0], [2, 0], 1)] as const;
    // Chords cut at most 1/400 of the radius off: below 0.4 % of the area.
    expect(Math.abs(dxfArea(ring) - Math.PI / 2) / (Math.PI / 2)).toBeLessThan(0.004);
    expect(ring.every(([x, y]) => Math.abs(Math.hypot(x - 1, y) - 1) < 1e-9)).toBe(true);
    // Counter-clockwise from left to right runs below the chord.
    expect(Math.min(...ring.map(([, y]) => y))).toBeLessThan(-0.99);
  });
  test('a bulge of tan 22.5° is a quarter circle', () => {
    const points = bulgePoints([1, 0], [0, 1], Math.tan(Math.PI / 8));
    expect(points.every(([x, y]) => Math.abs(Math.hypot(x, y) - 1) < 1e-9)).toBe(true);
    expect(points.at(-1)).toEqual([0, 1]);
  });
  test('a negative bulge bends the other way', () => {
    expect(Math.max(...bulgePoints([0, 0], [2, 0], -1).map(([, y]) => y))).toBeGreaterThan(0.99);
  });
});

describe('outlines of a drawing', () => {
  test('a closed polyline in millimetres becomes a room in metres', () => {
    const { outlines, unit } = read(
      drawing(
        4,
        polyline('floor', [
          [1000, 500],
          [7000, 500],
          [7000, 4500],
          [1000, 4500],
        ]),
      ),
    );
    expect(unit).toBe(4);
    expect(outlines).toHaveLength(1);
    expect(inMetres(outlines[0]?.ring ?? [], 0.001)).toEqual([
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ]);
    expect(outlines[0]?.layer).toBe('floor');
  });

  test('a bay with a round wall has the area of rectangle and half circle', () => {
    const { outlines } = read(
      drawing(
        6,
        polyline('floor', [
          [0, 0],
          [4, 0, 1],
          [4, 2],
          [0, 2],
        ]),
      ),
    );
    const area = dxfArea(outlines[0]?.ring ?? []);
    expect(Math.abs(area - (8 + Math.PI / 2)) / area).toBeLessThan(0.001);
  });

  test('lines in any order close to a ring; a loose line is no outline', () => {
    const line = (a: readonly [number, number], b: readonly [number, number]): string =>
      code([0, 'LINE'], [8, 'walls'], [10, a[0]], [20, a[1]], [11, b[0]], [21, b[1]]);
    const { outlines } = read(
      drawing(
        2,
        line([0, 0], [20, 0]),
        line([0, 21], [0, 0]),
        line([20, 21], [20, 0]),
        line([0, 21], [20, 21]),
        line([40, 0], [50, 0]),
      ),
    );
    expect(outlines).toHaveLength(1);
    expect(dxfArea(outlines[0]?.ring ?? [])).toBeCloseTo(420, 9);
  });

  test('a drawing without units asks; blocks are left out and counted', () => {
    const insert = code([0, 'INSERT'], [8, '0'], [2, 'DOOR'], [10, 1], [20, 1]);
    const { unit, leftOut } = read(
      drawing(
        null,
        polyline('0', [
          [0, 0],
          [1, 0],
          [1, 1],
        ]),
        insert,
      ),
    );
    expect(unit).toBeNull();
    expect(leftOut).toEqual({ INSERT: 1 });
    expect(
      read(
        drawing(
          0,
          polyline('0', [
            [0, 0],
            [1, 0],
            [1, 1],
          ]),
        ),
      ).unit,
    ).toBeNull();
  });

  test('the largest outline stands first', () => {
    const { outlines } = read(
      drawing(
        6,
        polyline('0', [
          [0, 0],
          [1, 0],
          [1, 1],
        ]),
        polyline('0', [
          [0, 0],
          [9, 0],
          [9, 9],
        ]),
      ),
    );
    expect(dxfArea(outlines[0]?.ring ?? [])).toBeCloseTo(40.5, 9);
  });
});
