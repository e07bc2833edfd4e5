import type { FloorSquares } from './floor-squares.ts';
import type { StopLine } from './types.ts';

/** The floor divided: area number per square, 0..count−1 in the order of their first squares. */
export interface Division {
  readonly areaOf: Int32Array;
  readonly count: number;
}

/** Areas between the stop lines that `blocks` (flood fill over links; passages too narrow to walk do not divide). */
export function areasBetween(squares: FloorSquares, blocks: (line: number) => boolean): Division {
  const areaOf = new Int32Array(squares.count).fill(-1);
  const stack: number[] = [];
  let count = 0;
  for (let first = 0; first < squares.count; first++) {
    if (areaOf[first] !== -1) continue;
    stack.push(first);
    areaOf[first] = count;
    while (stack.length > 0) {
      const s = stack.pop() as number;
      for (let side = 4 * s; side < 4 * s + 4; side++) {
        const other = squares.link[side] as number;
        if (other < 0 || areaOf[other] !== -1) continue;
        if (squares.free[side] && blocks(squares.stopLine[side] as number)) continue;
        areaOf[other] = count;
        stack.push(other);
      }
    }
    count += 1;
  }
  return { areaOf, count };
}

/** Parallel stop lines (within 10°), in order across them. */
export interface LineFamily {
  /** Unit vector along the lines. */
  readonly along: readonly [number, number];
  readonly lines: readonly number[];
}

/** Sorts stop lines into families of parallels, in the order they are given. */
export function lineFamilies(stopLines: readonly StopLine[]): LineFamily[] {
  const families: { along: [number, number]; lines: { line: number; offset: number }[] }[] = [];
  stopLines.forEach(({ a, b }, line) => {
    const dx = b[0] - a[0];
    const dy = b[1] - a[1];
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length === 0) return;
    const ux = dx / length;
    const uy = dy / length;
    let family = families.find(({ along }) => Math.abs(along[0] * uy - along[1] * ux) < 0.17);
    if (!family) {
      family = { along: [ux, uy], lines: [] };
      families.push(family);
    }
    const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
    family.lines.push({ line, offset: middle[1] * family.along[0] - middle[0] * family.along[1] });
  });
  return families.map(({ along, lines }) => ({
    along,
    lines: lines.sort((p, q) => p.offset - q.offset || p.line - q.line).map(({ line }) => line),
  }));
}

/** Mean position of each area. */
export function areaCentres(squares: FloorSquares, division: Division): { x: Float64Array; y: Float64Array } {
  const x = new Float64Array(division.count);
  const y = new Float64Array(division.count);
  const n = new Float64Array(division.count);
  for (let s = 0; s < squares.count; s++) {
    const area = division.areaOf[s] as number;
    x[area] = (x[area] as number) + (squares.x[s] as number);
    y[area] = (y[area] as number) + (squares.y[s] as number);
    n[area] = (n[area] as number) + 1;
  }
  return { x: x.map((sum, a) => sum / (n[a] as number)), y: y.map((sum, a) => sum / (n[a] as number)) };
}
