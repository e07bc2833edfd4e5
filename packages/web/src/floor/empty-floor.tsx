import { words } from '../words.ts';
import { WALL } from './slab.tsx';

/** The first corner of a floor nobody entered yet. */
export function EmptyFloor({
  width,
  height,
  small,
}: {
  readonly width: number;
  readonly height: number;
  readonly small: boolean;
}) {
  const side = Math.min(width, height) * 0.4;
  const [x, y] = [width / 2 - side / 2, height / 2 + side / 2];
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.floor.empty}>
      <path d={`M${x} ${y - side}V${y}H${x + side}`} stroke="var(--ink)" strokeWidth={small ? 3 : WALL} fill="none" />
      <path d={`M${x + side} ${y}V${y - side}H${x}`} stroke="var(--stroke)" strokeDasharray="2 6" fill="none" />
      <circle cx={x} cy={y} r={small ? 4 : 7} fill="var(--chalk)" />
      {small ? null : (
        <text x={width / 2} y={y + 36} textAnchor="middle" className="floor-title">
          {words.floor.empty}
        </text>
      )}
    </svg>
  );
}
