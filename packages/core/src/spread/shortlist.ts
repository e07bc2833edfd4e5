import { areaCentres, areasBetween, type Division, type LineFamily, lineFamilies } from './areas.ts';
import { DIRECTIONS, distanceField, type Field, farthest, sweepField } from './fields.ts';
import type { SpreadProblem } from './problem.ts';
import { type LaneStyle, type Sketch, toUnit } from './sketch.ts';

const STYLES: readonly LaneStyle[] = ['one way', 'other way', 'to and fro'];

/** A sketch not yet drawn: drawing every one of a large floor would cost more than growing some. */
type Idea = () => Sketch;

/**
 * At most `most` sketches worth growing. The ones that cut the floor at its stop lines come first, since on a wide floor
 * joints matter more than the shape of the sweep; of the rest an even sample is taken.
 */
export function shortlist(problem: SpreadProblem, most: number): Sketch[] {
  const { squares, question } = problem;
  const families = lineFamilies(question.stopLines);
  const doors = distanceField(squares, problem.doorSquares);
  const cut: Idea[] = [];
  for (const every of [1, 2, 3]) {
    for (const family of families) cut.push(...stripSketches(problem, family, families, doors, every));
    if (every === 1 && families.length > 1) for (const family of families) cut.push(...baySketches(problem, family));
  }
  const rest: Idea[] = [];
  if (families.length > 0) rest.push(...roomSketches(problem, doors));
  rest.push(...wholeSketches(problem, doors));
  const chosen = cut.slice(0, Math.max(most - rest.length, Math.ceil(most * 0.75)));
  const room = Math.min(rest.length, most - chosen.length);
  for (let k = 0; k < room; k++) chosen.push(rest[Math.floor((k * rest.length) / room)] as Idea);
  return chosen.map((draw) => draw());
}

interface NamedField {
  readonly name: string;
  readonly field: Field;
}

/** Fields over the whole floor: sweeps, way to one door or to any, end to end, between the far corner and the door. */
function wholeFields(problem: SpreadProblem, doors: Field): NamedField[] {
  const { squares } = problem;
  const fields: NamedField[] = [];
  fields.push({ name: 'way to the doors', field: finite(doors) });
  if (squares.doors.length > 1) {
    squares.doors.forEach((door, k) => {
      if (door.length > 0) fields.push({ name: `way to door ${k}`, field: finite(distanceField(squares, door)) });
    });
  }
  const far = farthest(doors);
  if (far >= 0) {
    const fromFar = finite(distanceField(squares, [far]));
    let longest = 0;
    for (const metres of fromFar) if (metres > longest) longest = metres;
    fields.push({ name: 'end to end', field: fromFar.map((metres) => longest - metres) });
    fields.push({
      name: 'between far corner and door',
      field: finite(doors).map((d, s) => (longest * d) / (d + (fromFar[s] as number) + 1e-9)),
    });
  }
  // the distances come first: they never fail badly, so a search stopped early has something to show
  DIRECTIONS.forEach((direction, k) => {
    fields.push({ name: `sweep ${k * 22.5}`, field: sweepField(squares, direction) });
  });
  return fields;
}

function wholeSketches(problem: SpreadProblem, doors: Field): Idea[] {
  const turn = new Int32Array(problem.squares.count);
  return crossed(problem, wholeFields(problem, doors), turn, 'whole floor');
}

/** Every area between stop lines in turn, the one nearest to a door last. */
function roomSketches(problem: SpreadProblem, doors: Field): Idea[] {
  const division = areasBetween(problem.squares, () => true);
  const nearest = new Float64Array(division.count).fill(Infinity);
  division.areaOf.forEach((area, s) => {
    nearest[area] = Math.min(nearest[area] as number, doors[s] as number);
  });
  const turn = turns(division, nearest);
  const fields = wholeFields(problem, doors).filter(
    (_, k, all) => k < all.length - DIRECTIONS.length || (all.length - k) % 2 === 0,
  );
  return crossed(problem, fields, turn, 'areas');
}

function crossed(problem: SpreadProblem, fields: readonly NamedField[], turn: Int32Array, what: string): Idea[] {
  const tangents = tangentsOf(problem);
  const sketches: Idea[] = [];
  for (const { name, field } of fields) {
    for (const [tangent, along] of tangents) {
      for (const lanes of STYLES) {
        sketches.push(() => ({ name: `${what}, ${name}, ${tangent}, ${lanes}`, turn, field, along, lanes }));
      }
    }
  }
  return sketches;
}

