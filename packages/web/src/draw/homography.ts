import type { Dot } from '../worker/api.ts';

/**
 * The projective map between two planes, row by row, the last entry 1. It straightens a photo of a flat floor: a camera
 * without lens distortion maps one plane onto another in just this way.
 */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

export const IDENTITY: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Solves a square linear system by elimination with row exchange; null where it has no single answer. */
function solved(rows: readonly (readonly number[])[]): readonly number[] | null {
  const m = rows.map((row) => [...row]);
  const n = m.length;
  const size = Math.max(...m.flat().map(Math.abs));
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(m[row]?.[column] ?? 0) > Math.abs(m[pivot]?.[column] ?? 0)) pivot = row;
    }
    const [a, b] = [m[column], m[pivot]];
    if (!a || !b || Math.abs(b[column] ?? 0) <= size * 1e-12) return null;
    [m[column], m[pivot]] = [b, a];
    for (let row = 0; row < n; row++) {
      if (row === column) continue;
      const [line, head] = [m[row] as number[], m[column] as number[]];
      const by = (line[column] as number) / (head[column] as number);
      for (let k = column; k <= n; k++) line[k] = (line[k] as number) - by * (head[k] as number);
    }
  }
  return m.map((row, i) => (row[n] as number) / (row[i] as number));
}

const twice = (a: Dot, b: Dot, c: Dot): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Four points can be straightened when they stand around a plain four-sided figure, none on a line with two others. */
export function plainFour(points: readonly Dot[]): boolean {
  if (points.length !== 4) return false;
  const turns = points.map((a, i) => twice(a, points[(i + 1) % 4] as Dot, points[(i + 2) % 4] as Dot));
  const size = Math.max(...points.flatMap((a) => points.map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]))));
  const clear = size * size * 1e-4;
  return turns.every((turn) => turn > clear) || turns.every((turn) => turn < -clear);
}

/** The map that takes four points to four others; null where either four stand on a line or cross over. */
export function homography(from: readonly Dot[], to: readonly Dot[]): Homography | null {
  if (!plainFour(from) || !plainFour(to)) return null;
  const rows = from.flatMap(([x, y], i) => {
    const [u, v] = to[i] as Dot;
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ];
  });
  const found = solved(rows);
  if (!found || found.some((value) => !Number.isFinite(value))) return null;
  return [...found, 1] as unknown as Homography;
}

/** Where a point goes; null on the horizon and behind it. */
export function mapped([a, b, c, d, e, f, g, h, i]: Homography, [x, y]: Dot): Dot | null {
  const w = g * x + h * y + i;
  return w <= 1e-12 ? null : [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/** First this, then that. */
export function after(second: Homography, first: Homography): Homography {
  const cell = (row: number, column: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + (second[row * 3 + k] as number) * (first[k * 3 + column] as number), 0);
  const all = [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => cell(row, column)));
  const last = all[8] as number;
  return all.map((value) => value / last) as unknown as Homography;
}

/** A plan that is only to be set to scale: its picture points to metres, first point kept where it was put. */
export function scaled(from: readonly [Dot, Dot], length: number, origin: Dot = [0, 0]): Homography | null {
  const far = Math.hypot(from[1][0] - from[0][0], from[1][1] - from[0][1]);
  if (far === 0 || length <= 0) return null;
  const s = length / far;
  const [x0, y0] = from[0];
  // Pictures count downwards, floors upwards.
  return [s, 0, origin[0] - s * x0, 0, -s, origin[1] + s * y0, 0, 0, 1];
}

/** As the browser takes it for a picture whose pixel (0, 0) is its upper left corner. */
export const cssMatrix = ([a, b, c, d, e, f, g, h, i]: Homography): string =>
  `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].join(',')})`;
