import type { Point, Ring, SpreadCase } from '../types.ts';

/** One square of the checker's own floor. Neighbours: right, up, left, down; −1 is none. */
export interface CheckSquare {
  readonly column: number;
  readonly row: number;
  readonly x: number;
  readonly y: number;
  areaM2: number;
  litres: number;
  edgeM: number;
  minutes: number;
  readonly next: [number, number, number, number];
  /** The line towards that neighbour is a stop line. */
  readonly stop: [boolean, boolean, boolean, boolean];
  /** Exits the square lies at. */
  readonly exits: number[];
}

export interface CheckFloor {
  readonly squares: CheckSquare[];
  readonly find: (column: number, row: number) => number;
}

/** The floor as the format describes it, read without the planner's code: squares by their centre, links by what they cross. */
export function rasterOf(question: SpreadCase, areas: 'whole' | 'clipped'): CheckFloor {
  const side = question.cellM;
  const xs = question.outline.map(([x]) => x);
  const ys = question.outline.map(([, y]) => y);
  const left = Math.min(...xs);
  const bottom = Math.min(...ys);
  const wide = Math.ceil((Math.max(...xs) - left) / side - 1e-6);
  const high = Math.ceil((Math.max(...ys) - bottom) / side - 1e-6);
  const away = [...question.holes, ...(question.done ?? []).map(({ ring }) => ring)];
  const number = new Map<number, number>();
  const squares: CheckSquare[] = [];
  for (let row = 0; row < high; row++) {
    for (let column = 0; column < wide; column++) {
      const x = left + (column + 0.5) * side;
      const y = bottom + (row + 0.5) * side;
      if (windings(question.outline, x, y) === 0 || away.some((ring) => windings(ring, x, y) !== 0)) continue;
      number.set(row * wide + column, squares.length);
      squares.push({
        column,
        row,
        x,
        y,
        areaM2: side * side,
        litres: 0,
        edgeM: 0,
        minutes: 0,
        next: [-1, -1, -1, -1],
        stop: [false, false, false, false],
        exits: [],
      });
    }
  }
  const find = (column: number, row: number): number =>
    column < 0 || row < 0 || column >= wide ? -1 : (number.get(row * wide + column) ?? -1);
  const walls = rowIndex(question.walls, side, bottom);
  const stops = rowIndex(
    question.stopLines.map(({ a, b }) => [a, b] as const),
    side,
    bottom,
  );
  squares.forEach((square, s) => {
    for (const way of [0, 1] as const) {
      const o = way === 0 ? find(square.column + 1, square.row) : find(square.column, square.row + 1);
      const other = squares[o];
      if (!other) continue;
      const from = standpoint(square, side);
      const to = standpoint(other, side);
      if (walls(square.row).some(([a, b]) => cross(from, to, a, b))) continue;
      square.next[way] = o;
      other.next[way === 0 ? 2 : 3] = s;
      if (stops(square.row).some(([a, b]) => cross(from, to, a, b))) {
        square.stop[way] = true;
        other.stop[way === 0 ? 2 : 3] = true;
      }
    }
  });
  if (areas === 'clipped') measure(question, squares, find, left, bottom, wide, high, away);
  for (const square of squares) {
    let perM2 = question.batch.litresPerM2;
    for (const zone of question.batch.zones ?? [])
      if (windings(zone.poly, square.x, square.y) !== 0) perM2 *= zone.factor;
    square.litres = square.areaM2 * perM2;
    square.minutes = standing(question, square.areaM2, square.edgeM);
    question.exits.forEach(({ a, b }, k) => {
      if (gap(square.x, square.y, a, b) <= 0.75 * side + 1e-9) square.exits.push(k);
    });
  }
  return { squares, find };
}

/** Where a square is judged from: a line through its very middle counts as left of it or below. */
export function standpoint({ x, y }: CheckSquare, side: number): Point {
  const aside = side / 100_000;
  return [x + aside, y + aside];
}