/** Strips between the joints of one direction, in turn from either side, swept along the strip, out and back. */
function stripSketches(
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
  const turnsBy = [1, -1].map((sign) =>
    turns(
      division,
      centres.x.map((x, a) => sign * (x * across[0] + (centres.y[a] as number) * across[1])),
    ),
  );
  for (const lanes of ['to and fro', 'one way', 'other way'] as const) {
    for (const snake of [true, false]) {
      for (const first of [1, -1]) {
        turnsBy.forEach((turn, side) => {
          sketches.push(() => ({
            name: `strips of ${every}, ${side === 0 ? 'near' : 'far'} side last, ${snake ? 'snake' : 'parallel'} ${first}, ${lanes}`,
            turn,
            field: flipped(lengthwise, turn, first, snake),
            along: localUnit(turn, crosswise),
            lanes,
          }));
        });
      }
    }
  }
  if (all.length === 1 && every === 1) {
    const nearest = new Float64Array(division.count).fill(Infinity);
    division.areaOf.forEach((area, s) => {
      nearest[area] = Math.min(nearest[area] as number, doors[s] as number);
    });
    const turn = turns(division, nearest);
    const along = toUnit(crosswise);
    for (const lanes of STYLES) {
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

/** Bay by bay: strip after strip, in each strip one bay after the other, swept along or across the strip. */
function baySketches(problem: SpreadProblem, family: LineFamily): Idea[] {
  const { squares } = problem;
  const strips = areasBetween(squares, (line) => family.lines.includes(line));
  const bays = areasBetween(squares, () => true);
  if (bays.count <= strips.count || strips.count < 2) return [];
  const across: readonly [number, number] = [-family.along[1], family.along[0]];
  const stripCentres = areaCentres(squares, strips);
  const bayCentres = areaCentres(squares, bays);
  const stripOf = new Int32Array(bays.count);
  bays.areaOf.forEach((bay, s) => {
    stripOf[bay] = strips.areaOf[s] as number;
  });
  const sketches: Idea[] = [];
  for (const lanes of ['to and fro', 'one way', 'other way'] as const) {
    for (const sign of [1, -1]) {
      const offset = stripCentres.x.map((x, a) => sign * (x * across[0] + (stripCentres.y[a] as number) * across[1]));
      const stripTurn = turns(strips, offset);
      const turnOfStrip = new Int32Array(strips.count);
      strips.areaOf.forEach((strip, s) => {
        turnOfStrip[strip] = stripTurn[s] as number;
      });
      for (const first of [1, -1]) {
        const offsets = bayCentres.x.map((x, bay) => {
          const strip = turnOfStrip[stripOf[bay] as number] as number;
          const way = first * ((strip & 1) === 0 ? 1 : -1);
          return strip * 1e6 + way * (x * family.along[0] + (bayCentres.y[bay] as number) * family.along[1]);
        });
        const turn = turns(bays, offsets);
        for (const [name, sweep, tangent] of [
          ['across', across, family.along],
          ['along', family.along, across],
        ] as const) {
          for (const way of [1, -1]) {
            sketches.push(() => ({
              name: `bays ${sign} ${first}, ${name} ${way}, ${lanes}`,
              turn,
              field: sweepField(squares, [sweep[0] * way, sweep[1] * way]),
              along: localUnit(turn, sweepField(squares, tangent)),
              lanes,
            }));
          }
        }
      }
    }
  }
  return sketches;
}

/** Ranks areas by a number (ties: the first found) and gives each square its area's rank. */
function turns(division: Division, value: Float64Array): Int32Array {
  const ranked = Array.from({ length: division.count }, (_, area) => area).sort(
    (a, b) => (value[a] as number) - (value[b] as number) || a - b,
  );
  const rank = new Int32Array(division.count);
  ranked.forEach((area, k) => {
    rank[area] = k;
  });
  return Int32Array.from(division.areaOf, (area) => rank[area] as number);
}

function flipped(field: Field, turn: Int32Array, first: number, snake: boolean): Field {
  const out = new Float64Array(field.length);
  for (let s = 0; s < field.length; s++) {
    const back = snake && ((turn[s] as number) & 1) !== 0;
    out[s] = (field[s] as number) * first * (back ? -1 : 1);
  }
  return out;
}

/** Scales a coordinate to 0..1 within each area, so that one lane is one pass over its own strip. */
function localUnit(turn: Int32Array, values: Float64Array): Float64Array {
  const low: number[] = [];
  const high: number[] = [];
  for (let s = 0; s < turn.length; s++) {
    const t = turn[s] as number;
    const value = values[s] as number;
    low[t] = Math.min(low[t] ?? Infinity, value);
    high[t] = Math.max(high[t] ?? -Infinity, value);
  }
  return values.map((value, s) => {
    const t = turn[s] as number;
    const span = (high[t] as number) - (low[t] as number);
    return span > 0 ? (value - (low[t] as number)) / span : 0;
  });
}

/** Coordinates along a lane: the two axes and the angle seen from the first door. */
function tangentsOf(problem: SpreadProblem): (readonly [string, Float64Array])[] {
  const { squares } = problem;
  const door = problem.doorSquares[0] ?? 0;
  const dx = squares.x.map((x) => x - (squares.x[door] ?? 0));
  const angle = squares.y.map((y, s) => {
    const ex = dx[s] as number;
    const ey = y - (squares.y[door] ?? 0);
    const sum = Math.abs(ex) + Math.abs(ey);
    if (sum === 0) return 0;
    // angle measured on a diamond: grows with the true angle, needs no trigonometry
    return ey >= 0 ? 1 - ex / sum : -1 + ex / sum;
  });
  return [
    ['x', toUnit(squares.x)],
    ['y', toUnit(squares.y)],
    ['angle', toUnit(angle)],
  ];
}

/** Squares no way leads to get the largest finite value: they stay in the arrays but are never reached. */
function finite(field: Field): Field {
  let longest = 0;
  for (const value of field) if (value !== Infinity && value > longest) longest = value;
  return field.map((value) => (value === Infinity ? longest : value));
}
