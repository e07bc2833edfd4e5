import type { Dot } from '../worker/api.ts';

/** From metres on the floor to pixels on the sheet. North of the drawing is up: y grows away from the first wall. */
export interface FloorFrame {
  readonly width: number;
  readonly height: number;
  /** Pixels to a metre. */
  readonly scale: number;
  /** Where the drawing stands, in pixels. */
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** True in the strip, where there is no room for words. */
  readonly small?: boolean;
  at(dot: Dot): Dot;
}

export interface Room {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Extent {
  readonly least: Dot;
  readonly most: Dot;
}

export function extentOf(dots: readonly Dot[]): Extent | null {
  const [first] = dots;
  if (!first) return null;
  let [left, low] = first;
  let [right, high] = first;
  for (const [x, y] of dots) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return { least: [left, low], most: [right, high] };
}

/** Fits an extent into a drawing of a size, leaving room for dimensions and labels; the drawing keeps its proportions. */
export function frameFor(extent: Extent, width: number, height: number, room: Room): FloorFrame {
  const across = Math.max(extent.most[0] - extent.least[0], 1e-6);
  const deep = Math.max(extent.most[1] - extent.least[1], 1e-6);
  const inside = {
    width: Math.max(width - room.left - room.right, 1),
    height: Math.max(height - room.top - room.bottom, 1),
  };
  const scale = Math.min(inside.width / across, inside.height / deep);
  const left = room.left + (inside.width - across * scale) / 2;
  const top = room.top + (inside.height - deep * scale) / 2;
  return {
    width,
    height,
    scale,
    left,
    top,
    right: left + across * scale,
    bottom: top + deep * scale,
    at: ([x, y]) => [left + (x - extent.least[0]) * scale, top + (extent.most[1] - y) * scale],
  };
}

export const pixels = (value: number): string => value.toFixed(1).replace(/\.0$/, '');

export const pointsText = (frame: FloorFrame, dots: readonly Dot[]): string =>
  dots.map((dot) => frame.at(dot).map(pixels).join(',')).join(' ');

const STEPS_METRIC = [0.5, 1, 2, 5, 10, 20, 50, 100];
/** Exact by definition; the drawing's own scale bar needs no more of the units. */
export const FOOT = 0.3048;
const STEPS_IMPERIAL = [1, 2, 5, 10, 20, 50, 100, 200, 500].map((feet) => feet * FOOT);

/** Length of one of the two fields of the scale bar: the largest round one that fits into `most` pixels. */
export function barStep(scale: number, most: number, imperial: boolean): number {
  const steps = imperial ? STEPS_IMPERIAL : STEPS_METRIC;
  return steps.findLast((step) => step * scale <= most) ?? (steps[0] as number);
}

/** Spreads labels down one column so that none touches the next, moving each as little as their order allows. */
export function spreadLabels(wanted: readonly number[], gap: number, top: number, bottom: number): readonly number[] {
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y || a.index - b.index);
  let before = top - gap;
  const down = order.map(({ y }) => {
    before = Math.max(y, before + gap);
    return before;
  });
  let after = bottom + gap;
  for (let i = down.length - 1; i >= 0; i--) {
    after = Math.min(down[i] as number, after - gap);
    down[i] = after;
  }
  const places: number[] = wanted.map(() => 0);
  order.forEach(({ index }, i) => {
    places[index] = down[i] as number;
  });
  return places;
}

/** Parts of the outline that are wall: every edge less the openings that lie on it. */
export function wallRuns(
  outline: readonly Dot[],
  openings: readonly (readonly [Dot, Dot])[],
): readonly (readonly [Dot, Dot])[] {
  const NEAR = 0.05;
  return outline.flatMap((from, i) => {
    const to = outline[(i + 1) % outline.length] as Dot;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) return [];
    const along = ([x, y]: Dot): number => ((x - from[0]) * dx + (y - from[1]) * dy) / length;
    const off = ([x, y]: Dot): number => Math.abs((x - from[0]) * dy - (y - from[1]) * dx) / length;
    const gaps = openings
      .filter(([a, b]) => off(a) < NEAR && off(b) < NEAR)
      .map(([a, b]) => [Math.min(along(a), along(b)), Math.max(along(a), along(b))] as const)
      .filter(([start, end]) => end > 0 && start < length)
      .sort(([a], [b]) => a - b);
    const runs: (readonly [Dot, Dot])[] = [];
    const at = (distance: number): Dot => [from[0] + (dx * distance) / length, from[1] + (dy * distance) / length];
    let here = 0;
    for (const [start, end] of gaps) {
      if (start > here) runs.push([at(here), at(start)]);
      here = Math.max(here, end);
    }
    if (here < length) runs.push([at(here), to]);
    return runs;
  });
}
