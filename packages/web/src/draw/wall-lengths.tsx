import type { FloorFrame } from '../floor/geometry.ts';
import type { Dot } from '../worker/api.ts';
import { alongLabel } from './along-label.ts';
import { type Draw, wallText } from './draw-context.tsx';

/** The length of every wall that is long enough to carry it, on the inner side of the wall. */
export function WallLengths({ draw, frame }: { readonly draw: Draw; readonly frame: FloorFrame }) {
  const ring = draw.outline.map(frame.at);
  const closed = ring.length > 2;
  return ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length] as Dot;
    if (!closed && i === ring.length - 1) return null;
    const text = wallText(draw, i);
    const { x, y, turn, length } = alongLabel(a, b, ring, 16);
    if (length < text.length * 6.5 + 14) return null;
    return (
      <text
        // biome-ignore lint/suspicious/noArrayIndexKey: walls are told apart only by their order
        key={i}
        transform={`translate(${x},${y}) rotate(${turn})`}
        dy="4"
        textAnchor="middle"
        className={closed ? 'n halo' : 'n halo-s'}
      >
        {text}
      </text>
    );
  });
}
