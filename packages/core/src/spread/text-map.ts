import type { FloorSquares } from './floor-squares.ts';

const MARKS = '123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * The floor as lines of text, north up: one mark per square, the number of its pour (letters from the tenth, again from
 * the start after 61), `.` where there is no floor, `?` where nothing is spread.
 */
export function textMap(squares: FloorSquares, pourOf: Int32Array): string[] {
  const lines: string[] = [];
  for (let j = squares.rows - 1; j >= 0; j--) {
    let line = '';
    for (let i = 0; i < squares.columns; i++) {
      const square = squares.at[j * squares.columns + i] as number;
      const pour = square < 0 ? -1 : (pourOf[square] as number);
      line += square < 0 ? '.' : pour < 0 ? '?' : MARKS[pour % MARKS.length];
    }
    lines.push(line);
  }
  return lines;
}
