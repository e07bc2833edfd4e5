import {
  dayCase,
  type Ring,
  type SpreadCase,
  type SpreadPlan,
  type SpreadProblem,
  type SpreadResult,
  spreadProblem,
} from '../../spread/index.ts';

/** A stretch of working hours, ms since 1970. */
export interface Hours {
  readonly from: number;
  readonly to: number;
}

/** Where a day's floor ends towards the next day's: a straight line right across the floor. */
export interface DayLine {
  /** Stop lines it lies on, by their numbers; none where it has to be taped. */
  readonly stops: readonly number[];
  /** Floor along it, m. */
  readonly metres: number;
  readonly a: readonly [number, number];
  readonly b: readonly [number, number];
}

/** One day's part of a floor, planned with what lies around it. */
export interface DaySpread {
  readonly question: SpreadCase;
  readonly result: SpreadPlan;
  readonly begun: number;
  /** Line to the next day's part; none on the last day. */
  readonly line: DayLine | undefined;
  /** What was laid the days before carries people; of the first day true. */
  readonly walkable: boolean;
}

export interface DaysAsked {
  readonly begun: number;
  /** Working hours from the start on, the first holds the start. */
  readonly hours: readonly Hours[];
  /** ms until the film carries a person; absent: not by the next morning. */
  readonly walkableAfter: number | undefined;
  /** Minute after midnight of a moment. */
  minuteOf(at: number): number;
  find(question: SpreadCase): SpreadResult;
}

/** Share of the hours that are filled by the estimate: the pours take a little longer than rates. */
const FILLED = 0.95;
/** A joint is preferred to tape when the day still lays this share of what it could. */
const JOINT_SHARE = 0.6;
/** A day that comes out too long is cut back this often, each time by this share. */
const CUTS_BACK = 4;
const CUT_BACK = 0.88;
const MOST_DAYS = 30;

/** Minutes a floor takes at least: the front's work, and mixing and handing over where they add. */
export function leastMinutes({ squares, leastBatches, question }: SpreadProblem): number {
  const { crew, batch } = question;
  const work = squares.minutes.reduce((sum, own) => sum + own, 0);
  return work + batch.mixMin + (crew.dedicatedMixer ? 0 : (leastBatches - 1) * (batch.mixMin + batch.handoverMin));
}

/** A way to go through the floor in strips, the first day's first. */
interface Strips {
  readonly upright: boolean;
  /** Places of the lines a day may end on, in the order of the days, with the minutes of the floor up to each. */
  readonly lines: readonly (DayLine & { readonly at: number; readonly minutes: number })[];
  readonly minutes: number;
  readonly forward: boolean;
}

function stripsOf(problem: SpreadProblem, upright: boolean, forward: boolean): Strips {
  const { squares, question } = problem;
  const { count, column, row, columns, rows, link, stopLine, cellM } = squares;
  const place = upright ? column : row;
  const many = upright ? columns : rows;
  const side = upright ? 0 : 1;
  const low = upright ? squares.minX : squares.minY;
  const along = new Float64Array(many);
  const crossed = new Int32Array(many);
  const open = new Int32Array(many);
  const stops = Array.from({ length: many }, () => new Set<number>());
  for (let s = 0; s < count; s++) {
    const k = place[s] as number;
    along[k] = (along[k] as number) + (squares.minutes[s] as number);
    if ((link[4 * s + side] as number) < 0) continue;
    crossed[k] = (crossed[k] as number) + 1;
    const stop = stopLine[4 * s + side] as number;
    if (stop < 0) open[k] = (open[k] as number) + 1;
    else stops[k]?.add(stop);
  }
  const work = along.reduce((sum, own) => sum + own, 0);
  const whole = leastMinutes(problem);
  const [from, to] = upright
    ? [squares.minY, squares.minY + rows * cellM]
    : [squares.minX, squares.minX + columns * cellM];
  const lines: { at: number; minutes: number; stops: number[]; metres: number; a: Point; b: Point }[] = [];
  let sum = 0;
  for (let k = 0; k < many - 1; k++) {
    sum += along[k] as number;
    if (crossed[k] === 0) continue;
    const own = open[k] === 0 ? [...(stops[k] ?? [])] : [];
    const at = placeOf(own, question, upright) ?? low + (k + 1) * cellM;
    const share = forward ? sum / work : 1 - sum / work;
    lines.push({
      at,
      minutes: share * whole,
      stops: own,
      metres: (crossed[k] as number) * cellM,
      a: upright ? [at, from] : [from, at],
      b: upright ? [at, to] : [to, at],
    });
  }
  return { upright, forward, minutes: whole, lines: forward ? lines : lines.reverse() };
}

type Point = readonly [number, number];

/** Where joints that lie on one straight line across have it, m; undefined for others. */
function placeOf(stops: readonly number[], { stopLines }: SpreadCase, upright: boolean): number | undefined {
  const axis = upright ? 0 : 1;
  const places = stops.flatMap((k) => {
    const line = stopLines[k];
    return line ? [line.a[axis], line.b[axis]] : [];
  });
  const [first] = places;
  return first !== undefined && places.every((one) => Math.abs(one - first) < 1e-6) ? first : undefined;
}

/** The line a day ends on when it has so many minutes from the one before; undefined when all the rest fits. */
function lineFor(strips: Strips, from: number, room: number): Strips['lines'][number] | 'rest' | 'none' {
  if (strips.minutes - from <= room) return 'rest';
  const within = strips.lines.filter(({ minutes }) => minutes > from + 1e-9 && minutes - from <= room);
  const furthest = within.at(-1);
  if (!furthest) return 'none';
  const onJoint = within.filter(({ stops }) => stops.length > 0).at(-1);
  return onJoint && onJoint.minutes - from >= JOINT_SHARE * (furthest.minutes - from) ? onJoint : furthest;
}

