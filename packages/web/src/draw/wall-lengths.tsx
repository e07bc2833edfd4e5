import type { FloorFrame } from '../floor/geometry.ts';
import type { Dot } from '../worker/api.ts';
import { type Draw, wallText } from './draw-context.tsx';

const inside = ([x, y]: Dot, outline: readonly Dot[]): boolean => {
  let odd = false;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] as Dot;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
  });
  return odd;
};

/** The length of every wall that is long enough to carry it, on the inner side of the wall. */
export function WallLengths({ draw, frame }: { readonly draw: Draw; readonly frame: FloorFrame }) {
  const ring = draw.outline.map(frame.at);
  const closed = ring.length > 2;
  return ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length] as Dot;
    if (!closed && i === ring.length - 1) return null;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(dx, dy);
    const text = wallText(draw, i);
    if (length < text.length * 6.5 + 14) return null;
    const middle: Dot = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const normal: Dot = [-dy / length, dx / length];
    const side = !closed || inside([middle[0] + normal[0] * 3, middle[1] + normal[1] * 3], ring) ? 1 : -1;
    const at: Dot = [middle[0] + normal[0] * side * 16, middle[1] + normal[1] * side * 16];
    let turn = (Math.atan2(dy, dx) * 180) / Math.PI;
    if (turn > 90 || turn <= -90) turn += 180;
    return (
      <text
        // biome-ignore lint/suspicious/noArrayIndexKey: walls are told apart only by their order
        key={i}
        transform={`translate(${at[0]},${at[1] + 4}) rotate(${turn})`}
        textAnchor="middle"
        className={closed ? 'n halo' : 'n halo-s'}
      >
        {text}
      </text>
    );
  });
}
