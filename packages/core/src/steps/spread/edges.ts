import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { FloorSquares } from '../../spread/index.ts';
import { leastInSequence } from '../formulas/spread.ts';
import { type Door, type FloorPart, roomAt } from './floor.ts';

type Point = readonly [number, number];

/** A side of a square where the film ends against dry floor. */
export interface Side {
  readonly upright: boolean;
  /** Place of the line: x when upright, else y; and the lower end along it. */
  readonly line: number;
  readonly from: number;
  readonly stop: number;
}

/** Sides between squares spread before a place and those not, of the squares asked for. */
export function openSides(
  squares: FloorSquares,
  wet: (square: number) => boolean,
  asked: (square: number) => boolean,
): readonly Side[] {
  const { count, link, x, y, cellM, stopLine } = squares;
  const sides: Side[] = [];
  for (let s = 0; s < count; s++) {
    if (!wet(s) || !asked(s)) continue;
    for (let side = 0; side < 4; side++) {
      const other = link[4 * s + side] as number;
      if (other < 0 || wet(other)) continue;
      const upright = side % 2 === 0;
      const out = side < 2 ? cellM / 2 : -cellM / 2;
      const [across, along] = upright ? [x, y] : [y, x];
      sides.push({
        upright,
        line: (across[s] as number) + out,
        from: (along[s] as number) - cellM / 2,
        stop: stopLine[4 * s + side] as number,
      });
    }
  }
  return sides;
}

const mm = (value: number): number => Math.round(value * 1000) / 1000;

/** The same sides as straight lines to draw, neighbouring ones joined. */
export function linesOf(sides: readonly Side[], cellM: number): readonly (readonly Point[])[] {
  const sorted = [...sides].sort((a, b) => Number(a.upright) - Number(b.upright) || a.line - b.line || a.from - b.from);
  const lines: Point[][] = [];
  let start: Side | undefined;
  let end = 0;
  const close = (): void => {
    if (!start) return;
    const [low, high, line] = [mm(start.from), mm(end), mm(start.line)];
    lines.push(
      start.upright
        ? [
            [line, low],
            [line, high],
          ]
        : [
            [low, line],
            [high, line],
          ],
    );
  };
  for (const side of sorted) {
    const joins =
      start && start.upright === side.upright && start.line === side.line && Math.abs(side.from - end) < 1e-6;
    if (!joins) {
      close();
      start = side;
    }
    end = side.from + cellM;
  }
  close();
  return lines;
}

const middleOf = (side: Side, cellM: number): Point =>
  side.upright ? [side.line, side.from + cellM / 2] : [side.from + cellM / 2, side.line];

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

/**
 * Where a pour ends, as a tape would measure it from the door of its room the crew leaves by: square off the door, along
 * the wall from one of its posts, or at both ends of a line that runs neither way; or simply in a doorway.
 */
export function endInWords(
  all: readonly Side[],
  squares: FloorSquares,
  part: FloorPart,
  main: Door,
  decides: readonly string[],
  /** Finest mark that is worth reading off the tape, m. */
  mark: number,
  trace: Trace,
): Said {
  const { cellM } = squares;
  if (all.length === 0) return { code: 'spread-end-way-out', names: { door: main.name } };
  const called = (sides: readonly Side[]): string =>
    [...new Set(sides.map(({ stop }) => part.stopLines[stop]?.name ?? ''))].join(', ');
  const drawn = all.filter(({ stop }) => part.stopLines[stop]?.kind !== 'threshold');
  if (drawn.length === 0) return { code: 'spread-end-doorway', names: { door: called(all) } };
  // what is marked on the floor, in the room that has most of it; a doorway needs no mark
  const rooms = drawn.map((side) => roomAt(part, middleOf(side, cellM)));
  const room = mostOf(rooms);
  const sides = drawn.filter((_, i) => rooms[i] === room);
  const middles = sides.map((side) => middleOf(side, cellM));
  const door = part.rooms[room]?.door ?? main;
  const names = { door: door.name };
  const dx = door.b[0] - door.a[0];
  const dy = door.b[1] - door.a[1];
  const width = Math.hypot(dx, dy);
  // into the room: towards the middle of the floor
  let [nx, ny] = [-dy / width, dx / width];
  const inside = insideOf(squares, part, room);
  if ((inside[0] - door.a[0]) * nx + (inside[1] - door.a[1]) * ny < 0) [nx, ny] = [-nx, -ny];
  // to the right of somebody who looks in
  const [rx, ry] = [ny, -nx];
  const right = (p: Point): number => p[0] * rx + p[1] * ry;
  const posts = [right(door.a), right(door.b)].sort((a, b) => a - b) as [number, number];
  const depths = middles.map(([px, py]) => (px - door.a[0]) * nx + (py - door.a[1]) * ny);
  const along = middles.map(right);
  const measured = (value: number, name = 'end') =>
    trace.taken(name, leastInSequence, {
      value: Math.round(Math.max(0, value) / mark) * mark,
      unit: 'm',
      shows: 'length',
      inputs: { along: decides },
    });
  const onJoint = sides.every(({ stop }) => stop >= 0);
  const joint = onJoint ? called(sides) : '';
  const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const told = (kind: string, value: number, more: Record<string, string> = {}): Said => ({
    code: `spread-end-${kind}${onJoint ? '-joint' : ''}`,
    names: { ...names, ...more, ...(onJoint ? { joint } : {}) },
    figures: { distance: measured(value).id },
  });
  if (spread(depths) <= cellM + 1e-6) return told('across', median(depths));
  if (spread(along) <= cellM + 1e-6) {
    const place = median(along);
    const toLeft = Math.abs(place - posts[0]) <= Math.abs(place - posts[1]);
    const post = toLeft ? posts[0] : posts[1];
    const way = place < post ? 'left' : 'right';
    return told('along', Math.abs(place - post), {
      post: `@spread-post-${toLeft ? 'left' : 'right'}`,
      way: `@spread-way-${way}`,
    });
  }
  const byRight = along.map((_, i) => i).sort((i, j) => (along[i] as number) - (along[j] as number));
  const depthAt = (i: number | undefined): number => depths[i ?? 0] as number;
  return {
    code: `spread-end-bent${onJoint ? '-joint' : ''}`,
    names: { ...names, ...(onJoint ? { joint } : {}) },
    figures: {
      left: measured(depthAt(byRight[0]), 'end-left').id,
      right: measured(depthAt(byRight.at(-1)), 'end-right').id,
    },
  };
}

/** The value that comes most often, the first of equals. */
export function mostOf(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].reduce((best, one) => (one[1] > best[1] ? one : best))[0];
}

/** Middle of one room's squares. */
function insideOf({ count, x, y }: FloorSquares, part: FloorPart, room: number): Point {
  const all = part.rooms.length === 1;
  let [sx, sy, own] = [0, 0, 0];
  for (let s = 0; s < count; s++) {
    if (!all && roomAt(part, [x[s] as number, y[s] as number]) !== room) continue;
    sx += x[s] as number;
    sy += y[s] as number;
    own += 1;
  }
  return [sx / own, sy / own];
}