/** Minutes the people who spread stand on a piece; whoever mixes, cuts in or broadcasts has no hand free for it. */
function standing(question: SpreadCase, areaM2: number, edgeM: number): number {
  const { crew } = question;
  const apart = (crew.cutters ?? 0) + (crew.broadcasters ?? 0) + (crew.dedicatedMixer ? 1 : 0);
  const people = crew.people - apart;
  let spreading = areaM2 / (people * crew.rateM2PerMinPerPerson);
  let beside = 0;
  if (crew.cutMPerMinPerPerson !== undefined) {
    if (crew.cutters) beside = Math.max(beside, edgeM / (crew.cutters * crew.cutMPerMinPerPerson));
    else spreading += edgeM / (people * crew.cutMPerMinPerPerson);
  }
  if (crew.broadcastM2PerMinPerPerson !== undefined) {
    if (crew.broadcasters) beside = Math.max(beside, areaM2 / (crew.broadcasters * crew.broadcastM2PerMinPerPerson));
    else spreading += areaM2 / (people * crew.broadcastM2PerMinPerPerson);
  }
  return Math.max(spreading, beside);
}

/** Drawn area in each square; a sliver whose square does not exist belongs to the first neighbour that does. */
function measure(
  question: SpreadCase,
  squares: CheckSquare[],
  find: CheckFloor['find'],
  left: number,
  bottom: number,
  wide: number,
  high: number,
  away: readonly Ring[],
): void {
  const side = question.cellM;
  for (const square of squares) {
    square.areaM2 = 0;
    square.edgeM = square.next.filter((o) => o < 0).length * side;
  }
  const around = [
    [0, 0],
    [-1, 0],
    [1, 0],
    [0, -1],
    [0, 1],
    [-1, -1],
    [1, -1],
    [-1, 1],
    [1, 1],
  ] as const;
  const ragged = cellsUnderLines([question.outline, ...away], side, left, bottom, wide, high);
  for (const square of squares) if (!ragged[square.row * wide + square.column]) square.areaM2 = side * side;
  for (let row = 0; row < high; row++) {
    for (let column = 0; column < wide; column++) {
      if (!ragged[row * wide + column]) continue;
      const x0 = left + column * side;
      const y0 = bottom + row * side;
      let area = under(question.outline, x0, x0 + side, y0, y0 + side);
      for (const ring of away) area -= under(ring, x0, x0 + side, y0, y0 + side);
      const owner = around.map(([i, j]) => find(column + i, row + j)).find((s) => s >= 0);
      const square = owner === undefined ? undefined : squares[owner];
      if (square) square.areaM2 += area;
    }
  }
}

/** Marks the cells some edge of the rings may run through; all others are floor as a whole or not at all. */
function cellsUnderLines(
  rings: readonly Ring[],
  side: number,
  left: number,
  bottom: number,
  wide: number,
  high: number,
): Uint8Array {
  const marked = new Uint8Array(wide * high);
  for (const ring of rings) {
    ring.forEach(([ax, ay], k) => {
      const [bx, by] = ring[(k + 1) % ring.length] as Point;
      for (let row = 0; row < high; row++) {
        // the part of the edge within this row, a little more for rounding
        const y0 = bottom + (row - 0.01) * side;
        const y1 = bottom + (row + 1.01) * side;
        if (Math.max(ay, by) < y0 || Math.min(ay, by) > y1) continue;
        const steep = Math.abs(by - ay) > 1e-12;
        const at = (y: number): number => (steep ? Math.max(0, Math.min(1, (y - ay) / (by - ay))) : 0);
        const [p, q] = steep ? [at(y0), at(y1)] : [0, 1];
        const ends = [ax + (bx - ax) * p, ax + (bx - ax) * q];
        const first = Math.max(0, Math.floor((Math.min(...ends) - left) / side - 0.01));
        const last = Math.min(wide - 1, Math.floor((Math.max(...ends) - left) / side + 0.01));
        for (let column = first; column <= last; column++) marked[row * wide + column] = 1;
      }
    });
  }
  return marked;
}

