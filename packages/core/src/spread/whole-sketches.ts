import { nearestLast } from './area-turns.ts';
import { areasBetween } from './areas.ts';
import { DIRECTIONS, distanceField, type Field, farthest, finite, sweepField } from './fields.ts';
import type { SpreadProblem } from './problem.ts';
import { type Idea, LANE_STYLES, toUnit } from './sketch.ts';

/** A field drawn when it is first asked for: on a large floor each costs as much as a candidate. */
interface NamedField {
  readonly name: string;
  readonly field: () => Field;
}

/** Doors with a field of their own; a hall with forty doors does not need forty. */
const MOST_DOOR_FIELDS = 4;

/** Fields over the whole floor: ways to the doors, end to end, between the far corner and the door, straight sweeps. */
export function wholeFields(problem: SpreadProblem, doors: Field): NamedField[] {
  const { squares } = problem;
  const reached = once(() => finite(doors));
  const fromFar = once(() => finite(distanceField(squares, [Math.max(0, farthest(doors))])));
  // the distances come first: they never fail badly, so a search stopped early has something to show
  const fields: NamedField[] = [{ name: 'way to the doors', field: reached }];
  if (squares.doors.length > 1) {
    squares.doors.slice(0, MOST_DOOR_FIELDS).forEach((door, k) => {
      if (door.length === 0) return;
      fields.push({ name: `way to door ${k}`, field: once(() => finite(distanceField(squares, door))) });
    });
  }
  fields.push({
    name: 'end to end',
    field: once(() => {
      const longest = fromFar().reduce((most, metres) => Math.max(most, metres), 0);
      return fromFar().map((metres) => longest - metres);
    }),
  });
  fields.push({
    name: 'between far corner and door',
    field: once(() => {
      const longest = fromFar().reduce((most, metres) => Math.max(most, metres), 0);
      return reached().map((metres, s) => (longest * metres) / (metres + (fromFar()[s] as number) + 1e-9));
    }),
  });
  DIRECTIONS.forEach((direction, k) => {
    fields.push({ name: `sweep ${k * 22.5}`, field: once(() => sweepField(squares, direction)) });
  });
  return fields;
}

/** Sketches that know nothing of stop lines. */
export function wholeSketches(problem: SpreadProblem, fields: readonly NamedField[]): Idea[] {
  return crossed(
    problem,
    fields,
    once(() => new Int32Array(problem.squares.count)),
    'whole floor',
  );
}

/** Every area between stop lines in turn, the one nearest to a door last; sweeps in eight directions only. */
export function areaSketches(problem: SpreadProblem, fields: readonly NamedField[], doors: Field): Idea[] {
  const turn = once(() =>
    nearestLast(
      areasBetween(problem.squares, () => true),
      doors,
    ),
  );
  const sweeps = fields.length - DIRECTIONS.length;
  const kept = fields.filter((_, k) => k < sweeps || (k - sweeps) % 2 === 0);
  return crossed(problem, kept, turn, 'areas');
}

function crossed(problem: SpreadProblem, fields: readonly NamedField[], turn: () => Int32Array, what: string): Idea[] {
  const sketches: Idea[] = [];
  const tangents = tangentsOf(problem);
  for (const { name, field } of fields) {
    for (const [tangent, along] of tangents) {
      for (const lanes of LANE_STYLES) {
        sketches.push(() => ({
          name: `${what}, ${name}, ${tangent}, ${lanes}`,
          turn: turn(),
          field: field(),
          along: along(),
          lanes,
        }));
      }
    }
  }
  return sketches;
}

/** Coordinates along a lane: the two axes and the angle seen from the first door. */
function tangentsOf(problem: SpreadProblem): (readonly [string, () => Float64Array])[] {
  const { squares } = problem;
  const door = problem.doorSquares[0] ?? 0;
  const angle = once(() => {
    const dx = squares.x.map((x) => x - (squares.x[door] ?? 0));
    const diamond = squares.y.map((y, s) => {
      const ex = dx[s] as number;
      const ey = y - (squares.y[door] ?? 0);
      const sum = Math.abs(ex) + Math.abs(ey);
      if (sum === 0) return 0;
      // angle measured on a diamond: grows with the true angle, needs no trigonometry
      return ey >= 0 ? 1 - ex / sum : -1 + ex / sum;
    });
    return toUnit(diamond);
  });
  return [
    ['x', once(() => toUnit(squares.x))],
    ['y', once(() => toUnit(squares.y))],
    ['angle', angle],
  ];
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
