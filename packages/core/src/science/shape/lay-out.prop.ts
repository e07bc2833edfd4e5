import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layOut, type RoomShape } from './lay-out.ts';
import { areaOf, type Point, wallLengths } from './polygon.ts';

const side = fc.double({ min: 2, max: 9, noNaN: true });

/** Rooms in a row, each drawn in coordinates turned and moved at random. */
const row = fc
  .array(
    fc.record({ width: side, depth: side, turn: fc.double({ min: 0, max: 6.28, noNaN: true }), x: side, y: side }),
    {
      minLength: 2,
      maxLength: 5,
    },
  )
  .map((rooms) => {
    const put = (i: number, [px, py]: Point): Point => {
      const { turn, x, y } = rooms[i] as (typeof rooms)[number];
      return [Math.cos(turn) * px - Math.sin(turn) * py + x, Math.sin(turn) * px + Math.cos(turn) * py + y];
    };
    const areas = rooms.map(({ width, depth }, i): RoomShape => {
      const corners: Point[] = [
        [0, 0],
        [width, 0],
        [width, depth],
        [0, depth],
      ];
      return { id: `${i}`, outline: corners.map((p) => put(i, p)) };
    });
    const doors = rooms.slice(1).map((_, i) => {
      const { width } = rooms[i] as (typeof rooms)[number];
      return {
        id: `${i}`,
        sides: [
          { area: `${i}`, from: put(i, [width, 0.5]), to: put(i, [width, 1.4]) },
          { area: `${i + 1}`, from: put(i + 1, [0, 0.5]), to: put(i + 1, [0, 1.4]) },
        ] as const,
        wall: 0.15,
      };
    });
    return { areas, doors };
  });

test('rooms are moved, never stretched; the doorways meet across the wall and nothing overlaps', () => {
  fc.assert(
    fc.property(row, ({ areas, doors }) => {
      const laid = layOut(areas, doors);
      expect(laid.unplaced).toEqual([]);
      expect(laid.overlaps).toEqual([]);
      for (const { gap } of laid.doors) expect(gap).toBeLessThan(1e-6);
      laid.rooms.forEach(({ outline, group }, i) => {
        expect(group).toBe(0);
        const own = areas[i] as RoomShape;
        expect(areaOf(outline)).toBeCloseTo(areaOf(own.outline), 6);
        wallLengths(outline).forEach((length, k) => {
          expect(length).toBeCloseTo(wallLengths(own.outline)[k] as number, 6);
        });
      });
    }),
  );
});