/** Area of a ring inside a box, by summing over its edges the height between the box's floor and the edge. */
function under(ring: Ring, x0: number, x1: number, y0: number, y1: number): number {
  let sum = 0;
  ring.forEach(([ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length] as Point;
    const lo = Math.max(x0, Math.min(ax, bx));
    const hi = Math.min(x1, Math.max(ax, bx));
    if (hi <= lo) return;
    const slope = (by - ay) / (bx - ax);
    const knots = [lo, hi];
    for (const y of [y0, y1]) {
      const x = slope === 0 ? lo : ax + (y - ay) / slope;
      if (x > lo && x < hi) knots.push(x);
    }
    knots.sort((p, q) => p - q);
    const height = (x: number): number => Math.min(y1, Math.max(y0, ay + (x - ax) * slope)) - y0;
    let part = 0;
    for (let i = 1; i < knots.length; i++) {
      const p = knots[i - 1] as number;
      const q = knots[i] as number;
      part += ((height(p) + height(q)) / 2) * (q - p);
    }
    sum += bx > ax ? part : -part;
  });
  return Math.abs(sum);
}

/** How often a ring winds round a point. */
export function windings(ring: Ring, x: number, y: number): number {
  let turns = 0;
  let [ax, ay] = ring[ring.length - 1] ?? [0, 0];
  for (const [bx, by] of ring) {
    if (ay <= y !== by <= y) {
      const leftOf = (bx - ax) * (y - ay) - (x - ax) * (by - ay);
      if (ay <= y && leftOf > 0) turns += 1;
      if (ay > y && leftOf < 0) turns -= 1;
    }
    ax = bx;
    ay = by;
  }
  return turns;
}

/** Do p-q and a-b cross or touch? Solved for the two shares along them. */
export function cross(p: Point, q: Point, a: Point, b: Point): boolean {
  const rx = q[0] - p[0];
  const ry = q[1] - p[1];
  const sx = b[0] - a[0];
  const sy = b[1] - a[1];
  const det = rx * sy - ry * sx;
  const ox = a[0] - p[0];
  const oy = a[1] - p[1];
  if (Math.abs(det) < 1e-15) {
    if (Math.abs(rx * oy - ry * ox) > 1e-12) return false;
    const length2 = rx * rx + ry * ry;
    const t0 = (ox * rx + oy * ry) / length2;
    const t1 = t0 + (sx * rx + sy * ry) / length2;
    return Math.max(t0, t1) >= 0 && Math.min(t0, t1) <= 1;
  }
  const t = (ox * sy - oy * sx) / det;
  const u = (ox * ry - oy * rx) / det;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1;
}

/** Distance from a point to the segment a-b. */
function gap(x: number, y: number, a: Point, b: Point): number {
  const vx = b[0] - a[0];
  const vy = b[1] - a[1];
  const t = Math.max(0, Math.min(1, ((x - a[0]) * vx + (y - a[1]) * vy) / (vx * vx + vy * vy || 1)));
  return Math.sqrt((x - a[0] - t * vx) ** 2 + (y - a[1] - t * vy) ** 2);
}

type Line = readonly [Point, Point];

/** Lines that can matter to a link starting in a row of squares. */
function rowIndex(lines: readonly Line[], side: number, bottom: number): (row: number) => readonly Line[] {
  const rows = new Map<number, Line[]>();
  for (const line of lines) {
    const [[, ay], [, by]] = line;
    const first = Math.floor((Math.min(ay, by) - bottom) / side) - 2;
    const last = Math.floor((Math.max(ay, by) - bottom) / side) + 2;
    for (let row = first; row <= last; row++) rows.set(row, [...(rows.get(row) ?? []), line]);
  }
  const none: Line[] = [];
  return (row) => rows.get(row) ?? none;
}
