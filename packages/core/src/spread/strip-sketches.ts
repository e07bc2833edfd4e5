import { localUnit, nearestLast, turns } from './area-turns.ts';
import { areaCentres, areasBetween, type LineFamily } from './areas.ts';
import { type Field, finite, sweepField } from './fields.ts';
import type { SpreadProblem } from './problem.ts';
import { type Idea, LANE_STYLES, toUnit } from './sketch.ts';

/** Strips between the joints of one direction, in turn from either side, swept along the strip, out and back. */
export function stripSketches(
  problem: SpreadProblem,
  family: LineFamily,
  all: readonly LineFamily[],
  doors: Field,
  every: number,
): Idea[] {
  const { squares } = problem;
  const sketches: Idea[] = [];
  if (every > 1 && family.lines.length < 2 * every) return sketches;
  const kept = new Set(family.lines.filter((_, k) => k % every === every - 1));
  const division = areasBetween(squares, (line) => kept.has(line));
  if (division.count < 2) return sketches;
  const across: readonly [number, number] = [-family.along[1], family.along[0]];
  const crosswise = sweepField(squares, across);
  const lengthwise = sweepField(squares, family.along);
  const centres = areaCentres(squares, division);
  const offsets = centres.x.map((x, a) => x * across[0] + (centres.y[a] as number) * across[1]);
  const near = { name: 'near side last', turn: turns(division, offsets) };
  const far = {
    name: 'far side last',
    turn: turns(
      division,
      offsets.map((offset) => -offset),
    ),
  };
  const doorLast = every === 1 ? doorStripsLast(near.turn, division.count, problem.doorSquares) : [];
  for (const lanes of ['to and fro', 'one way', 'other way'] as const) {
    for (const snake of [true, false]) {
      for (const { name, turn } of snake ? [near, far, ...doorLast] : [near, far]) {
        for (const first of [1, -1]) {
          sketches.push(() => ({
            name: `strips of ${every}, ${name}, ${snake ? 'snake' : 'parallel'} ${first}, ${lanes}`,
            turn,
            field: flipped(lengthwise, turn, first, snake),
            along: localUnit(turn, crosswise),
            lanes,
          }));
        }
      }
    }
  }
  if (all.length === 1 && every === 1) {
    const turn = nearestLast(division, doors);
    const along = toUnit(crosswise);
    for (const lanes of LANE_STYLES) {
      sketches.push(() => ({
        name: `strips, nearest last, way to the doors, ${lanes}`,
        turn,
        field: finite(doors),
        along,
        lanes,
      }));
    }
  }
  return sketches;
}

/** Strips with a door between others: the strips on one side of it first, then those on the other, the door's own last. */
const MOST_DOOR_STRIPS = 2;

function doorStripsLast(rank: Int32Array, strips: number, doorSquares: Int32Array) {
  const withDoor = [...new Set([...doorSquares].map((s) => rank[s] as number))]
    .filter((strip) => strip > 0 && strip < strips - 1)
    .sort((a, b) => a - b)
    .slice(0, MOST_DOOR_STRIPS);
  return withDoor.flatMap((door) =>
    [1, -1].map((way) => {
      const turnOf = new Int32Array(strips);
      let next = 0;
      for (let strip = door; strip >= 0 && strip < strips; strip += way) turnOf[strip] = next++;
      for (let strip = door - way; strip >= 0 && strip < strips; strip -= way) turnOf[strip] = next++;
      return {
        name: `door strip ${door} last, ${way > 0 ? 'near' : 'far'} ones first`,
        turn: rank.map((strip) => turnOf[strip] as number),
      };
    }),
  );
}

/** The same field along every strip, or turned round in every second one. */
function flipped(field: Field, turn: Int32Array, first: number, snake: boolean): Field {
  const out = new Float64Array(field.length);
  for (let s = 0; s < field.length; s++) {
    const back = snake && ((turn[s] as number) & 1) !== 0;
    out[s] = (field[s] as number) * first * (back ? -1 : 1);
  }
  return out;
}
