import type { Dot } from '../worker/api.ts';

/** A side of a square, upright or level. */
export interface Side {
  readonly upright: boolean;
  /** x of an upright side, else y. */
  readonly line: number;
  /** Lower end along the side. */
  readonly from: number;
}

/** Straight lines out of sides of squares of one size, neighbouring ones joined. */
export function joined(sides: readonly Side[], size: number): readonly (readonly [Dot, Dot])[] {
  const sorted = [...sides].sort((a, b) => Number(a.upright) - Number(b.upright) || a.line - b.line || a.from - b.from);
  const lines: [Dot, Dot][] = [];
  let first: Side | undefined;
  let end = 0;
  const close = (): void => {
    if (!first) return;
    const { upright, line, from } = first;
    lines.push(
      upright
        ? [
            [line, from],
            [line, end],
          ]
        : [
            [from, line],
            [end, line],
          ],
    );
  };
  for (const side of sorted) {
    const goesOn =
      first !== undefined &&
      first.upright === side.upright &&
      Math.abs(first.line - side.line) < 1e-6 &&
      Math.abs(side.from - end) < 1e-6;
    if (!goesOn) {
      close();
      first = side;
    }
    end = side.from + size;
  }
  close();
  return lines;
}
