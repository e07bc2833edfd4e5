import type { Run } from './text.ts';

/** Points on the sheet, from the top left corner, in points of 1/72 inch. */
export type Point = readonly [x: number, y: number];
export type Ring = readonly Point[];

export interface Stroke {
  readonly width: number;
  readonly ink: string;
  readonly dash?: readonly number[];
}

/** A drawing as data: made by pure geometry, tested as numbers, painted last. */
export type Command =
  | {
      readonly draw: 'lines';
      readonly rings: readonly Ring[];
      readonly closed: boolean;
      readonly fill?: string;
      readonly stroke?: Stroke;
    }
  | {
      readonly draw: 'ellipse';
      readonly at: Point;
      readonly radii: readonly [x: number, y: number];
      readonly fill?: string;
      readonly stroke?: Stroke;
    }
  | { readonly draw: 'clip'; readonly rings: readonly Ring[]; readonly inside: readonly Command[] }
  /** `at` is the left end of the baseline; `turned` writes upwards, for a dimension along a side. */
  | { readonly draw: 'text'; readonly at: Point; readonly run: Run; readonly turned?: boolean };

export const line = (from: Point, to: Point, stroke: Stroke): Command => ({
  draw: 'lines',
  rings: [[from, to]],
  closed: false,
  stroke,
});

export const polygon = (ring: Ring, look: { readonly fill?: string; readonly stroke?: Stroke }): Command => ({
  draw: 'lines',
  rings: [ring],
  closed: true,
  ...look,
});

export const rectangle = (
  x: number,
  y: number,
  width: number,
  height: number,
  look: { readonly fill?: string; readonly stroke?: Stroke },
): Command =>
  polygon(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    look,
  );

export const disc = (
  at: Point,
  radius: number,
  look: { readonly fill?: string; readonly stroke?: Stroke },
): Command => ({ draw: 'ellipse', at, radii: [radius, radius], ...look });
