import type { FloorSquares } from './floor-squares.ts';

/** Largest side of the floor's box, m. */
export function floorSpan(squares: FloorSquares): number {
  return Math.max(squares.columns, squares.rows) * squares.cellM;
}

/** Raises or lowers values around one or two squares by at most `height`, falling smoothly to nothing. */
export function bump(squares: FloorSquares, values: Float64Array, height: number, random: () => number): void {
  const { x, y, cellM, count } = squares;
  const span = floorSpan(squares);
  const bumps = 1 + Math.floor(random() * 2);
  for (let b = 0; b < bumps; b++) {
    const middle = Math.min(count - 1, Math.floor(random() * count));
    const radius = cellM * 1.5 + random() * random() * span * 0.7;
    const rise = (random() * 2 - 1) * height;
    const mx = x[middle] as number;
    const my = y[middle] as number;
    const r2 = radius * radius;
    for (let s = 0; s < count; s++) {
      const dx = (x[s] as number) - mx;
      const dy = (y[s] as number) - my;
      const near = 1 - (dx * dx + dy * dy) / r2;
      if (near > 0) values[s] = (values[s] as number) + rise * near * near;
    }
  }
}

/** Turns a field a little: adds a slope of at most 0.3 m per m. */
export function tilt(squares: FloorSquares, values: Float64Array, random: () => number): void {
  const slopeX = (random() - 0.5) * 0.6;
  const slopeY = (random() - 0.5) * 0.6;
  for (let s = 0; s < squares.count; s++) {
    values[s] = (values[s] as number) + slopeX * (squares.x[s] as number) + slopeY * (squares.y[s] as number);
  }
}
