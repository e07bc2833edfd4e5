import { epochOf, type SpreadSeen } from '@slabwright/core';
import type { CoatCells, SeamLines } from './api.ts';
import { joined, type Side } from './lines.ts';

type Planned = Extract<SpreadSeen['result'], { kind: 'plan' }>;

/** The squares of a planned coat in spreading order, with the lines its pours meet along. */
export function cellsOf({ layer, areas, day, start, result }: SpreadSeen): CoatCells | null {
  if (result.kind !== 'plan') return null;
  const { squares } = result.problem;
  const { order, clock } = result.best;
  const pick = (values: ArrayLike<number>): Float32Array => Float32Array.from(order, (s) => values[s] as number);
  const place = new Int32Array(squares.count).fill(-1);
  order.forEach((s, k) => {
    place[s] = k;
  });
  const sides = <T extends Int32Array | Uint8Array>(into: T, value: (side: number) => number): T => {
    order.forEach((s, k) => {
      for (let side = 0; side < 4; side++) into[4 * k + side] = value(4 * s + side);
    });
    return into;
  };
  return {
    layer,
    areas,
    ...(day === undefined ? {} : { day }),
    begun: epochOf(start),
    size: squares.cellM,
    x: pick(squares.x),
    y: pick(squares.y),
    minute: pick(clock.time),
    pour: Uint16Array.from(order, (s) => clock.pourOf[s] as number),
    beside: sides(new Int32Array(4 * order.length), (side) => place[squares.link[side] as number] ?? -1),
    free: sides(new Uint8Array(4 * order.length), (side) => squares.free[side] as number),
    narrow: sides(new Uint8Array(4 * order.length), (side) => squares.narrow[side] as number),
    doors: result.problem.doorSquares.map((s) => place[s] as number),
    ...meetings(result),
  };
}

/** Sides two pours share: those that must tie in, by pair, and those on a line where the film may end. */
function meetings({ problem, best }: Planned): Pick<CoatCells, 'seams' | 'ends'> {
  const { link, free, count, cellM, x, y } = problem.squares;
  const { pourOf } = best.clock;
  const seams = new Map<string, { pours: [number, number]; sides: Side[] }>();
  const ends: Side[] = [];
  for (let s = 0; s < count; s++) {
    for (let side = 0; side < 2; side++) {
      const other = link[4 * s + side] as number;
      if (other < 0 || pourOf[s] === pourOf[other]) continue;
      const [across, along] = side === 0 ? [x, y] : [y, x];
      const found: Side = {
        upright: side === 0,
        line: (across[s] as number) + cellM / 2,
        from: (along[s] as number) - cellM / 2,
      };
      if (free[4 * s + side]) {
        ends.push(found);
        continue;
      }
      const pours = [pourOf[s] as number, pourOf[other] as number].sort((a, b) => a - b) as [number, number];
      const key = pours.join('-');
      const one = seams.get(key) ?? { pours, sides: [] };
      one.sides.push(found);
      seams.set(key, one);
    }
  }
  return {
    seams: [...seams.values()].map(({ pours, sides }): SeamLines => ({ pours, lines: joined(sides, cellM) })),
    ends: joined(ends, cellM),
  };
}