const minutesOf = ({ from, to }: Hours, begun: number): number => (to - Math.max(from, begun)) / 60_000;

/** Days and metres of tape by the estimate alone, Infinity where a day gets nothing. */
function estimate(strips: Strips, { hours, begun }: DaysAsked): { readonly days: number; readonly tapeM: number } {
  let from = 0;
  let tapeM = 0;
  for (let day = 0; day < Math.min(MOST_DAYS, hours.length); day++) {
    const line = lineFor(strips, from, FILLED * minutesOf(hours[day] as Hours, begun));
    if (line === 'rest') return { days: day + 1, tapeM };
    if (line === 'none') break;
    from = line.minutes;
    if (line.stops.length === 0) tapeM += line.metres;
  }
  return { days: Infinity, tapeM: Infinity };
}

/** A box from one place to another along the axis, wider than the floor across it. */
function boxBetween({ squares }: SpreadProblem, upright: boolean, from: number, to: number): Ring {
  const { minX, minY, columns, rows, cellM } = squares;
  const [low, high] = upright ? [minY - 1, minY + rows * cellM + 1] : [minX - 1, minX + columns * cellM + 1];
  const corner = (along: number, across: number): Point => (upright ? [along, across] : [across, along]);
  return [corner(from, low), corner(to, low), corner(to, high), corner(from, high)];
}

/**
 * A floor that is more than a day's work, day by day: strips from one wall to the other, each as much as the crew lays
 * in its hours, ending at joints that run right across where that costs little, else at tape. Each is planned with the
 * others around it: what is laid already stays as it is, what comes later is bare and carries people. Of the four ways
 * through a floor the one with the fewest days, then the least tape, whose days can all be planned. Undefined: none.
 */
export function planDays(question: SpreadCase, asked: DaysAsked): readonly DaySpread[] | undefined {
  const problem = spreadProblem(question, 'clipped');
  const [x, y] = middleOfDoors(problem);
  const ways = [true, false]
    .flatMap((upright) => [true, false].map((forward) => stripsOf(problem, upright, forward)))
    .map((strips) => ({ strips, ...estimate(strips, asked), towards: towardsDoor(strips, problem, x, y) }))
    .filter(({ days }) => days < Infinity)
    .sort((a, b) => a.days - b.days || a.tapeM - b.tapeM || b.towards - a.towards);
  for (const { strips } of ways) {
    const days = inStrips(problem, strips, asked);
    if (days) return days;
  }
  return undefined;
}

function middleOfDoors({ squares, doorSquares }: SpreadProblem): Point {
  const mean = (axis: Float64Array): number =>
    doorSquares.reduce((sum, s) => sum + (axis[s] as number), 0) / Math.max(1, doorSquares.length);
  return [mean(squares.x), mean(squares.y)];
}

/** How far the days move towards the doors, m: the last day should end there. */
function towardsDoor({ upright, forward }: Strips, { squares }: SpreadProblem, x: number, y: number): number {
  const middle = upright
    ? squares.minX + (squares.columns * squares.cellM) / 2
    : squares.minY + (squares.rows * squares.cellM) / 2;
  return ((upright ? x : y) - middle) * (forward ? 1 : -1);
}

function inStrips(problem: SpreadProblem, strips: Strips, asked: DaysAsked): readonly DaySpread[] | undefined {
  const { question, squares } = problem;
  const { upright, forward } = strips;
  const least = upright ? squares.minX : squares.minY;
  const ends: Point = [least - 1, least + (upright ? squares.columns : squares.rows) * squares.cellM + 1];
  const [first, last] = forward ? ends : [ends[1], ends[0]];
  const days: DaySpread[] = [];
  let from = { at: first, minutes: 0 };
  let ended = asked.begun;
  let edge: DayLine | undefined;
  for (const [day, stretch] of asked.hours.slice(0, MOST_DAYS).entries()) {
    const begun = Math.max(stretch.from, asked.begun);
    const walkable = day === 0 || (asked.walkableAfter !== undefined && begun - ended >= asked.walkableAfter);
    let room = FILLED * minutesOf(stretch, begun);
    let found: DaySpread | undefined;
    let line: ReturnType<typeof lineFor> = 'none';
    for (let trial = 0; trial <= CUTS_BACK && !found; trial++, room *= CUT_BACK) {
      line = lineFor(strips, from.minutes, room);
      if (line === 'none') break;
      const to = line === 'rest' ? last : line.at;
      const others = [
        ...(edge ? [{ ring: boxBetween(problem, upright, first, from.at), walkable }] : []),
        ...(line === 'rest' ? [] : [{ ring: boxBetween(problem, upright, to, last), walkable: true }]),
      ];
      const part = dayCase(question, others);
      const dayQuestion = {
        ...part,
        name: `${question.name}, day ${day + 1}`,
        clock: { ...part.clock, startMin: asked.minuteOf(begun) },
      };
      const result = asked.find(dayQuestion);
      if (result.kind !== 'plan' || result.best.clock.minutes > minutesOf(stretch, begun)) continue;
      found = { question: dayQuestion, result, begun, line: line === 'rest' ? undefined : line, walkable };
    }
    if (!found || line === 'none') return undefined;
    days.push(found);
    if (line === 'rest') return days;
    from = line;
    edge = line;
    ended = begun + found.result.best.clock.minutes * 60_000;
  }
  return undefined;
}
