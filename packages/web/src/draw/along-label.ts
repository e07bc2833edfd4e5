import type { Dot } from '../worker/api.ts';

export interface AlongLabel {
  readonly x: number;
  readonly y: number;
  /** Degrees; the text is never upside down. */
  readonly turn: number;
  readonly length: number;
}

const inside = ([x, y]: Dot, ring: readonly Dot[]): boolean => {
  let odd = false;
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length] as Dot;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
  });
  return odd;
};

/** Where the middle of a text beside a line stands, on the inner side of the ring when there is one. */
export function alongLabel(a: Dot, b: Dot, ring: readonly Dot[], off: number, share = 0.5): AlongLabel {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  const unit: Dot = length > 0 ? [dx / length, dy / length] : [1, 0];
  const middle: Dot = [a[0] + dx * share, a[1] + dy * share];
  const normal: Dot = [-unit[1], unit[0]];
  const side = ring.length < 3 || inside([middle[0] + normal[0] * 3, middle[1] + normal[1] * 3], ring) ? 1 : -1;
  let turn = (Math.atan2(dy, dx) * 180) / Math.PI;
  if (turn > 90) turn -= 180;
  if (turn <= -90) turn += 180;
  return { x: middle[0] + normal[0] * side * off, y: middle[1] + normal[1] * side * off, turn, length };
}
